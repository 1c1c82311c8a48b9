package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.time.Metre;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What counts in a phrase, and how a change near by is heard. Common practice, no source. */
class FitJudgeTest {

  private static final Changes VAMP = Changes.vamp(Harmony.parse("Cmaj7"), Optional.empty());

  private static HeardNote first(Changes changes, Metre metre, Note... notes) {
    return FitJudge.judge(List.of(notes), changes, metre).notes().get(0);
  }

  /** The weight of a note that others follow at once. */
  private static double weight(double onset, double duration) {
    return first(
            VAMP, Metre.COMMON, new Note(onset, duration, 64), new Note(onset + duration, 1, 67))
        .weight();
  }

  @Test
  void a_note_four_times_as_long_counts_twice_up_to_a_half_note() {
    assertEquals(2, weight(0, 2) / weight(0, 0.5), 1e-9);
    assertEquals(2, weight(0.5, 1) / weight(0.5, 0.25), 1e-9);
    assertEquals(weight(0, 2), weight(0, 4), 1e-9);
  }

  @Test
  void accents_count_as_the_bar_has_them() {
    assertTrue(weight(0, 1) > weight(2, 1) && weight(2, 1) > weight(1, 1));
    assertTrue(weight(1, 1) > weight(0.5, 1));
    // In six eighths the fourth is the middle, and an eighth is half a quarter long.
    Metre sixEight = new Metre(6, 8);
    double middle = first(VAMP, sixEight, new Note(3, 2, 64), new Note(5, 1, 67)).weight();
    assertEquals(weight(2, 1), middle, 1e-9);
  }

  @Test
  void the_note_on_which_a_phrase_lands_counts_more() {
    double landing = first(VAMP, Metre.COMMON, new Note(0, 1, 64)).weight();
    assertEquals(1.4, landing / weight(0, 1), 1e-9);
    assertEquals(
        landing,
        first(VAMP, Metre.COMMON, new Note(0, 1, 64), new Note(2, 1, 67)).weight(),
        1e-9,
        "before a rest");
    assertEquals(
        weight(0, 1),
        first(VAMP, Metre.COMMON, new Note(0, 1, 64), new Note(1.75, 1, 67)).weight(),
        1e-9,
        "a breath is no landing");
  }

  private static double odds(Changes changes, double onset, int pitch) {
    return first(changes, Metre.COMMON, new Note(onset, 0.4, pitch), new Note(onset + 0.4, 1, 64))
        .logOdds();
  }

  private static final Changes TO_A_FLAT;

  static {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    chords.put(0.0, Harmony.parse("Cmaj7"));
    chords.put(4.0, Harmony.parse("Abmaj7"));
    TO_A_FLAT = Changes.through(chords, Optional.empty());
  }

  @Test
  void just_before_a_change_a_quarter_of_the_notes_are_already_the_next_chords() {
    // E: the third of Cmaj7, outside Abmaj7. All three places lie off the beat.
    double early = odds(TO_A_FLAT, 3.5, 64);
    double before = odds(TO_A_FLAT, 2.5, 64);
    double next = odds(TO_A_FLAT, 5.5, 64);
    assertEquals(0.75 * Math.exp(before) + 0.25 * Math.exp(next), Math.exp(early), 1e-9);
    assertEquals(before, odds(TO_A_FLAT, 3.25, 64), 1e-9, "farther off nobody is early");
  }

  @Test
  void just_after_a_change_a_few_notes_are_still_the_last_chords() {
    // E: the third of Cmaj7, outside Abmaj7.
    double late = odds(TO_A_FLAT, 4.5, 64);
    double after = odds(TO_A_FLAT, 5.5, 64);
    double last = odds(TO_A_FLAT, 2.5, 64);
    assertEquals(0.88 * Math.exp(after) + 0.12 * Math.exp(last), Math.exp(late), 1e-9);
    assertEquals(after, odds(TO_A_FLAT, 4.75, 64), 1e-9);
  }

  @Test
  void after_silence_no_chord_lingers() {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    chords.put(0.0, Harmony.parse("N.C."));
    chords.put(4.0, Harmony.parse("Cmaj7"));
    Changes c = Changes.through(chords, Optional.empty());
    assertEquals(odds(c, 5.5, 61), odds(c, 4.5, 61), 1e-9);
    HeardNote silent = first(c, Metre.COMMON, new Note(1, 1, 61), new Note(2, 1, 60));
    assertEquals(0, silent.weight());
    assertEquals(0, silent.logOdds());
    assertEquals(0, silent.sits());
  }

  @Test
  void the_goal_of_a_note_is_the_note_that_it_leads_to() {
    List<HeardNote> heard =
        FitJudge.judge(
                List.of(new Note(0, 0.5, 64), new Note(0.5, 0.5, 65), new Note(1, 1, 67)), VAMP)
            .notes();
    assertEquals(Optional.of(new Note(1, 1, 67)), heard.get(1).goal());
    assertEquals(Optional.empty(), heard.get(0).goal());
  }
}
