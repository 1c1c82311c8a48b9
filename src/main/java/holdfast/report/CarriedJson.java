package holdfast.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.carry.Adaptation;
import holdfast.carry.CarriedThrough;
import holdfast.carry.Saying;
import holdfast.chart.Chart;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.SpelledPitch;
import java.util.List;
import java.util.Optional;

/**
 * An idea carried through a form, for other programs; {@code carried.schema.json} beside this class
 * says what stands where. Numbers are rounded to thousandths, which is finer than anyone plays.
 */
public final class CarriedJson {

  private static final ObjectMapper MAPPER = JsonMapper.builder().build();

  private CarriedJson() {}

  /**
   * The whole as JSON text.
   *
   * @param chart the tune, in the key that sounds
   * @param tempo beats a minute
   */
  public static String of(CarriedThrough carried, Chart chart, double tempo) {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("chart", chart.title());
    root.put("key", chart.key().map(Key::text).orElse(""));
    root.put("metre", chart.metre().text());
    root.put("tempo", thousandths(tempo));
    ObjectNode idea = root.putObject("idea");
    idea.put("chord", carried.idea().harmony().map(Harmony::text).orElse(null));
    ArrayNode ideaNotes = idea.putArray("notes");
    carried.idea().notes().forEach(note -> note(ideaNotes.addObject(), note));
    ArrayNode sayings = root.putArray("sayings");
    carried.sayings().forEach(saying -> saying(sayings.addObject(), saying, chart.key()));
    return root.toPrettyString();
  }

  private static void saying(ObjectNode node, Saying saying, Optional<Key> key) {
    node.put("bar", saying.bar());
    node.put("startBeat", thousandths(saying.startBeat()));
    ArrayNode chords = node.putArray("chords");
    saying.chords().forEach(span -> chords.add(span.harmony().text()));
    node.put("heldShorter", saying.heldShorter());
    node.put("taken", saying.taken() + 1);
    ArrayNode choices = node.putArray("choices");
    for (Adaptation adaptation : saying.choices()) {
      ObjectNode choice = choices.addObject();
      choice.put("way", adaptation.way().text());
      List<Note> notes = adaptation.placedAt(saying.startBeat());
      List<SpelledPitch> names = SayingNames.of(saying, adaptation, key);
      ArrayNode array = choice.putArray("notes");
      for (int i = 0; i < notes.size(); i++) {
        ObjectNode note = array.addObject();
        note(note, notes.get(i));
        note.put("name", names.get(i).text());
      }
      ArrayNode reasons = choice.putArray("reasons");
      adaptation.reasons().forEach(reasons::add);
    }
  }

  private static void note(ObjectNode node, Note note) {
    node.put("onset", thousandths(note.onsetBeats()));
    node.put("duration", Math.max(0.001, thousandths(note.durationBeats())));
    node.put("pitch", note.pitch());
  }

  private static double thousandths(double value) {
    return Math.rint(value * 1000) / 1000;
  }
}
