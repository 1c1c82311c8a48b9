package holdfast.motif;

import static holdfast.motif.Made.added;
import static holdfast.motif.Made.change;
import static holdfast.motif.Made.dropped;
import static holdfast.motif.Made.kept;
import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.motif.NoteChange.Kind;
import holdfast.theory.Harmony;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Every number, direction and name in what is said of a phrase, for verdicts written by hand. */
class SentencesTest {

  private static final List<Note> FIVE = Written.typical(0, 62, 65, 69, 67, 65);

  private static Context over(Object... startingAt) {
    TreeMap<Double, Harmony> chords = new TreeMap<>();
    for (int i = 0; i < startingAt.length; i += 2) {
      chords.put(((Number) startingAt[i]).doubleValue(), Harmony.parse((String) startingAt[i + 1]));
    }
    return Context.over(Changes.through(chords, Optional.empty()), Player.KEYBOARD, 4);
  }

  private static List<String> why(Context context, Verdict verdict) {
    return Why.sentences(verdict, FIVE, context);
  }

  private static String done(Verdict verdict) {
    return why(Context.NOTES_ONLY, verdict).get(0);
  }

  private static List<String> notes(Treatment treatment, NoteChange... changes) {
    List<String> why = why(Context.NOTES_ONLY, Made.verdict(treatment, changes));
    return why.subList(1, why.size());
  }

  @Test
  void notes_that_made_way_are_told_chord_by_chord_with_their_direction() {
    Context context = over(0, "Dm7", 1, "Fm7", 2.5, "Bb7");
    Verdict verdict =
        Made.verdict(
            Treatment.SEQUENCE,
            kept(0, 0),
            change(Kind.MOVED_TO_FIT, 1, 1, 1),
            change(Kind.MOVED_TO_FIT, 2, 2, -1),
            change(Kind.MOVED_TO_FIT, 3, 3, -2),
            change(Kind.MOVED_TO_FIT, 4, 4, 1));
    assertEquals(
        "You moved the second note up to fit the Dm7, and the third and fourth notes down to fit"
            + " the Fm7, and the last note up to fit the B♭7.",
        why(context, verdict).get(1));
    Verdict both =
        Made.verdict(
            Treatment.SEQUENCE,
            change(Kind.MOVED_TO_FIT, 2, 2, -1),
            change(Kind.MOVED_TO_FIT, 3, 3, 1));
    assertEquals("You moved the third and fourth notes to fit the Fm7.", why(context, both).get(1));
    assertEquals(
        "You moved the first note up to fit the chord.",
        notes(Treatment.SEQUENCE, change(Kind.MOVED_TO_FIT, 0, 0, 2)).get(0));
  }

  @Test
  void up_to_three_notes_are_named_and_more_are_counted() {
    assertEquals(
        List.of("The first, third and last notes slipped."),
        notes(
            Treatment.LITERAL,
            change(Kind.SLIPPED, 0, 0, 1),
            change(Kind.SLIPPED, 2, 2, 1),
            change(Kind.SLIPPED, 4, 4, -1)));
    assertEquals(
        List.of("4 notes slipped."),
        notes(
            Treatment.LITERAL,
            change(Kind.SLIPPED, 0, 0, 1),
            change(Kind.SLIPPED, 1, 1, 1),
            change(Kind.SLIPPED, 2, 2, 1),
            change(Kind.SLIPPED, 4, 4, -1)));
  }

  @Test
  void the_eleventh_note_is_counted_and_the_only_one_is_the_first() {
    double[] onsets = new double[12];
    for (int i = 0; i < 12; i++) {
      onsets[i] = i;
    }
    List<Note> twelve = Written.line(0, onsets, 60, 62, 64, 65, 67, 69, 71, 72, 74, 76, 77, 79);
    List<String> said =
        new NoteSentences(
                Made.verdict(
                    Treatment.LITERAL,
                    change(Kind.SLIPPED, 9, 9, 1),
                    change(Kind.SLIPPED, 10, 10, 1)),
                twelve,
                Optional.empty())
            .sentences();
    assertEquals(List.of("The tenth and 11th notes slipped."), said);
    assertEquals(
        List.of("The first note slipped."),
        new NoteSentences(
                Made.verdict(Treatment.LITERAL, change(Kind.SLIPPED, 0, 0, 1)),
                twelve.subList(0, 1),
                Optional.empty())
            .sentences());
  }

