package holdfast.carry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.harmony.WorkedAdaptations;
import holdfast.harmony.WorkedAdaptations.Answer;
import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Held against the worked adaptations of the trade (reference/adaptations.txt). */
class WorkedAdaptationsCarryTest {

  private static List<Answer> of(int example, String role) {
    return WorkedAdaptations.all().stream()
        .filter(a -> a.example() == example && a.role().equals(role))
        .toList();
  }

  private static List<Adaptation> choices(int example) {
    Answer idea = of(example, "idea").get(0);
    return Carrying.choices(
        Question.over(
            new Statement(idea.notes(), Optional.of(idea.from())),
            idea.to(),
            Optional.empty(),
            Optional.empty(),
            PitchRange.ANY));
  }

  private static boolean offers(int example, List<Note> notes) {
    return choices(example).stream().anyMatch(choice -> choice.notes().equals(notes));
  }

  @Test
  void an_accepted_answer_is_among_the_two_choices_of_every_example() {
    List<Integer> missed = new ArrayList<>();
    for (int example = 1; example <= 12; example++) {
      int number = example;
      if (of(example, "accepted").stream().noneMatch(a -> offers(number, a.notes()))) {
        missed.add(example);
      }
    }
    assertEquals(List.of(), missed);
  }

  @Test
  void nothing_that_is_rejected_is_ever_offered() {
    for (int example = 1; example <= 12; example++) {
      for (String role : List.of("hard", "soft")) {
        for (Answer rejected : of(example, role)) {
          assertFalse(offers(example, rejected.notes()), rejected.toString());
        }
      }
    }
  }

  @Test
  void where_the_accepted_answer_is_literal_it_comes_first() {
    for (int example : new int[] {1, 4, 5, 9}) {
      assertEquals(Way.LITERAL, choices(example).get(0).way(), "example " + example);
    }
  }

  @Test
  void the_reason_names_what_moves_and_where_it_arrives() {
    assertEquals(
        "The F falls a half step to E, the third of Cmaj7; D, B, A and G stay.",
        choices(2).get(0).why());
    assertEquals(
        "Nothing has to move over G7: D is the fifth, A is the ninth, G is the root and F is the"
            + " seventh.",
        choices(1).get(0).why());
    assertTrue(
        choices(10).stream()
            .anyMatch(
                c ->
                    c.why()
                        .equals(
                            "Dm7 goes up a minor third to Fm7, and the idea goes with it, note for"
                                + " note.")));
  }
}
