package holdfast.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.backing.BarRange;
import holdfast.melody.IdeaNotation;
import holdfast.practice.Plan;
import holdfast.practice.Step;
import holdfast.practice.Way;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a student was told to practise next as JSON, to be kept beside the take: {@code {"steps":
 * [{"way": "climb", "chart": "Slow Ferry", "bars": "5..6", "tempo": 48, "idea": "…", "why":
 * "…"}]}}.
 */
public final class PlanJson {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private PlanJson() {}

  /** A plan as JSON. */
  public static String of(Plan plan) {
    ObjectNode root = MAPPER.createObjectNode();
    ArrayNode steps = root.putArray("steps");
    for (Step step : plan.steps()) {
      ObjectNode node = steps.addObject().put("way", step.way().word()).put("chart", step.chart());
      step.key().ifPresent(key -> node.put("key", key));
      step.bars().ifPresent(bars -> node.put("bars", bars.first() + ".." + bars.last()));
      node.put("tempo", step.tempo());
      step.idea().ifPresent(notes -> node.put("idea", IdeaNotation.print(notes)));
      node.put("why", step.why());
    }
    return root.toPrettyString() + "\n";
  }

  /** Reads what {@link #of} wrote; empty where it is broken, as a new plan can always be made. */
  public static Optional<Plan> read(String json) {
    List<Step> steps = new ArrayList<>();
    try {
      for (JsonNode node : MAPPER.readTree(json).path("steps")) {
        Optional<Way> way = Way.read(node.path("way").asText());
        if (way.isEmpty()) {
          return Optional.empty();
        }
        steps.add(
            new Step(
                way.get(),
                node.path("chart").asText(),
                text(node, "key"),
                text(node, "bars").map(BarRange::parse),
                node.path("tempo").asDouble(),
                text(node, "idea").map(IdeaNotation::parse),
                node.path("why").asText()));
      }
    } catch (JsonProcessingException | RuntimeException broken) {
      return Optional.empty();
    }
    return steps.isEmpty() ? Optional.empty() : Optional.of(new Plan(steps));
  }

  private static Optional<String> text(JsonNode node, String name) {
    return node.hasNonNull(name) ? Optional.of(node.get(name).asText()) : Optional.empty();
  }
}
