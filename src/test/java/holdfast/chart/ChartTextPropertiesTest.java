package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** What holds of every chart, whatever is in it. */
class ChartTextPropertiesTest {

  @Property(tries = 300, seed = "20261125")
  void what_is_printed_reads_back_as_the_same_chart(@ForAll long seed) {
    Chart chart = Charts.ofSeed(seed);
    String text = ChartText.print(chart);
    assertEquals(chart, ChartText.parse(text, "again"), text);
    assertEquals(text, ChartText.print(ChartText.parse(text, "again")));
  }

  @Property(tries = 300, seed = "20261125")
  void the_form_is_filled_with_chords_from_end_to_end(@ForAll long seed) {
    Form form = Charts.ofSeed(seed).form();
    double beat = -form.pickupBeats();
    for (ChordSpan span : form.changes()) {
      assertEquals(beat, span.startBeat(), 1e-9);
      beat = span.endBeat();
    }
    assertEquals(form.lengthBeats(), beat, 1e-9);
  }

  @Property(tries = 300, seed = "20261125")
  void every_beat_of_every_chorus_has_the_chord_of_the_first(
      @ForAll long seed, @ForAll("beats") double beat) {
    Chart chart = Charts.ofSeed(seed);
    Changes changes = chart.changes();
    double inForm = beat % changes.formBeats();
    assertEquals(changes.at(inForm).harmony(), changes.at(beat).harmony());
    ChordSpan span = changes.at(beat);
    assertTrue(span.startBeat() <= beat + 1e-9 && beat < span.endBeat() + 1e-9);
    assertEquals(
        chart.form().barAt(beat).number(), span.bar(), "a chord starts in the bar that it is in");
  }

  @net.jqwik.api.Provide
  net.jqwik.api.Arbitrary<Double> beats() {
    // Quarters of a beat: on the chords' own edges as often as between them.
    return net.jqwik.api.Arbitraries.integers().between(0, 4000).map(quarters -> quarters / 4.0);
  }

  @Property(tries = 300, seed = "20261125")
  void a_text_of_any_kind_gives_a_chart_or_a_mistake_of_the_user_s(@ForAll String text) {
    for (String wild : java.util.List.of(text, "title: T\n" + text, "title: T\n| C " + text)) {
      try {
        Chart chart = ChartText.parse(wild, "wild");
        assertEquals(chart, ChartText.parse(ChartText.print(chart), "again"));
      } catch (ChartException e) {
        assertFalse(e.getMessage().isBlank());
      }
    }
  }
}
