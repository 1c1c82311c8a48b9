package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What one restatement says about the idea behind it. Worked by hand. */
class IdeaEditsTest {

  private static final Motif IDEA =
      Motif.of(
              List.of(
                  new Note(0, 0.9, 60),
                  new Note(1, 0.9, 64),
                  new Note(2, 0.9, 67),
                  new Note(3, 0.9, 62)))
          .heard(1);

  private static Verdict verdict(
      Treatment treatment, int transposition, double scale, NoteChange... changes) {
    return Made.verdict(treatment, transposition, 0, 0, scale, "", changes);
  }

  private static List<Note> at(double start, double[] onsets, int... pitches) {
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < pitches.length; i++) {
      notes.add(new Note(start + onsets[i], 0.4, pitches[i]));
    }
    return notes;
  }

  @Test
  void a_note_put_in_may_belong_to_the_idea_where_its_neighbours_say() {
    // A whole tone higher from beat 8, with a G half-way to the third note.
    List<Note> phrase = at(8, new double[] {0, 1, 1.5, 2, 3}, 62, 66, 67, 69, 64);
    Verdict verdict =
        verdict(
            Treatment.TRANSPOSED,
            2,
            1,
            Made.kept(0, 0),
            Made.kept(1, 1),
            Made.added(2),
            Made.kept(2, 3),
            Made.kept(3, 4));
    List<Motif> others = IdeaEdits.of(IDEA, verdict, phrase);
    assertEquals(1, others.size());
    Note put = others.get(0).notes().get(2);
    assertEquals(new Note(1.5, 0.4, 65), put);
    assertEquals(5, others.get(0).notes().size());
    assertEquals(1, others.get(0).hearings());
  }

  @Test
  void of_a_statement_half_as_fast_it_stands_at_half_its_time() {
    List<Note> phrase = at(8, new double[] {0, 2, 3, 4, 6}, 60, 64, 65, 67, 62);
    Verdict verdict =
        verdict(
            Treatment.AUGMENTED,
            0,
            2,
            Made.kept(0, 0),
            Made.kept(1, 1),
            Made.added(2),
            Made.kept(2, 3),
            Made.kept(3, 4));
    assertEquals(new Note(1.5, 0.2, 65), IdeaEdits.of(IDEA, verdict, phrase).get(0).notes().get(2));
  }

  @Test
  void its_nearest_neighbour_tells_not_one_far_away_that_came_late() {
    // The first note is a whole beat early; what follows is in its place.
    List<Note> phrase = at(8, new double[] {-1, 1, 2, 3, 3.5}, 60, 64, 67, 62, 65);
    Verdict verdict =
        verdict(
            Treatment.EXTENDED,
            0,
            1,
            Made.kept(0, 0),
            Made.kept(1, 1),
            Made.kept(2, 2),
            Made.kept(3, 3),
            Made.added(4));
    assertEquals(new Note(3.5, 0.4, 65), IdeaEdits.of(IDEA, verdict, phrase).get(0).notes().get(4));
    List<Note> front = at(8, new double[] {-0.5, 0, 1, 2, 4}, 65, 60, 64, 67, 62);
    Verdict before =
        verdict(
            Treatment.EXTENDED,
            0,
            1,
            Made.added(0),
            Made.kept(0, 1),
            Made.kept(1, 2),
            Made.kept(2, 3),
            Made.kept(3, 4));
    assertEquals(new Note(-0.5, 0.4, 65), IdeaEdits.of(IDEA, before, front).get(0).notes().get(0));
  }

  @Test
  void where_no_note_is_the_ideas_a_note_put_in_stands_where_it_was_played() {
    List<Note> phrase = at(1.5, new double[] {0}, 65);
    Verdict verdict = verdict(Treatment.FRAGMENT, 0, 1, Made.added(0));
    assertEquals(new Note(1.5, 0.4, 65), IdeaEdits.of(IDEA, verdict, phrase).get(0).notes().get(2));
  }

  @Test
  void a_note_left_out_may_not_belong_to_the_idea() {
    List<Note> phrase = at(8, new double[] {0, 2, 3}, 60, 67, 62);
    List<Motif> others =
        IdeaEdits.of(
            IDEA,
            verdict(
                Treatment.LITERAL,
                0,
                1,
                Made.kept(0, 0),
                Made.dropped(1),
                Made.kept(2, 1),
                Made.kept(3, 2)),
            phrase);
    assertEquals(1, others.size());
    assertEquals(List.of(60, 67, 62), others.get(0).notes().stream().map(Note::pitch).toList());
  }

  @Test
  void more_than_two_notes_left_out_or_put_in_say_nothing_of_the_idea() {
    List<Note> two = at(8, new double[] {0, 3}, 60, 62);
    Verdict twoOut =
        verdict(
            Treatment.FRAGMENT,
            0,
            1,
            Made.kept(0, 0),
            Made.dropped(1),
            Made.dropped(2),
            Made.kept(3, 1));
    assertEquals(2, IdeaEdits.of(IDEA, twoOut, two).size());
    Verdict threeOut =
        verdict(
            Treatment.FRAGMENT,
            0,
            1,
            Made.kept(0, 0),
            Made.dropped(1),
            Made.dropped(2),
            Made.dropped(3));
    assertEquals(0, IdeaEdits.of(IDEA, threeOut, two).size());
    List<Note> long6 = at(8, new double[] {0, 1, 2, 3, 4, 5}, 60, 64, 67, 62, 70, 71);
    Verdict twoIn =
        verdict(
            Treatment.EXTENDED,
            0,
            1,
            Made.kept(0, 0),
            Made.kept(1, 1),
            Made.kept(2, 2),
            Made.kept(3, 3),
            Made.added(4),
            Made.added(5));
    assertEquals(2, IdeaEdits.of(IDEA, twoIn, long6).size());
    Verdict threeIn =
        verdict(Treatment.EXTENDED, 0, 1, Made.added(3), Made.added(4), Made.added(5));
    assertEquals(0, IdeaEdits.of(IDEA, threeIn, long6).size());
  }

  @Test
  void an_idea_keeps_two_notes_at_least() {
    Motif three = Motif.of(IDEA.notes().subList(0, 3)).heard(1);
    List<Note> one = at(8, new double[] {0}, 60);
    assertEquals(
        0,
        IdeaEdits.of(
                three,
                verdict(
                    Treatment.FRAGMENT, 0, 1, Made.kept(0, 0), Made.dropped(1), Made.dropped(2)),
                one)
            .size());
    assertEquals(
        1,
        IdeaEdits.of(
                three, verdict(Treatment.FRAGMENT, 0, 1, Made.kept(0, 0), Made.dropped(1)), one)
            .size());
  }

  @Test
  void new_material_and_mirror_forms_say_nothing_of_single_notes() {
    List<Note> phrase = at(8, new double[] {0, 2, 3}, 60, 67, 62);
    for (Treatment t : List.of(Treatment.NEW, Treatment.INVERTED, Treatment.RETROGRADE)) {
      assertEquals(List.of(), IdeaEdits.of(IDEA, verdict(t, 0, 1, Made.dropped(1)), phrase));
    }
  }

  @Test
  void ideas_with_the_same_notes_at_about_the_same_places_are_the_same() {
    Motif late = Motif.of(at(0, new double[] {0, 1.15, 2, 3}, 60, 64, 67, 62));
    assertTrue(IdeaEdits.same(IDEA, late));
    assertFalse(
        IdeaEdits.same(IDEA, Motif.of(at(0, new double[] {0, 1.25, 2, 3}, 60, 64, 67, 62))));
    assertFalse(IdeaEdits.same(IDEA, Motif.of(at(0, new double[] {0, 1, 2, 3}, 60, 65, 67, 62))));
    assertFalse(IdeaEdits.same(IDEA, Motif.of(IDEA.notes().subList(0, 3))));
    assertFalse(IdeaEdits.same(Motif.of(IDEA.notes().subList(0, 3)), IDEA));
  }

  private static final NoteChange[] NOTE_FOR_NOTE = {
    Made.kept(0, 0), Made.kept(1, 1), Made.kept(2, 2), Made.kept(3, 3)
  };

  @Test
  void a_second_statement_is_averaged_with_the_first() {
    List<Note> again =
        List.of(
            new Note(8.5, 0.9, 62, 20),
            new Note(9.7, 0.9, 66, -40),
            new Note(10.5, 0.9, 69),
            new Note(11.3, 0.9, 64));
    Motif sharper =
        IdeaEdits.sharper(IDEA, verdict(Treatment.TRANSPOSED, 2, 1, NOTE_FOR_NOTE), again);
    assertEquals(2, sharper.hearings());
    // The second note came .2 late against the others' place, the last .2 early: half of each.
    double[] onsets = {0, 1.1, 2, 2.9};
    double[] cents = {10, -20, 0, 0};
    for (int i = 0; i < 4; i++) {
      assertEquals(onsets[i], sharper.notes().get(i).onsetBeats(), 1e-9);
      assertEquals(cents[i], sharper.notes().get(i).cents(), 1e-9);
      assertEquals(IDEA.notes().get(i).pitch(), sharper.notes().get(i).pitch());
    }
  }

  @Test
  void after_many_statements_one_more_counts_little() {
    List<Note> again = new ArrayList<>(IDEA.notes());
    again.set(1, new Note(1, 0.9, 64, 40));
    Motif sharper =
        IdeaEdits.sharper(IDEA.heard(3), verdict(Treatment.LITERAL, 0, 1, NOTE_FOR_NOTE), again);
    assertEquals(10, sharper.notes().get(1).cents(), 1e-9);
    assertEquals(4, sharper.hearings());
  }

  @Test
  void what_was_sung_before_beside_its_key_is_half_of_the_mean() {
    List<Note> first = new ArrayList<>(IDEA.notes());
    first.set(2, new Note(2, 0.9, 67, -30));
    Motif sharper =
        IdeaEdits.sharper(
            Motif.of(first).heard(1),
            verdict(Treatment.LITERAL, 0, 1, NOTE_FOR_NOTE),
            IDEA.notes());
    assertEquals(-15, sharper.notes().get(2).cents(), 1e-9);
  }

  @Test
  void a_note_that_went_elsewhere_says_nothing_of_its_tuning() {
    List<Note> again = new ArrayList<>(IDEA.notes());
    again.set(1, new Note(1.2, 0.9, 66));
    Motif sharper = IdeaEdits.sharper(IDEA, verdict(Treatment.LITERAL, 0, 1, NOTE_FOR_NOTE), again);
    assertEquals(64, sharper.notes().get(1).pitch());
    assertEquals(0, sharper.notes().get(1).cents(), 1e-9);
    // Along a scale every note may move by an interval of its own: only times are learnt.
    List<Note> sequence = new ArrayList<>(IDEA.notes());
    sequence.set(1, new Note(1, 0.9, 65));
    Motif after =
        IdeaEdits.sharper(IDEA, verdict(Treatment.SEQUENCE, 0, 1, NOTE_FOR_NOTE), sequence);
    assertEquals(64, after.notes().get(1).pitch());
    assertEquals(0, after.notes().get(1).cents(), 1e-9);
    assertEquals(2, after.hearings());
  }

  @Test
  void a_statement_that_leaves_a_note_out_or_takes_other_times_sharpens_nothing() {
    List<Note> phrase = at(8, new double[] {0, 2, 3}, 60, 67, 62);
    Verdict short3 =
        verdict(
            Treatment.LITERAL,
            0,
            1,
            Made.kept(0, 0),
            Made.dropped(1),
            Made.kept(2, 1),
            Made.kept(3, 2));
    assertEquals(IDEA, IdeaEdits.sharper(IDEA, short3, phrase));
    List<Note> slow = at(8, new double[] {0, 2, 4, 6}, 60, 64, 67, 62);
    assertEquals(
        IDEA, IdeaEdits.sharper(IDEA, verdict(Treatment.AUGMENTED, 0, 2, NOTE_FOR_NOTE), slow));
    // The same note of the idea twice: the first counts.
    List<Note> twice = at(8, new double[] {0, 1, 2, 3, 7}, 60, 64, 67, 62, 60);
    Verdict again =
        verdict(
            Treatment.LITERAL,
            0,
            1,
            Made.kept(0, 0),
            Made.kept(1, 1),
            Made.kept(2, 2),
            Made.kept(3, 3),
            Made.kept(0, 4));
    assertEquals(0, IdeaEdits.sharper(IDEA, again, twice).notes().get(0).onsetBeats(), 1e-9);
  }

  @Test
  void notes_never_change_places() {
    List<Note> near = at(0, new double[] {0, 0.1, 1, 2}, 60, 64, 67, 62);
    Motif grace = Motif.of(near).heard(1);
    List<Note> swapped = at(0, new double[] {0, 0.5, 1, 2}, 64, 60, 67, 62);
    Verdict crossed =
        verdict(
            Treatment.LITERAL,
            0,
            1,
            Made.kept(1, 0),
            Made.kept(0, 1),
            Made.kept(2, 2),
            Made.kept(3, 3));
    assertEquals(grace, IdeaEdits.sharper(grace, crossed, swapped));
  }
}
