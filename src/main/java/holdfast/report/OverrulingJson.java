package holdfast.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.disk.JsonPlace;
import holdfast.mistake.Quoted;
import holdfast.mistake.UserMistake;
import holdfast.motif.Family;
import holdfast.motif.Treatment;
import holdfast.session.Overruling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A teacher's words on a take as JSON, to be kept beside it: {@code {"overrulings": [{"phrase": 4,
 * "startSeconds": 17.52, "family": "restated", "treatment": "sequence", "words": "…"}]}}; treatment
 * and words may be missing.
 */
public final class OverrulingJson {

  private static final ObjectMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private OverrulingJson() {}

  /** All words on one take, in the order in which they were said. */
  public static String of(List<Overruling> rulings) {
    ObjectNode root = MAPPER.createObjectNode();
    ArrayNode all = root.putArray("overrulings");
    for (Overruling ruling : rulings) {
      put(all.addObject().put("phrase", ruling.phrase()), ruling);
    }
    return root.toPrettyString() + "\n";
  }

  /** What one ruling says, without the number of its phrase. */
  static void put(ObjectNode node, Overruling ruling) {
    node.put("startSeconds", Math.rint(ruling.startSeconds() * 1000) / 1000);
    node.put("family", ruling.family().word());
    ruling.treatment().ifPresent(treatment -> node.put("treatment", treatment.word()));
    ruling.words().ifPresent(words -> node.put("words", words));
  }

  /**
   * Reads what {@link #of} wrote.
   *
   * @param from the file, for errors
   * @throws UserMistake where it cannot be read
   */
  public static List<Overruling> read(String json, String from) {
    JsonNode all;
    try {
      all = MAPPER.readTree(json).path("overrulings");
    } catch (JsonProcessingException e) {
      throw new UserMistake(
          from
              + ", line "
              + JsonPlace.line(e)
              + ": this is no JSON; mend it, or delete the file and overrule again",
          e);
    }
    List<Overruling> rulings = new ArrayList<>();
    for (JsonNode one : all) {
      try {
        rulings.add(
            new Overruling(
                one.path("phrase").asInt(0),
                one.path("startSeconds").asDouble(Double.NaN),
                family(one.path("family").asText()),
                one.hasNonNull("treatment")
                    ? Optional.of(treatment(one.path("treatment").asText()))
                    : Optional.empty(),
                one.hasNonNull("words")
                    ? Optional.of(one.path("words").asText())
                    : Optional.empty()));
      } catch (IllegalArgumentException e) {
        throw new UserMistake(
            from
                + ", overruling "
                + (rulings.size() + 1)
                + ": "
                + e.getMessage()
                + "; mend it, or delete the file and overrule again",
            e);
      }
    }
    return List.copyOf(rulings);
  }

  private static Family family(String word) {
    return Arrays.stream(Family.values())
        .filter(family -> family.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "a family is restated, varied or new, not " + Quoted.shortly(word)));
  }

  private static Treatment treatment(String word) {
    return Arrays.stream(Treatment.values())
        .filter(treatment -> treatment.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "there is no treatment “" + Quoted.shortly(word) + "”"));
  }
}