  @Test
  void notes_that_went_elsewhere_by_choice_are_told_of_a_restatement_alone() {
    for (Treatment t : List.of(Treatment.LITERAL, Treatment.TRANSPOSED, Treatment.SEQUENCE)) {
      assertEquals(
          List.of("You changed the second note, and it fits as well."),
          notes(t, change(Kind.MOVED, 1, 1, 2)));
    }
    assertEquals(
        List.of("You changed the second and third notes, and they fit as well."),
        notes(Treatment.LITERAL, change(Kind.MOVED, 1, 1, 2), change(Kind.MOVED, 2, 2, 2)));
    assertEquals(List.of(), notes(Treatment.CONTOUR_KEPT, change(Kind.MOVED, 1, 1, 2)));
    assertEquals(List.of(), notes(Treatment.LITERAL, kept(0, 0)));
  }

  @Test
  void what_is_missing_and_what_came_in_is_counted() {
    assertEquals(List.of("One note was left out."), notes(Treatment.LITERAL, dropped(1)));
    assertEquals(
        List.of("2 notes were left out."), notes(Treatment.LITERAL, dropped(1), dropped(2)));
    assertEquals(List.of("One note was put in."), notes(Treatment.LITERAL, added(1)));
    assertEquals(List.of("2 notes were put in."), notes(Treatment.LITERAL, added(1), added(2)));
    assertEquals(
        List.of("One note was left out, and 2 notes were put in."),
        notes(Treatment.LITERAL, dropped(1), added(1), added(2)));
    assertEquals(
        List.of("2 notes were left out, and one note was put in."),
        notes(Treatment.LITERAL, dropped(1), dropped(2), added(2)));
  }

  @Test
  void what_the_treatment_says_already_is_not_told_again() {
    assertEquals(List.of(), notes(Treatment.FRAGMENT, dropped(3), dropped(4)));
    assertEquals(List.of("One note was put in."), notes(Treatment.FRAGMENT, dropped(4), added(1)));
    for (Treatment t : List.of(Treatment.EXTENDED, Treatment.ORNAMENTED)) {
      assertEquals(List.of(), notes(t, added(3), added(4)));
      assertEquals(List.of("One note was left out."), notes(t, dropped(2), added(4)));
    }
  }

  @Test
  void no_more_than_two_sentences_are_said_of_notes_and_the_chord_comes_first() {
    assertEquals(
        List.of("You moved the second note up to fit the chord.", "The third note slipped."),
        notes(
            Treatment.LITERAL,
            change(Kind.MOVED_TO_FIT, 1, 1, 1),
            change(Kind.SLIPPED, 2, 2, 1),
            change(Kind.MOVED, 3, 3, 1),
            dropped(4)));
  }

  @Test
  void each_treatment_is_told_with_its_size() {
    assertEquals(
        "You moved the whole idea down a fifth and kept every interval.",
        done(Made.verdict(Treatment.TRANSPOSED, -7, 0, 0, 1, "")));
    assertEquals(
        "You moved your idea up a step along the scale: the same shape, on new notes.",
        done(Made.verdict(Treatment.SEQUENCE, 2, 1, 0, 1, "")));
    assertEquals(
        "You moved your idea down 2 steps along the scale: the same shape, on new notes.",
        done(Made.verdict(Treatment.SEQUENCE, -3, -2, 0, 1, "")));
    assertEquals(
        "You played your idea again, with the same notes, twice.",
        done(Made.verdict(Treatment.LITERAL, 0, 0, 0, 1, "twice")));
    assertEquals(
        "You played your idea twice as slow.",
        done(Made.verdict(Treatment.AUGMENTED, 0, 0, 0, 2, "")));
    assertEquals(
        "You played your idea 1.50 times as slow.",
        done(Made.verdict(Treatment.AUGMENTED, 0, 0, 0, 1.5, "")));
    assertEquals(
        "You played your idea twice as fast.",
        done(Made.verdict(Treatment.DIMINISHED, 0, 0, 0, 0.5, "")));
    assertEquals(
        "You played your idea 4.00 times as fast.",
        done(Made.verdict(Treatment.DIMINISHED, 0, 0, 0, 0.25, "")));
    assertEquals(
        "You took the beginning of your idea and left the rest out.",
        done(Made.verdict(Treatment.FRAGMENT, 0, 0, 0, 1, "head")));
    assertEquals(
        "You took a part of your idea and left the rest out.",
        done(Made.verdict(Treatment.FRAGMENT, 0, 0, 0, 1, "")));
    assertEquals(
        "You took a part of your idea and said it 3 times.",
        done(Made.verdict(Treatment.FRAGMENT, 0, 0, 0, 1, "3 times")));
    assertEquals(
        "You took a part of your idea and said it twice.",
        done(Made.verdict(Treatment.FRAGMENT, 0, 0, 0, 1, "twice")));
    assertEquals(
        "You played your whole idea and added notes in front.",
        done(Made.verdict(Treatment.EXTENDED, 0, 0, 0, 1, "in front")));
    assertEquals(
        "You played your whole idea and added notes to it.",
        done(Made.verdict(Treatment.EXTENDED)));
    assertEquals(
        "You kept the rhythm of your idea and chose other notes.",
        done(Made.verdict(Treatment.RHYTHM_KEPT)));
  }

