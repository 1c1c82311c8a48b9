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

  @Test
  void what_comes_again_in_rhythm_alone_or_in_ups_and_downs_alone_is_no_idea_yet() {
    List<Note> rhythmAlone =
        line(
            "C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5 D4/0.5 F4/0.5 A4 G4/0.5 B4/1.5"
                + " C4/0.5 E4/0.5 D4 B3/0.5 C4/1.5");
    assertEquals(rhythmAlone, OpeningIdea.of(rhythmAlone));
    List<Note> shapeAlone =
        line(
            "C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5 D5/2 Bb4 A4/0.25 Bb4/2 G4"
                + " C5 A4/2 G4/0.25 A4/1.5 E4");
    assertEquals(shapeAlone, OpeningIdea.of(shapeAlone));
  }

  @Test
  void the_shortest_head_that_comes_again_is_the_idea() {
    List<Note> three = line("C5/0.5 G4 A4/2 D5/0.5 A4 Bb4/2 E5/0.5 B4 C5/2 C5/0.5 G4 A4/2");
    assertEquals(three.subList(0, 3), OpeningIdea.of(three));
  }

  @Test
  void two_statements_of_a_long_idea_are_one_idea() {
    String idea = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5 E4 G4/0.5 D4/1.5";
    List<Note> twice = line(idea + " " + idea);
    assertEquals(twice.subList(0, 8), OpeningIdea.of(twice));
  }

  @Test
  void a_slow_players_times_may_differ_by_a_third() {
    List<Note> uneven =
        line(
            "C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5 D5/0.6 Bb4/0.45 A4/1.2 Bb4/0.6 G4/2.5"
                + " C5/0.5 A4/0.5 G4 A4/0.5 E4/1.5");
    assertEquals(uneven.subList(0, 5), OpeningIdea.of(uneven));
  }

  @Test
  void eight_notes_are_an_idea_even_where_their_half_comes_again() {
    List<Note> eight = line("C5/0.5 A4/0.5 G4 F4/2 C5/0.5 A4/0.5 G4 F4/2");
    assertEquals(eight, OpeningIdea.of(eight));
  }

  @Test
  void one_turn_in_five_may_differ() {
    // The last statement ends upwards: one of eight ways between notes.
    List<Note> notes =
        line(
            "C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5 D5/0.5 Bb4/0.5 A4 Bb4/0.5 G4/1.5"
                + " C5/0.5 A4/0.5 G4 A4/0.5 B4/1.5");
    assertEquals(notes.subList(0, 5), OpeningIdea.of(notes));
  }
}
