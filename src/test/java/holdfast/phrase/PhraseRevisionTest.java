package holdfast.phrase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PhraseRevisionTest {

  private static final TempoMap SIXTY = TempoMap.steady(60);

  private static final List<Note> IDEA =
      List.of(
          new Note(0, 0.5, 67),
          new Note(0.5, 0.5, 69),
          new Note(1, 1, 72),
          new Note(2, 0.5, 69),
          new Note(2.5, 1.5, 64));

  private static List<PlayedNote> play(double from, double hesitation) {
    List<PlayedNote> played = new ArrayList<>();
    for (int i = 0; i < IDEA.size(); i++) {
      Note n = IDEA.get(i);
      double late = i < 3 ? 0 : hesitation;
      played.add(
          PlayedNote.key(from + n.onsetBeats() + late, n.durationBeats() * 0.95, n.pitch(), 80));
    }
    return played;
  }

  private static List<Integer> firsts(List<Phrase> phrases) {
    return phrases.stream().map(Phrase::firstNote).toList();
  }

  private static Revision revised(List<PlayedNote> notes, List<Phrase> live) {
    return PhraseRevision.of(live, new RhythmCost(notes, SIXTY, IDEA));
  }

  @Test
  void a_restatement_that_was_broken_by_a_hesitation_is_made_whole() {
    List<PlayedNote> notes = new ArrayList<>(play(0, 0));
    notes.addAll(play(8, 0.8));
    notes.addAll(play(16, 0));
    List<Phrase> live = PhraseCutter.cut(notes, SIXTY, Optional.of(IDEA));
    assertEquals(List.of(0, 5, 8, 10), firsts(live), "live, the silence was too long");
    Revision revision = revised(notes, live);
    assertEquals(List.of(0, 5, 10), firsts(revision.phrases()));
    assertEquals(List.of(new Revision.Regrouping(1, 2, 1, 1)), revision.changes());
    assertTrue(revision.changes().get(0).isMerge());
    assertSame(live.get(0), revision.phrases().get(0), "what stays is the same");
    double known = live.get(3).decidedSeconds();
    assertEquals(known, revision.phrases().get(1).decidedSeconds(), "known only at the end");
  }

  @Test
  void restatements_that_joined_are_split() {
    List<PlayedNote> notes = new ArrayList<>(play(0, 0));
    notes.addAll(play(4, 0));
    List<Phrase> live = PhraseCutter.cut(notes, SIXTY, Optional.empty());
    assertEquals(List.of(0), firsts(live), "live, the idea was not known");
    Revision revision = revised(notes, live);
    assertEquals(List.of(0, 5), firsts(revision.phrases()));
    assertEquals(Ending.RESTART, revision.phrases().get(0).ending());
    assertEquals(Ending.TAKE, revision.phrases().get(1).ending());
    assertTrue(revision.changes().get(0).isSplit());
  }

  @Test
  void an_early_cut_that_moves_is_told_as_one_regrouping() {
    List<PlayedNote> notes = new ArrayList<>(play(0, 0));
    notes.addAll(play(8, 0));
    List<Phrase> live =
        List.of(
            new Phrase(notes.subList(0, 4), 0, Ending.REST, 3),
            new Phrase(notes.subList(4, 10), 4, Ending.TAKE, 12));
    Revision revision = revised(notes, live);
    assertEquals(List.of(0, 5), firsts(revision.phrases()));
    assertEquals(List.of(new Revision.Regrouping(0, 2, 0, 2)), revision.changes());
  }

  @Test
  void what_was_right_stays_the_very_same() {
    List<PlayedNote> notes = new ArrayList<>(play(0, 0));
    notes.addAll(play(8, 0));
    List<Phrase> live = PhraseCutter.cut(notes, SIXTY, Optional.of(IDEA));
    Revision revision = revised(notes, live);
    assertEquals(new Revision(live, List.of()), revision);
  }

  @Test
  void phrases_from_the_middle_of_a_take_keep_their_count_of_notes() {
    List<PlayedNote> notes = new ArrayList<>(play(0, 0));
    notes.addAll(play(4, 0));
    Phrase joined = new Phrase(notes, 40, Ending.TAKE, 9);
    Revision revision = revised(notes, List.of(joined));
    assertEquals(List.of(40, 45), firsts(revision.phrases()));
  }

  @Test
  void where_no_idea_is_known_long_rests_cut_and_short_ones_do_not() {
    List<PlayedNote> notes = new ArrayList<>(play(0, 0));
    notes.addAll(play(8, 0));
    List<Phrase> live = List.of(new Phrase(notes, 0, Ending.TAKE, 12));
    Revision revision = PhraseRevision.of(live, SegmentCost.NOTHING_KNOWN);
    assertEquals(List.of(0, 5), firsts(revision.phrases()));
  }
}
