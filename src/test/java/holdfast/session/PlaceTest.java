package holdfast.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Form;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.time.Metre;
import java.util.List;
import org.junit.jupiter.api.Test;

class PlaceTest {

  private static final Form EIGHT_BARS = DemoTake.shipped().chart().form();

  private static List<Note> at(double beat, String notes) {
    return IdeaNotation.parse(notes).stream()
        .map(n -> new Note(n.onsetBeats() + beat, n.durationBeats(), n.pitch()))
        .toList();
  }

  private static Place placeOf(List<Note> phrase) {
    return Place.at(Place.beatThatPlaces(phrase, Metre.COMMON), EIGHT_BARS);
  }

  @Test
  void bars_and_choruses_count_from_one() {
    assertEquals(new Place(1, 1), Place.at(0, EIGHT_BARS));
    assertEquals(new Place(1, 8), Place.at(31.9, EIGHT_BARS));
    assertEquals(new Place(2, 1), Place.at(32, EIGHT_BARS));
  }

  @Test
  void a_phrase_that_comes_a_hair_early_belongs_to_the_bar_it_means() {
    assertEquals(new Place(1, 3), placeOf(at(7.97, "C5/0.5 A4/0.5 G4")));
  }

  @Test
  void a_pick_up_belongs_to_the_bar_that_it_leads_into() {
    assertEquals(new Place(1, 2), placeOf(at(3.5, "G4/0.5 A4 C5 A4")));
  }

  @Test
  void a_short_phrase_at_the_end_of_a_bar_stays_in_its_bar() {
    assertEquals(new Place(1, 1), placeOf(at(2.5, "G4/0.5 A4/0.5 C5/0.4")));
  }

  @Test
  void the_coach_is_silent_in_every_other_chorus_unless_asked_to_speak_more() {
    assertTrue(Feedback.CHORUS.tellsAt(new Place(1, 4)));
    assertFalse(Feedback.CHORUS.tellsAt(new Place(2, 4)));
    assertTrue(Feedback.PHRASE.tellsAt(new Place(2, 4)));
    assertFalse(Feedback.END.tellsAt(new Place(1, 1)));
  }
}