  @Test
  void another_place_in_the_bar_is_told_of_a_restatement_to_the_half_beat() {
    for (Treatment t : List.of(Treatment.LITERAL, Treatment.TRANSPOSED, Treatment.SEQUENCE)) {
      assertEquals(
          true,
          done(Made.verdict(t, 2, 1, 1, 1, "")).endsWith(", a beat later in the bar."),
          t.word());
    }
    assertEquals(false, done(Made.verdict(Treatment.FRAGMENT, 0, 0, 1, 1, "")).contains("later"));
  }

  private static Optional<String> place(double shift) {
    return Made.verdict(Treatment.LITERAL, 0, 0, shift, 1, "").placeInBar();
  }

  @Test
  void a_place_in_the_bar_is_told_in_half_beats_and_a_breath_is_none() {
    assertEquals(Optional.of("half a beat later in the bar"), place(0.5));
    assertEquals(Optional.of("half a beat earlier in the bar"), place(-0.4));
    assertEquals(Optional.of("a beat earlier in the bar"), place(-1.1));
    assertEquals(Optional.of("1.5 beats later in the bar"), place(1.5));
    assertEquals(Optional.of("2 beats later in the bar"), place(2));
    assertEquals(Optional.of("2.5 beats earlier in the bar"), place(-2.5));
    assertEquals(Optional.empty(), place(0.3));
    assertEquals(Optional.empty(), place(-0.3));
    assertEquals(Optional.empty(), Made.verdict(Treatment.NEW, 0, 0, 2, 1, "").placeInBar());
  }

  private static List<String> asNew(double rhythm, double contour) {
    Verdict made = Made.verdict(Treatment.NEW);
    return why(
        Context.NOTES_ONLY,
        new Verdict(
            Treatment.NEW,
            Family.NEW,
            0,
            0,
            0,
            1,
            1,
            0,
            made.probabilities(),
            0,
            new Evidence(rhythm, contour, 0),
            List.of(),
            Material.ARPEGGIO,
            ""));
  }

  @Test
  void of_new_material_it_is_told_what_came_nearest_to_the_idea() {
    assertEquals(
        "I did not hear your idea in this phrase; it was an arpeggio.", asNew(0, 0).get(0));
    assertEquals(
        "Some of its rhythm was there, but the ups and downs were others.", asNew(0.8, 0.3).get(1));
    assertEquals(
        "Some of its ups and downs were there, but the rhythm was another.",
        asNew(0.7, 0.9).get(1));
    assertEquals("Neither its rhythm nor its ups and downs came back.", asNew(0.5, 0.5).get(1));
  }

  private static List<String> unsure(double confidence, double second) {
    Map<Treatment, Double> p = new EnumMap<>(Treatment.class);
    p.put(Treatment.LITERAL, confidence);
    p.put(Treatment.ORNAMENTED, second);
    p.put(Treatment.NEW, 1 - confidence - second);
    return why(Context.NOTES_ONLY, Made.verdict(Treatment.LITERAL).with(p, 1));
  }

  @Test
  void where_it_is_not_sure_it_says_what_else_it_might_have_been() {
    assertEquals(
        List.of(
            "You played your idea again, with the same notes.",
            "I am not sure: it could also be the idea with short notes put in."),
        unsure(0.5, 0.4));
    assertEquals(1, unsure(0.8, 0.2).size(), "sure enough");
    assertEquals(1, unsure(0.73, 0.14).size(), "nothing worth telling");
    assertEquals(
        "I am not sure: it could also be something new.", unsure(0.5, 0.2).get(1), "the likelier");
  }
}
