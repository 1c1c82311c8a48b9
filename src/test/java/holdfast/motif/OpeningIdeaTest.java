package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import java.util.List;
import org.junit.jupiter.api.Test;

class OpeningIdeaTest {

  private static List<Note> line(String notes) {
    return IdeaNotation.parse(notes);
  }

  @Test
  void a_short_phrase_is_the_idea_as_it_is() {
    List<Note> phrase = line("C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5");
    assertEquals(phrase, OpeningIdea.of(phrase));
  }

  @Test
  void an_idea_that_is_said_three_times_without_a_breath_is_one_idea() {
    List<Note> phrase =
        line(
            "C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5 D5/0.5 Bb4/0.5 A4 Bb4/0.5 G4/1.5"
                + " C5/0.5 A4/0.5 G4 A4/0.5 E4/1.5");
    assertEquals(phrase.subList(0, 5), OpeningIdea.of(phrase));
  }

  @Test
  void a_long_run_of_even_notes_is_no_idea_that_comes_again() {
    List<Note> run =
        line("C4/0.5 D4/0.5 E4/0.5 F4/0.5 G4/0.5 A4/0.5 B4/0.5 C5/0.5 D5/0.5 E5/0.5 F5/0.5 G5/0.5");
    assertEquals(run, OpeningIdea.of(run));
  }

  @Test
  void a_long_line_that_never_repeats_stays_whole() {
    List<Note> line =
        line("E4 G4/0.5 F4/0.5 A4/1.5 D4/0.5 C5 B4/0.25 G4/0.75 A4/2 F4/0.5 E4/1.5 C4/0.5 D4");
    assertEquals(line, OpeningIdea.of(line));
  }
}
