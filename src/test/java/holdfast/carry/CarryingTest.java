package holdfast.carry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** How an idea goes where it is asked to; rules of the trade (common practice, no source). */
class CarryingTest {

  private static Statement idea(String notes, String chord) {
    return new Statement(IdeaNotation.parse(notes), Optional.of(Harmony.parse(chord)));
  }

  private static Question ask(Statement idea, String to) {
    return Question.over(
        idea, Harmony.parse(to), Optional.empty(), Optional.empty(), PitchRange.ANY);
  }

  private static String first(Question question) {
    return IdeaNotation.print(Carrying.choices(question).get(0).notes());
  }

  @Test
  void an_idea_over_no_chord_stays_as_it_is() {
    List<Adaptation> choices = Carrying.choices(ask(idea("C4 E4 G4", "C"), "N.C."));
    assertEquals(Way.LITERAL, choices.get(0).way());
    assertEquals("No chord sounds here: say it as it is.", choices.get(0).why());
  }

  @Test
  void a_chromatic_approach_that_leads_is_kept() {
    Adaptation choice = Carrying.choices(ask(idea("E4 D#4/0.5 E4/0.5 G4/2", "C6"), "Cmaj7")).get(0);
    assertEquals(Way.LITERAL, choice.way());
  }

  @Test
  void an_optional_chord_lets_the_idea_stay_on_the_chord_before() {
    assertEquals(
        Way.LITERAL, Carrying.choices(ask(idea("C4 E4 B4/2", "Cmaj7"), "(C#dim7)")).get(0).way());
  }

  @Test
  void a_pick_up_may_still_belong_to_the_old_chord() {
    Adaptation choice =
        Carrying.choices(ask(idea("G4/0.5 | C5/0.75 A4/0.25 C5 A4/1.5", "Am7"), "D7")).get(0);
    assertEquals(Way.LITERAL, choice.way());
    assertEquals("The pick-up still belongs to Am7.", choice.reasons().get(1));
  }

  @Test
  void the_range_of_a_voice_is_kept_by_an_octave_when_need_be() {
    Question question =
        Question.over(
            idea("C6/0.5 D6/0.5 E6 D6/0.5 C6/1.5", "C6"),
            Harmony.parse("C6"),
            Optional.empty(),
            Optional.empty(),
            new PitchRange(57, 79));
    assertEquals("C5/0.5 D5/0.5 E5 D5/0.5 C5/1.5", first(question));
    assertEquals(
        "The whole idea goes down an octave, note for note.",
        Carrying.choices(question).get(0).why());
  }

  @Test
  void it_goes_on_from_the_last_statement_rather_than_from_the_first() {
    Statement first = idea("C4/0.5 Eb4/0.5 G4 Eb4/0.5 C4/1.5", "Cm7");
    Statement higher = idea("G4/0.5 Bb4/0.5 D5 Bb4/0.5 G4/1.5", "Gm7");
    Question fromFirst = ask(first, "C7");
    Question fromLast =
        new Question(
            first,
            higher,
            fromFirst.changes(),
            0,
            fromFirst.metre(),
            PitchRange.ANY,
            Habit.UNKNOWN);
    assertEquals("C4/0.5 E4/0.5 G4 E4/0.5 C4/1.5", first(fromFirst));
    List<Note> near = Carrying.choices(fromLast).get(0).notes();
    assertTrue(near.get(0).pitch() >= 64, "near the last statement: " + near);
  }

  @Test
  void a_player_who_moves_the_whole_idea_is_offered_that_first() {
    Statement idea = idea("D4/0.5 F4/0.5 A4 G4/0.5 F4/1.5", "Dm7");
    Question unknown = ask(idea, "Fm7");
    Question known =
        new Question(
            idea,
            idea,
            unknown.changes(),
            0,
            unknown.metre(),
            PitchRange.ANY,
            Habit.heard(List.of(Way.TRANSPOSED, Way.TRANSPOSED, Way.TRANSPOSED)));
    assertEquals(Way.SKEWED, Carrying.choices(unknown).get(0).way());
    assertEquals(Way.TRANSPOSED, Carrying.choices(known).get(0).way());
  }

  @Test
  void a_habit_is_as_likely_as_it_was_heard() {
    Habit habit = Habit.heard(List.of(Way.SEQUENCE, Way.SEQUENCE, Way.LITERAL));
    assertEquals(3.0 / 7, habit.likelihood(Way.SEQUENCE), 1e-12);
    assertEquals(1.0 / 7, habit.likelihood(Way.SKEWED), 1e-12);
    assertEquals(0, Habit.UNKNOWN.cost(Way.SKEWED), 1e-12);
    assertTrue(habit.cost(Way.SEQUENCE) < habit.cost(Way.LITERAL));
  }

  @Test
  void statements_of_other_lengths_and_ranges_without_room_are_refused() {
    Statement idea = idea("C4 E4 G4", "C");
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new Question(
                idea,
                idea("C4", "C"),
                ask(idea, "C").changes(),
                0,
                ask(idea, "C").metre(),
                PitchRange.ANY,
                Habit.UNKNOWN));
    assertThrows(IllegalArgumentException.class, () -> new PitchRange(60, 65));
  }

  @Test
  void a_player_s_statements_show_a_habit() {
    Optional<Key> key = Optional.of(Key.parse("C"));
    Statement first = said("C4 E4 G4 E4", "C6");
    Statement second = said("D4 F4 A4 F4", "Dm7");
    Statement third = said("E4 G4 B4 G4", "Em7");
    assertEquals(Way.SEQUENCE, Way.between(first, second, key));
    assertEquals(Way.TRANSPOSED, Way.between(second, third, key));
    assertEquals(Way.LITERAL, Way.between(third, third, key));
    assertEquals(Way.SKEWED, Way.between(first, said("C4 E4 A4 E4", "Am7"), key));
    Habit habit = Habit.of(List.of(first, second, first, said("C4 E4", "C")), key);
    assertEquals(3.0 / 6, habit.likelihood(Way.SEQUENCE), 1e-12);
  }

  private static Statement said(String notes, String chord) {
    return new Statement(IdeaNotation.parse(notes), Optional.of(Harmony.parse(chord)));
  }
}
