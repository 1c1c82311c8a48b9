package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A skew that the chord asked for and a slip must never be told alike. */
class WhyTest {

  private static List<String> why(
      String ideaChord, String chord, List<Note> idea, List<Note> phrase) {
    Context context =
        Context.over(
            Changes.vamp(Harmony.parse(chord), Optional.of(Key.parse("Bb"))), Player.KEYBOARD, 4);
    Verdict verdict =
        new MotifJudge().compare(Motif.over(Harmony.parse(ideaChord), idea), phrase, context);
    return Why.sentences(verdict, phrase, context);
  }

  @Test
  void a_note_that_made_way_for_the_chord_was_moved() {
    List<Note> idea = Written.typical(0, 62, 65, 69, 65, 62);
    List<Note> phrase = Written.typical(4, 62, 65, 68, 65, 62);
    assertEquals(
        List.of(
            "You kept your idea in its place and changed only what the new chord asks for.",
            "You moved the third note down to fit the B♭7."),
        why("Bbmaj7", "Bb7", idea, phrase));
  }

  @Test
  void a_note_beside_the_one_that_would_have_done_has_slipped() {
    List<Note> idea = Written.typical(0, 62, 65, 70, 65, 62);
    List<Note> phrase = Written.typical(4, 62, 65, 71, 65, 62);
    List<String> why = why("Bbmaj7", "Bbmaj7", idea, phrase);
    assertTrue(why.contains("The third note slipped."), why::toString);
  }

  @Test
  void a_moved_idea_is_told_by_its_interval() {
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    List<Note> phrase = Written.typical(4, 65, 68, 72, 70, 68);
    assertEquals(
        "You moved the whole idea up a minor third and kept every interval.",
        why("Dm7", "Fm7", idea, phrase).get(0));
  }

  @Test
  void new_material_is_told_by_what_it_is() {
    double[] eighths = {0, 0.5, 1, 1.5, 2, 2.5, 3};
    List<Note> idea = Written.typical(0, 62, 65, 69, 67, 65);
    List<Note> phrase = Written.line(8, eighths, 58, 60, 62, 63, 65, 67, 69);
    assertEquals(
        "I did not hear your idea in this phrase; it was a scale run.",
        why("Dm7", "Bbmaj7", idea, phrase).get(0));
  }

  @Test
  void every_treatment_is_told_in_at_most_four_sentences() {
    for (List<String> row : ReferenceNotes.rows("motif-operations.txt")) {
      List<Note> idea = ReferenceNotes.notes("G4 A4 C5 A4 E4", "0 0.5 0.5 0.5 1 1 2 0.5 2.5 1.5");
      List<String> why = why("C6", row.get(3), idea, ReferenceNotes.notes(row.get(1), row.get(2)));
      assertTrue(!why.isEmpty() && why.size() <= 4, why::toString);
    }
  }
}
