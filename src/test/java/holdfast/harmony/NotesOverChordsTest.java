package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.harmony.NotesOverChords.Length;
import holdfast.harmony.NotesOverChords.Situation;
import holdfast.theory.Harmony;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How usual notes are over chords: counts of 456 solos of the Weimar Jazz Database. */
class NotesOverChordsTest {

  private static double odds(
      String chord, int pitch, Length length, Beats.Place place, boolean end) {
    ChordHere here =
        ChordHere.at(Changes.vamp(Harmony.parse(chord), Optional.empty()), 0).orElseThrow();
    return NotesOverChords.EXPERTS.logOdds(here, pitch, new Situation(length, place, end));
  }

  private static double odds(String chord, int pitch) {
    return odds(chord, pitch, Length.SHORT, Beats.Place.OFF_BEAT, false);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "C",
        "Cmaj7",
        "C6",
        "C7",
        "Cm",
        "Cm6",
        "Cm7",
        "Cm(maj7)",
        "Cm7b5",
        "Cdim",
        "Cdim7",
        "C7alt",
        "Csus4",
        "C9sus4",
        "Cmaj7#11",
        "C/E",
        "Eb7b9"
      })
  void over_any_chord_all_twelve_notes_together_are_as_likely_as_at_random(String chord) {
    for (Length length : Length.values()) {
      for (Beats.Place place : Beats.Place.values()) {
        for (boolean end : new boolean[] {false, true}) {
          double sum = 0;
          for (int pitch = 60; pitch < 72; pitch++) {
            sum += Math.exp(odds(chord, pitch, length, place, end));
          }
          assertEquals(12, sum, 1e-9);
        }
      }
    }
  }

  /** More usual against less usual, as the counts have them (share over share, all notes). */
  @ParameterizedTest(name = "over {0} {1} before {2}")
  @CsvSource({
    "C7, 70, 71",
    "C7, 64, 63",
    "C7, 69, 68",
    "C9, 70, 71",
    "Cmaj7, 71, 70",
    "Cmaj7, 64, 65",
    "Cmaj7, 67, 68",
    "C6, 69, 70",
    "C6, 69, 68",
    "C, 64, 63",
    "C, 67, 66",
    "Cm7, 63, 64",
    "Cm7, 70, 71",
    "Cm7, 65, 64",
    "Cm, 63, 64",
    "Cm, 67, 66",
    "Cm6, 69, 68",
    "Cm6, 69, 70",
    "Cm(maj7), 71, 70",
    "Cm7b5, 66, 67",
    "Cm7b5, 70, 71",
    "Cdim7, 66, 67",
    "Cdim7, 69, 70",
    "Cdim7, 63, 64",
    "Cdim, 66, 65",
    "Cdim, 63, 64"
  })
  void experts_prefer_the_notes_that_say_which_chord_it_is(String chord, int more, int less) {
    assertTrue(odds(chord, more) > odds(chord, less));
    assertTrue(odds(chord, more) > 0 || odds(chord, less) < 0);
  }

  @Test
  void an_octave_makes_no_difference() {
    assertEquals(odds("Eb7", 61), odds("Eb7", 49), 1e-12);
    assertEquals(odds("C7", 70), odds("D7", 72), 1e-12);
  }

  @Test
  void lengths_part_where_the_counts_do() {
    // Very short below .35 of a quarter, short below .71 (bounds at powers of the root of two).
    assertEquals(Length.VERY_SHORT, Length.of(0.34));
    assertEquals(Length.SHORT, Length.of(0.36));
    assertEquals(Length.SHORT, Length.of(0.70));
    assertEquals(Length.LONG, Length.of(0.72));
  }

  @Test
  void long_and_accented_notes_and_last_ones_are_chord_tones_more_often() {
    double plain = odds("C7", 60);
    assertTrue(odds("C7", 60, Length.LONG, Beats.Place.OFF_BEAT, false) > plain);
    assertTrue(odds("C7", 60, Length.SHORT, Beats.Place.DOWNBEAT, false) > plain);
    assertTrue(odds("C7", 60, Length.SHORT, Beats.Place.OFF_BEAT, true) > plain);
    assertTrue(odds("C7", 61, Length.SHORT, Beats.Place.OFF_BEAT, true) < odds("C7", 61));
  }

  @Test
  void what_the_chord_itself_alters_is_likelier_over_it_than_over_its_nearest_kin() {
    assertTrue(odds("C7b9", 61) > odds("C7", 61));
    assertTrue(odds("C7b9", 62) < odds("C7", 62));
    assertTrue(odds("Cmaj7#11", 66) > odds("Cmaj7", 66));
    assertTrue(odds("C7sus4", 65) > odds("C7", 65));
    assertTrue(odds("C7sus4", 64) < odds("C7", 64));
  }

  private static final NotesOverChords.Situation PLAIN =
      new Situation(Length.SHORT, Beats.Place.OFF_BEAT, false);

  private static double fresh(NotesOverChords counts, String chord, int pitch) {
    ChordHere here =
        ChordHere.at(Changes.vamp(Harmony.parse(chord), Optional.empty()), 0).orElseThrow();
    return counts.logOdds(here, pitch, PLAIN);
  }

  /**
   * By classes of tone the counts say over any chord what they say over those that were counted.
   */
  @Test
  void over_a_chord_that_was_never_counted_its_own_tones_come_before_what_lies_outside() {
    NotesOverChords counts = new NotesOverChords();
    for (String chord : new String[] {"C7sus4", "Cmaj7#5", "C7#9", "C/E", "Cm9", "C+"}) {
      ChordHere here =
          ChordHere.at(Changes.vamp(Harmony.parse(chord), Optional.empty()), 0).orElseThrow();
      double tones = 0;
      double others = 0;
      int inside = here.palette().chordTones().size();
      int outside = 0;
      for (int pitch = 60; pitch < 72; pitch++) {
        if (here.palette().chordTones().contains(pitch)) {
          tones += Math.exp(fresh(counts, chord, pitch));
        } else if (!here.belongs(pitch)) {
          others += Math.exp(fresh(counts, chord, pitch));
          outside++;
        }
      }
      assertTrue(tones / inside > 1.2 * others / outside, chord);
    }
  }

  /** Shares of 456 solos over all dominants: flat ninth .0525, major seventh .0446 (the table). */
  @Test
  void a_note_outside_a_plain_dominant_is_about_half_as_usual_as_at_random() {
    NotesOverChords counts = new NotesOverChords();
    assertEquals(0.0446 * 12, Math.exp(fresh(counts, "C7", 71)), 0.15);
    assertEquals(0.0525 * 12, Math.exp(fresh(counts, "C7", 61)), 0.15);
    assertEquals(0.1408 * 12, Math.exp(fresh(counts, "C7", 60)), 0.3);
    assertEquals(0.0862 * 12, Math.exp(fresh(counts, "C7", 69)), 0.15);
    assertEquals(0.1325 * 12, Math.exp(fresh(counts, "Cm7", 60)), 0.3);
    assertEquals(0.036 * 12, Math.exp(fresh(counts, "Cm7", 64)), 0.15);
  }
}
