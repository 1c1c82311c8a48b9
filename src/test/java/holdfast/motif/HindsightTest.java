package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.phrase.Ending;
import holdfast.phrase.Phrase;
import holdfast.phrase.PhraseRevision;
import holdfast.phrase.Revision;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class HindsightTest {

  private static final MotifJudge JUDGE = new MotifJudge();
  private static final Context IN_C =
      Context.over(
          Changes.vamp(Harmony.parse("Cmaj7"), Optional.of(Key.parse("C"))), Player.KEYBOARD, 4);
  private static final double[] SECOND_RHYTHM = {0, 1.5, 2, 2.5};

  private static List<Note> opening(double start) {
    return Written.typical(start, 64, 67, 71, 69, 67);
  }

  private static List<Note> second(double start, int... pitches) {
    return Written.line(start, SECOND_RHYTHM, pitches);
  }

  @Test
  void an_idea_that_takes_over_is_found_and_carried_from_there() {
    List<List<Note>> phrases =
        List.of(
            opening(0),
            opening(4),
            second(8, 76, 72, 74, 79),
            second(12, 76, 72, 74, 79),
            second(16, 74, 71, 72, 77),
            second(20, 76, 72, 74, 79));
    Motif idea = Motif.over(Harmony.parse("Cmaj7"), opening(0));
    Hindsight read = Hindsight.read(JUDGE, idea, phrases, IN_C);
    assertEquals(2, read.ideas().size());
    assertTrue(read.phrases().get(2).statesNewIdea());
    assertEquals(
        List.of(0, 0, 1, 1, 1, 1), read.phrases().stream().map(PhraseReading::idea).toList());
    assertTrue(read.phrases().get(4).verdict().carriesTheIdea());
  }

  @Test
  void one_stray_phrase_is_no_new_idea_and_the_idea_is_taken_back_after_it() {
    List<List<Note>> phrases =
        List.of(opening(0), opening(4), second(8, 76, 72, 74, 79), opening(12), opening(16));
    Motif idea = Motif.over(Harmony.parse("Cmaj7"), opening(0));
    Hindsight read = Hindsight.read(JUDGE, idea, phrases, IN_C);
    assertEquals(1, read.ideas().size());
    assertTrue(read.phrases().get(3).takenBack());
    assertFalse(read.phrases().get(4).takenBack());
  }

  private static int ideas(List<List<Note>> phrases) {
    Motif idea = Motif.over(Harmony.parse("Cmaj7"), opening(0));
    return Hindsight.read(JUDGE, idea, phrases, IN_C).ideas().size();
  }

  @Test
  void a_quick_look_never_denies_a_restatement_and_spares_many_of_the_others() {
    Random random = new Random(20261125);
    int denied = 0;
    int others = 0;
    for (int t = 0; t < 1500; t++) {
      int[] pitches = walk(3 + random.nextInt(4), random);
      Motif idea = Motif.over(Harmony.parse("Cmaj7"), inThrees(0, pitches));
      List<Note> phrase = inThrees(8, phraseAfter(pitches, random));
      boolean mayBe = JUDGE.mayBeRestated(idea, phrase, IN_C);
      if (JUDGE.compare(idea, phrase, IN_C).family() == Family.RESTATED) {
        assertTrue(mayBe, () -> Arrays.toString(pitches) + " " + phrase);
      } else {
        others++;
        denied += mayBe ? 0 : 1;
      }
    }
    assertTrue(others > 400 && denied > others / 3, denied + " of " + others);
  }

  /** Two short notes and a long one, and again. */
  private static List<Note> inThrees(double start, int... pitches) {
    double[] onsets = new double[pitches.length];
    for (int i = 1; i < onsets.length; i++) {
      onsets[i] = onsets[i - 1] + (i % 3 == 0 ? 1 : 0.5);
    }
    return Written.line(start, onsets, pitches);
  }

  private static int[] walk(int size, Random random) {
    int[] pitches = new int[size];
    pitches[0] = 60 + random.nextInt(12);
    for (int i = 1; i < size; i++) {
      pitches[i] = pitches[i - 1] + random.nextInt(9) - 4;
    }
    return pitches;
  }

  /** New notes; the idea moved, each note perhaps by a little; twice; or again and again. */
  private static int[] phraseAfter(int[] idea, Random random) {
    int by = random.nextInt(7) - 3;
    int off = random.nextInt(3);
    return switch (random.nextInt(4)) {
      case 0 -> walk(idea.length + random.nextInt(4), random);
      case 1 -> Arrays.stream(idea).map(p -> p + by + random.nextInt(1 + off)).toArray();
      case 2 -> IntStream.range(0, 2 * idea.length).map(i -> by + idea[i % idea.length]).toArray();
      default -> IntStream.range(0, 70).map(i -> idea[i % idea.length]).toArray();
    };
  }

  @Test
  void what_came_back_once_or_has_two_notes_took_nothing_over() {
    assertEquals(
        1, ideas(List.of(opening(0), second(4, 76, 72, 74, 79), second(8, 76, 72, 74, 79))));
    double[] two = {0, 2.5};
    assertEquals(
        1,
        ideas(
            List.of(
                opening(0),
                Written.line(4, two, 84, 61),
                Written.line(8, two, 84, 61),
                Written.line(12, two, 84, 61),
                Written.line(16, two, 84, 61))));
  }

  private static OptionalInt answers(double answerAt, int lastOfQuestion, int lastOfAnswer) {
    List<Note> question = Written.typical(0, 64, 67, 71, 69, lastOfQuestion);
    List<Note> answer = Written.typical(answerAt, 64, 67, 71, 69, lastOfAnswer);
    Motif idea = Motif.over(Harmony.parse("Cmaj7"), question);
    return Hindsight.read(JUDGE, idea, List.of(question, answer), IN_C).phrases().get(1).answers();
  }

  @Test
  void an_answer_comes_soon_after_a_question_that_was_left_open_and_rests() {
    assertEquals(OptionalInt.of(0), answers(8, 62, 72));
    assertEquals(OptionalInt.empty(), answers(16, 62, 72), "three bars later");
    assertEquals(OptionalInt.empty(), answers(4, 60, 72), "nothing was left open");
    assertEquals(OptionalInt.empty(), answers(4, 62, 74), "it does not rest");
    assertEquals(OptionalInt.empty(), answers(4, 62, 62), "the same again");
  }

  @Test
  void the_same_beginning_with_an_ending_at_rest_answers() {
    List<Note> question = Written.typical(0, 64, 67, 71, 69, 62);
    List<Note> answer = Written.typical(4, 64, 67, 71, 69, 72);
    Motif idea = Motif.over(Harmony.parse("Cmaj7"), question);
    Hindsight read = Hindsight.read(JUDGE, idea, List.of(question, answer), IN_C);
    assertEquals(OptionalInt.of(0), read.phrases().get(1).answers());
    assertEquals(OptionalInt.empty(), read.phrases().get(0).answers());
  }

  @Test
  void two_restatements_in_one_breath_are_cheaper_apart_than_together() {
    List<Note> notes = new ArrayList<>(opening(0));
    notes.addAll(opening(4));
    IdeaCost cost = new IdeaCost(JUDGE, Motif.of(opening(0)), notes, IN_C);
    assertTrue(cost.of(0, 5) + cost.of(5, 10) < cost.of(0, 10));
    assertTrue(cost.of(0, 5) + cost.of(5, 10) < cost.of(0, 4) + cost.of(4, 10));
    assertTrue(cost.of(0, 5) + cost.of(5, 10) < cost.of(0, 6) + cost.of(6, 10));
  }

  @Test
  void a_hesitation_inside_is_cheaper_whole() {
    double[] halting = {0, 0.5, 1, 2.6, 3.1};
    List<Note> notes = Written.line(0, halting, 64, 67, 71, 69, 67);
    IdeaCost cost = new IdeaCost(JUDGE, Motif.of(opening(0)), notes, IN_C);
    assertTrue(cost.of(0, 5) < cost.of(0, 3) + cost.of(3, 5));
  }

  private static Revision revise(List<Note> notes, int... starts) {
    List<Phrase> live = new ArrayList<>();
    for (int p = 0; p < starts.length; p++) {
      int end = p + 1 < starts.length ? starts[p + 1] : notes.size();
      List<PlayedNote> played = new ArrayList<>();
      for (Note note : notes.subList(starts[p], end)) {
        // At 60 beats a minute a beat is a second.
        played.add(
            new PlayedNote(note.onsetBeats(), note.durationBeats(), note.pitch(), 0, 0.5, 1));
      }
      live.add(new Phrase(played, starts[p], Ending.REST, notes.get(end - 1).endBeats() + 0.3));
    }
    return PhraseRevision.of(live, new IdeaCost(JUDGE, Motif.of(opening(0)), notes, IN_C));
  }

  private static List<Integer> starts(Revision revision) {
    return revision.phrases().stream().map(Phrase::firstNote).toList();
  }

  @Test
  void two_restatements_that_were_heard_as_one_phrase_are_cut_apart() {
    List<Note> notes = new ArrayList<>(opening(0));
    notes.addAll(Written.typical(4, 64, 67, 71, 69, 67));
    notes.addAll(Written.typical(8, 65, 69, 72, 71, 69));
    assertEquals(List.of(0, 5, 10), starts(revise(notes, 0, 5)));
  }

  @Test
  void a_restatement_that_was_broken_by_a_hesitation_is_made_whole() {
    double[] halting = {0, 0.5, 1, 2.9, 3.4};
    List<Note> notes = new ArrayList<>(opening(0));
    notes.addAll(Written.line(5, halting, 64, 67, 71, 69, 67));
    assertEquals(List.of(0, 5), starts(revise(notes, 0, 5, 8)));
  }

  @Test
  void a_scale_run_is_not_cut_into_small_ideas_that_happen_to_fall_as_the_idea_does() {
    double[] even = {0, 0.5, 1, 1.5, 2, 2.5};
    List<Note> notes = Written.line(0, even, 77, 76, 74, 72, 71, 69);
    Motif idea = Motif.of(Written.line(0, new double[] {0, 0.5, 1}, 72, 69, 67));
    IdeaCost cost = new IdeaCost(JUDGE, idea, notes, IN_C);
    // A cut without any rest costs about 4 more.
    assertTrue(cost.of(0, 6) < cost.of(0, 3) + cost.of(3, 6) + 2);
  }
}
