package holdfast.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.listening.PlayedNote;
import holdfast.motif.Player;
import holdfast.report.JudgementJson;
import holdfast.report.JudgementText;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The truth of every tuning here is known, because the test itself tunes the notes. */
class IntonationTest {

  private static final Chart CHART = ChartLibrary.open("slow-ferry");
  private static final double SECOND_A_BEAT = 60;

  /** An idea of four notes, again and again, each tuned by its time in the take. */
  private static JudgedTake sung(double seconds, java.util.function.DoubleUnaryOperator cents) {
    List<PlayedNote> notes = new ArrayList<>();
    int[] idea = {64, 67, 69, 67};
    for (int bar = 0; 4 * bar + 4 <= seconds; bar++) {
      for (int i = 0; i < idea.length; i++) {
        double onset = 4 * bar + 0.5 * i;
        double wobble = 8 * Math.sin(37.0 * onset);
        notes.add(
            new PlayedNote(onset, 0.45, idea[i], cents.applyAsDouble(onset) + wobble, 0.7, 0.9));
      }
    }
    Setting setting =
        Setting.of(CHART, TempoMap.steady(SECOND_A_BEAT), Player.VOICE, Optional.empty());
    return Coach.judge(setting, notes, phrase -> {});
  }

  @Test
  void a_take_that_sinks_by_40_cents_is_said_to_have_drifted_by_40_cents() {
    double seconds = 2 * CHART.form().lengthBeats();
    JudgedTake take = sung(seconds, t -> -40 * t / seconds);
    Intonation tuned = Intonation.of(take).orElseThrow();
    assertEquals(-40, tuned.driftCents(), 4);
    assertEquals(-20, tuned.cents(), 4);
    assertEquals(2, tuned.choruses().size());
    assertEquals(-10, tuned.choruses().get(0).cents(), 5);
    assertEquals(-30, tuned.choruses().get(1).cents(), 5);
    String text = String.join("\n", new JudgementText(take.setting()).close(take));
    assertTrue(text.contains(" cents flat on the way, as many singers do"), text);
  }

  @Test
  void a_take_that_is_40_cents_flat_throughout_has_not_drifted() {
    Intonation tuned = Intonation.of(sung(64, t -> -40)).orElseThrow();
    assertEquals(0, tuned.driftCents(), 4);
    assertEquals(-40, tuned.cents(), 4);
  }

  @Test
  void a_singer_in_tune_is_told_nothing() {
    JudgedTake take = sung(64, t -> 3);
    String text = String.join("\n", new JudgementText(take.setting()).close(take));
    assertTrue(!text.contains("cents"), text);
  }

  @Test
  void a_keyboard_has_no_intonation() {
    Setting setting =
        Setting.of(CHART, TempoMap.steady(SECOND_A_BEAT), Player.KEYBOARD, Optional.empty());
    List<PlayedNote> notes = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      notes.add(PlayedNote.key(i, 0.5, 60 + i % 5, 80));
    }
    assertEquals(Optional.empty(), Intonation.of(Coach.judge(setting, notes, phrase -> {})));
  }

  @Test
  void the_json_with_intonation_keeps_to_its_schema() throws IOException {
    try (InputStream schema = JudgementJson.class.getResourceAsStream("judgement.schema.json")) {
      var reader =
          SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(schema);
      String json = JudgementJson.of(sung(64, t -> -0.5 * t));
      assertTrue(json.contains("driftCents"));
      assertEquals(List.of(), reader.validate(json, InputFormat.JSON));
    }
  }
}
