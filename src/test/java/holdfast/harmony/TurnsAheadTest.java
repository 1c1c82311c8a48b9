package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.chart.ChordSpan;
import holdfast.theory.Harmony;
import holdfast.theory.Interval;
import holdfast.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Which bars nobody expects. */
class TurnsAheadTest {

  /** One bar of four beats for each part between bar lines, chords sharing it evenly. */
  private static List<ChordSpan> form(String bars) {
    List<ChordSpan> spans = new ArrayList<>();
    int bar = 0;
    for (String part : bars.split("\\|", -1)) {
      String[] chords = part.strip().split(" ", -1);
      double length = 4.0 / chords.length;
      for (int i = 0; i < chords.length; i++) {
        spans.add(new ChordSpan(bar * 4 + i * length, length, Harmony.parse(chords[i]), bar + 1));
      }
      bar++;
    }
    return spans;
  }

  private static Set<Integer> bars(String key, String form) {
    return TurnsAhead.unexpectedBars(form(form), Optional.of(Key.parse(key)));
  }

  private static String reason(String key, int bar, String form) {
    return TurnsAhead.of(form(form), Optional.of(Key.parse(key))).stream()
        .filter(turn -> turn.bar() == bar && turn.unexpected())
        .map(Turn::reason)
        .collect(Collectors.joining("; "));
  }

  /** Marked in the trade tables of the project by a musician's reading; see demo-charts.txt. */
  @Test
  void on_the_ten_charts_it_finds_what_is_marked_and_no_more() {
    for (String name : ChartLibrary.names()) {
      Chart chart = ChartLibrary.open(name);
      assertEquals(
          chart.form().unexpectedBars(),
          TurnsAhead.unexpectedBars(chart.form().changes(), chart.key()),
          name);
    }
  }

  /** Forms of our own, marked before they were ever run, on which nothing was adjusted. */
  @Test
  void on_forms_that_it_was_not_adjusted_on_it_finds_what_an_ear_would_mark() {
    assertEquals(Set.of(), bars("C", "C6|Am7|Dm7|G7|Em7|Am7|Dm7 G7|C6"));
    assertEquals(Set.of(6, 8), bars("C", "C6|Am7|Dm7|G7|Em7|Eb7|Dm7|Db7"));
    assertEquals(Set.of(6), bars("Am", "Am7|Dm7|E7b9|Am7|Fmaj7|Bbmaj7|Bm7b5|E7"));
    assertEquals(
        Set.of(9),
        bars("Dm (Dorian)", "Dm7|Dm7|Dm7|Dm7|Dm7|Dm7|Dm7|Dm7|Ebm7|Ebm7|Ebm7|Ebm7|Dm7|Dm7|Dm7|Dm7"));
    assertEquals(Set.of(7), bars("G", "G|Em|C|D|G|Em|Cm6|D7"));
    assertEquals(Set.of(6, 8), bars("F", "F7|Bb7|F7|F7|Bb7|B°7|F7|D7|Gm7|C7|F7 D7|Gm7 C7"));
    assertEquals(Set.of(8), bars("Eb", "Ebmaj7|Cm7|Fm7|Bb7|Ebmaj7|Cm7|Fm7|Ebm7"));
  }

  @Test
  void a_bridge_in_another_key_is_unexpected_where_it_begins_and_not_where_it_goes_on() {
    Set<Integer> found =
        bars(
            "C",
            "Cmaj7|Am7|Dm7|G7|Cmaj7|Am7|Dm7 G7|C6"
                + "|Abmaj7|Fm7|Bbm7|Eb7|Abmaj7|Fm7|Bbm7|Eb7"
                + "|Cmaj7|Am7|Dm7|G7");
    assertTrue(found.contains(9), found.toString());
    assertTrue(found.stream().noneMatch(bar -> bar > 11), found.toString());
  }

  @Test
  void each_reason_is_a_phrase_that_says_what_is_heard() {
    assertEquals("leaves the key: borrowed from the minor", reason("C", 3, "Cmaj7|Am7|Abmaj7|G7"));
    assertEquals(
        "leaves the key: slides into Dm7 from a half step above",
        reason("C", 6, "C6|Am7|Dm7|G7|Em7|Eb7|Dm7|Db7"));
    assertEquals("home turns major", reason("Am", 4, "Am7|Dm7|E7b9|Amaj7"));
    assertEquals(
        "leaves the key: a diminished chord that slips in before F7",
        reason("F", 6, "F7|Bb7|F7|F7|Bb7|B°7|F7|D7|Gm7|C7|F7 D7|Gm7 C7"));
    assertEquals(
        "leaves the key: the chord a half step above home",
        reason("Am", 6, "Am7|Dm7|E7b9|Am7|Fmaj7|Bbmaj7|Bm7b5|E7"));
  }

  @Test
  void moving_the_form_to_any_key_changes_nothing() {
    for (String name : ChartLibrary.names()) {
      Chart chart = ChartLibrary.open(name);
      for (Interval up :
          List.of(Interval.MAJOR_SECOND, Interval.MINOR_THIRD, Interval.PERFECT_FIFTH)) {
        List<ChordSpan> moved =
            chart.form().changes().stream()
                .map(
                    s ->
                        new ChordSpan(
                            s.startBeat(), s.lengthBeats(), s.harmony().transpose(up), s.bar()))
                .toList();
        assertEquals(
            TurnsAhead.unexpectedBars(chart.form().changes(), chart.key()),
            TurnsAhead.unexpectedBars(moved, chart.key().map(key -> key.transpose(up))),
            name);
      }
    }
  }

  @Test
  void without_a_written_key_it_takes_the_one_that_fits() {
    for (String name : List.of("Porch Light", "Paper Boats", "Slow Ferry", "Last Bus North")) {
      Chart chart = ChartLibrary.open(name);
      assertEquals(
          chart.form().unexpectedBars(),
          TurnsAhead.unexpectedBars(chart.form().changes(), Optional.empty()),
          name);
    }
  }

  @Test
  void a_form_without_chords_has_no_turns() {
    assertEquals(List.of(), TurnsAhead.of(form("N.C.|N.C."), Optional.empty()));
  }

  @Test
  void a_chord_that_goes_on_is_no_surprise_and_the_commonest_change_hardly_one() {
    // Counted under 456 solos: m7 up a fourth to 7 is .604 of what follows m7 (.73 bits), and the
    // same with .5 added to each of 120 changes is .77 bits (trade table, wjd_chord_transitions).
    assertEquals(
        0.77,
        ChordChanges.COUNTED.surprisalBits(
            Harmony.parse("Dm7").chord().orElseThrow(), Harmony.parse("G7").chord().orElseThrow()),
        0.01);
    assertEquals(
        1.99,
        ChordChanges.COUNTED.surprisalBits(
            Harmony.parse("G7").chord().orElseThrow(),
            Harmony.parse("Cmaj7").chord().orElseThrow()),
        0.01);
    assertEquals(
        0,
        ChordChanges.COUNTED.surprisalBits(
            Harmony.parse("Gmaj7").chord().orElseThrow(),
            Harmony.parse("Gmaj7/F#").chord().orElseThrow()),
        1e-12);
  }
}
