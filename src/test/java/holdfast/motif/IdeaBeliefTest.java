package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.ChartLibrary;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** An idea that was sung once, and what the phrases after it tell of it. Cases of our own. */
class IdeaBeliefTest {

  private static final Context SUNG =
      Context.over(ChartLibrary.open("Lantern Turn").changes(), Player.VOICE, 4);

  private static final List<Note> MEANT =
      List.of(
          new Note(0, 0.9, 67),
          new Note(1, 0.4, 70),
          new Note(1.5, 0.4, 69),
          new Note(2, 0.9, 65),
          new Note(3, 0.9, 62));

  private static List<Note> at(double beat, List<Note> notes) {
    return notes.stream()
        .map(n -> new Note(beat + n.onsetBeats(), n.durationBeats(), n.pitch(), n.cents()))
        .toList();
  }

  private static Motif heard(List<Note> notes) {
    return Motif.over(Harmony.parse("Gm7"), notes).heard(1);
  }

  private static List<Note> without(List<Note> notes, int left) {
    List<Note> fewer = new ArrayList<>(notes);
    fewer.remove(left);
    return fewer;
  }

  @Test
  void a_note_that_the_opening_left_out_is_learnt_from_the_restatements() {
    MotifJudge judge = new MotifJudge();
    Motif opening = heard(without(MEANT, 2));
    IdeaBelief belief = new IdeaBelief(judge, opening, SUNG);
    for (int k = 1; k <= 3; k++) {
      belief.hear(at(4.0 * k, MEANT), SUNG);
    }
    List<Note> again = at(16, MEANT);
    assertNotEquals(Treatment.LITERAL, judge.compare(opening, again, SUNG).treatment());
    assertEquals(Treatment.LITERAL, belief.hear(again, SUNG).treatment());
    assertEquals(
        MEANT.stream().map(Note::pitch).toList(),
        belief.idea().notes().stream().map(Note::pitch).toList());
  }

  @Test
  void a_stray_note_of_the_opening_is_forgotten_when_no_restatement_has_it() {
    List<Note> stray = new ArrayList<>(MEANT);
    stray.add(1, new Note(0.5, 0.2, 68));
    IdeaBelief belief = new IdeaBelief(new MotifJudge(), heard(stray), SUNG);
    Verdict last = belief.hear(at(4, MEANT), SUNG);
    for (int k = 2; k <= 4; k++) {
      last = belief.hear(at(4.0 * k, MEANT), SUNG);
    }
    assertEquals(MEANT.size(), belief.idea().notes().size());
    assertTrue(last.changes().stream().allMatch(c -> c.kind() == NoteChange.Kind.KEPT));
  }

  @Test
  void a_note_between_two_keys_is_taken_for_the_one_that_was_meant() {
    List<Note> sharp = new ArrayList<>(MEANT);
    // A B flat sung 55 cents too high is nearest to B, 45 cents below it.
    sharp.set(1, new Note(1, 0.4, 71, -45));
    List<Note> again = new ArrayList<>(at(4, MEANT));
    again.set(0, new Note(4, 0.9, 67, 5));
    Verdict verdict = new MotifJudge().compare(heard(sharp), again, SUNG);
    assertEquals(Treatment.LITERAL, verdict.treatment());
    assertTrue(
        verdict.changes().stream().noneMatch(c -> c.kind() == NoteChange.Kind.SLIPPED),
        verdict::toString);
  }

  @Test
  void the_more_often_it_was_sung_the_nearer_it_lies_to_what_was_meant() {
    List<Note> early = new ArrayList<>(MEANT);
    early.set(3, new Note(1.88, 0.9, 65, 40));
    IdeaBelief belief = new IdeaBelief(new MotifJudge(), heard(early), SUNG);
    belief.hear(at(4, MEANT), SUNG);
    belief.hear(at(8, MEANT), SUNG);
    List<Note> now = belief.idea().notes();
    double gap = now.get(3).onsetBeats() - now.get(2).onsetBeats();
    assertTrue(Math.abs(gap - 0.5) < Math.abs(1.88 - 1.5 - 0.5) / 2, () -> "gap " + gap);
    assertTrue(now.get(3).cents() < 20, now::toString);
    assertEquals(3, belief.idea().hearings());
  }

  @Test
  void keys_are_taken_as_they_were_struck() {
    Context struck = new Context(SUNG.changes(), SUNG.key(), Player.KEYBOARD, 4, Priors.START);
    Motif opening = heard(without(MEANT, 2));
    IdeaBelief belief = new IdeaBelief(new MotifJudge(), opening, struck);
    for (int k = 1; k <= 3; k++) {
      belief.hear(at(4.0 * k, MEANT), struck);
    }
    assertEquals(opening, belief.idea());
  }

  @Test
  void a_written_idea_stays_as_it_is_written() {
    Motif written = Motif.over(Harmony.parse("Gm7"), without(MEANT, 2));
    IdeaBelief belief = new IdeaBelief(new MotifJudge(), written, SUNG);
    for (int k = 1; k <= 3; k++) {
      belief.hear(at(4.0 * k, MEANT), SUNG);
    }
    assertEquals(written, belief.idea());
  }

  @Test
  void a_verdict_that_weighs_several_ideas_is_still_a_probability() {
    Motif opening = heard(without(MEANT, 2));
    IdeaBelief belief = new IdeaBelief(new MotifJudge(), opening, SUNG);
    List<List<Note>> sung =
        List.of(at(4, MEANT), at(8, without(MEANT, 4)), at(12, without(MEANT, 2)), at(16, MEANT));
    for (List<Note> phrase : sung) {
      Verdict verdict = belief.hear(phrase, SUNG);
      double sum = verdict.probabilities().values().stream().mapToDouble(p -> p).sum();
      assertEquals(1, sum, 1e-9);
      assertEquals(1 - verdict.probabilities().get(Treatment.NEW), verdict.restates(), 1e-9);
    }
  }

  @Test
  void after_one_restatement_with_a_note_more_both_ideas_have_their_say() {
    MotifJudge judge = new MotifJudge();
    Motif opening = heard(without(MEANT, 2));
    IdeaBelief belief = new IdeaBelief(judge, opening, SUNG);
    belief.hear(at(4, MEANT), SUNG);
    double mixed = belief.hear(at(8, MEANT), SUNG).probabilities().get(Treatment.LITERAL);
    double one = judge.compare(opening, at(8, MEANT), SUNG).probabilities().get(Treatment.LITERAL);
    double other =
        judge.compare(heard(MEANT), at(8, MEANT), SUNG).probabilities().get(Treatment.LITERAL);
    assertTrue(one < mixed && mixed <= other + 0.02, one + " " + mixed + " " + other);
  }
}
