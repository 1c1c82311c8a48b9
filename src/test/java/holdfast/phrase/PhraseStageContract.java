package holdfast.phrase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayedNote;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/**
 * What every way from notes to phrases must keep to, whatever comes in: no note is lost, added or
 * moved, phrases follow one another, and nothing is decided before its notes have ended or begun.
 */
abstract class PhraseStageContract {

  /** The phrases of a whole line. */
  protected abstract List<Phrase> phrases(List<PlayedNote> notes);

  /** Whether the phrases are those that were known while listening. */
  protected boolean isLive() {
    return true;
  }

  private List<Phrase> checked(List<PlayedNote> notes) {
    List<Phrase> phrases = phrases(notes);
    List<PlayedNote> out = new ArrayList<>();
    double decided = Double.NEGATIVE_INFINITY;
    for (Phrase phrase : phrases) {
      assertEquals(out.size(), phrase.firstNote(), "phrases follow one another");
      out.addAll(phrase.notes());
      assertTrue(!isLive() || phrase.decidedSeconds() >= decided, "decided in order");
      decided = phrase.decidedSeconds();
      double lastOnset = phrase.notes().get(phrase.notes().size() - 1).onsetSeconds();
      assertTrue(decided >= lastOnset, "decided after its last note began");
    }
    assertEquals(notes, out, "every note once, as it was");
    for (int i = 0; i < phrases.size(); i++) {
      boolean last = i == phrases.size() - 1;
      assertEquals(last, phrases.get(i).ending() == Ending.TAKE, "only the last ends the take");
    }
    return phrases;
  }

  @Test
  void silence_holds_no_phrase() {
    assertEquals(List.of(), checked(List.of()));
  }

  @Test
  void one_note_is_one_phrase() {
    assertEquals(1, checked(List.of(PlayedNote.key(0, 1, 60, 80))).size());
    assertEquals(1, checked(List.of(PlayedNote.key(-3, 1e-3, 0, 1))).size());
  }

  @Test
  void a_gap_of_a_day_parts_two_phrases() {
    List<Phrase> phrases =
        checked(List.of(PlayedNote.key(0, 1, 60, 80), PlayedNote.key(86_400, 1, 62, 80)));
    assertEquals(2, phrases.size());
  }

  @Test
  void notes_that_follow_without_a_gap_are_borne() {
    List<PlayedNote> notes = new ArrayList<>();
    for (int i = 0; i < 500; i++) {
      notes.add(PlayedNote.key(i * 0.25, 0.25, 60 + i % 12, 80));
    }
    checked(notes);
  }

  @Test
  void notes_that_all_start_at_once_are_borne() {
    List<PlayedNote> notes = new ArrayList<>();
    for (int i = 0; i < 128; i++) {
      notes.add(PlayedNote.key(5, 1 + i * 0.01, i, 80));
    }
    assertEquals(1, checked(notes).size());
  }

  @Test
  void notes_too_short_for_their_end_to_be_told_from_their_start_are_borne() {
    List<PlayedNote> notes = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      notes.add(PlayedNote.key(1e9 + i, 1e-9, 60, 80));
    }
    checked(notes);
  }

  @Test
  void a_pedal_note_under_the_whole_line_loses_nothing() {
    List<PlayedNote> notes = new ArrayList<>();
    notes.add(PlayedNote.key(0, 100, 36, 80));
    for (int i = 0; i < 100; i++) {
      notes.add(PlayedNote.key(0.5 + i * 0.9, 0.3, 60 + i % 5, 80));
    }
    checked(notes);
  }

  /** Twelve hours of eighths: what takes more than linear time does not come back from this. */
  @Test
  void a_hundred_thousand_notes_in_one_breath_are_borne() {
    List<PlayedNote> notes = new ArrayList<>();
    notes.add(PlayedNote.key(0, 45_000, 36, 80));
    for (int i = 0; i < 100_000; i++) {
      notes.add(PlayedNote.key(0.1 + i * 0.43, 0.4, 60 + i % 12, 80));
    }
    checked(notes);
    checked(notes.subList(1, notes.size()));
  }

  @RepeatedTest(100)
  void any_playing_gives_well_formed_phrases(RepetitionInfo repetition) {
    checked(wildNotes(repetition.getCurrentRepetition()));
  }

  /** Chords, trills, overlaps, silences, notes within notes. */
  static List<PlayedNote> wildNotes(long seed) {
    SplittableRandom chance = new SplittableRandom(seed);
    double[] steps = {0, 0, 0.001, 0.02, 0.1, 0.25, 0.25, 0.5, 0.5, 1, 3, 40};
    double[] lengths = {0.001, 0.05, 0.1, 0.24, 0.25, 0.4, 0.5, 1, 2, 10};
    List<PlayedNote> notes = new ArrayList<>();
    double time = chance.nextDouble(-2, 5);
    int count = 1 + chance.nextInt(80);
    for (int i = 0; i < count; i++) {
      time += steps[chance.nextInt(steps.length)] * (0.8 + 0.4 * chance.nextDouble());
      double length = lengths[chance.nextInt(lengths.length)];
      // Equal notes at once could not be told apart when they end.
      notes.add(PlayedNote.key(time, length, (i * 7) % 128, 1 + chance.nextInt(127)));
    }
    return notes;
  }
}
