package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import holdfast.theory.ChordPalette;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class ChangesTest {

  private static final String HEAD = "title: T\nkey: C\n";

  private static Changes changes(String bars) {
    return ChartText.parse(HEAD + bars, "test").changes();
  }

  private static List<String> names(List<ChordSpan> spans) {
    return spans.stream().map(span -> span.startBeat() + " " + span.harmony().text()).toList();
  }

  @Test
  void a_later_chorus_has_the_same_chords_in_its_own_beats() {
    Changes changes = changes("| Cmaj7 | Dm7 G7 |");
    assertEquals("Cmaj7", changes.at(0).harmony().text());
    assertEquals("Dm7", changes.at(5.9).harmony().text());
    assertEquals("G7", changes.at(6).harmony().text());
    ChordSpan third = changes.at(8 * 2 + 6.5);
    assertEquals(new ChordSpan(8 * 2 + 6, 2, Harmony.parse("G7"), 2), third);
  }

  @Test
  void before_beat_0_the_first_chord_of_the_form_stands() {
    Changes changes = changes("| Cmaj7 | Dm7 G7 |");
    assertEquals("Cmaj7", changes.at(-1.5).harmony().text());
    assertEquals(List.of("0.0 Cmaj7"), names(changes.between(-2, -1)));
  }

  @Test
  void a_pick_up_bar_has_its_own_chord_once() {
    Changes changes = changes("pickup: 1\n| G7 | Cmaj7 | Dm7 |");
    assertEquals("G7", changes.at(-0.5).harmony().text());
    assertEquals("G7", changes.at(-3).harmony().text());
    assertEquals("Dm7", changes.at(7.5).harmony().text());
    assertEquals(
        List.of("-1.0 G7", "0.0 Cmaj7", "4.0 Dm7", "8.0 Cmaj7"), names(changes.between(-1, 8.5)));
  }

  @Test
  void between_takes_whole_chords_up_to_the_end_and_not_at_it() {
    Changes changes = changes("| Cmaj7 | Dm7 G7 |");
    assertEquals(List.of("0.0 Cmaj7"), names(changes.between(1, 4)));
    assertEquals(List.of("0.0 Cmaj7", "4.0 Dm7"), names(changes.between(1, 4.1)));
    assertEquals(List.of("4.0 Dm7"), names(changes.between(4, 4)));
    assertEquals(List.of("6.0 G7", "8.0 Cmaj7", "12.0 Dm7"), names(changes.between(7, 13)));
    assertThrows(IllegalArgumentException.class, () -> changes.between(4, 3));
  }

  @Test
  void without_a_form_the_last_chord_goes_on() {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    chords.put(0.0, Harmony.parse("Dm7"));
    chords.put(4.0, Harmony.parse("G7"));
    Changes changes = Changes.through(chords, Optional.empty());
    assertEquals("G7", changes.at(1000).harmony().text());
    assertEquals(List.of("0.0 Dm7", "4.0 G7"), names(changes.between(0, 1000)));
    assertEquals(Optional.empty(), changes.nextChange(5));
  }

  @Test
  void a_chord_that_is_struck_again_is_no_change() {
    Changes changes = changes("| Dm7 | Dm7 | G7 | Dm7 |");
    assertEquals(Optional.of(8.0), changes.nextChange(1));
    assertEquals(Optional.of(24.0), changes.nextChange(13));
    assertEquals(Optional.empty(), changes("| Dm7 | % |").nextChange(1));
  }

  @Test
  void a_palette_knows_the_key_and_the_chord_to_come() {
    Changes changes = changes("| Dm7 | G7 | G7 | Cmaj7 |");
    Optional<Key> key = Optional.of(Key.parse("C"));
    assertEquals(
        ChordPalette.of(Harmony.parse("G7"), key, Optional.of(Harmony.parse("Cmaj7"))),
        changes.paletteAt(4));
    assertEquals(
        ChordPalette.of(Harmony.parse("Cmaj7"), key, Optional.of(Harmony.parse("Dm7"))),
        changes.paletteAt(15));
  }

  @Test
  void chords_that_overlap_are_refused() {
    Harmony chord = Harmony.parse("C7");
    List<ChordSpan> overlapping =
        List.of(new ChordSpan(0, 4, chord, 1), new ChordSpan(3, 4, chord, 1));
    assertThrows(
        IllegalArgumentException.class, () -> new Changes(overlapping, 8, Optional.empty()));
  }

  @Test
  void a_transposed_chart_sounds_in_concert_pitch() {
    Changes changes =
        ChartText.parse("title: T\nkey: D\nwritten for: Bb\n| Dmaj7 | A7 |", "test").changes();
    assertEquals("Cmaj7", changes.at(0).harmony().text());
    assertEquals("G7", changes.at(4).harmony().text());
    assertEquals("C", changes.key().orElseThrow().text());
  }
}
