package holdfast.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.listening.PlayedNote;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Levels and sureness as they were measured on made recordings with a loudspeaker in the room. */
class LeftoverTest {

  private static final List<PlayedNote> PHRASE =
      List.of(note(1, 0.66, 0.99), note(1.5, 0.65, 0.98), note(2, 0.67, 0.99), note(2.5, 0.5, 0.8));

  @Test
  void a_weak_tone_in_a_pause_is_the_backings() {
    assertEquals(PHRASE, Leftover.dropped(and(note(8, 0.44, 0.7), note(8.3, 0.37, 0.8))));
  }

  @Test
  void a_soft_note_among_the_players_is_the_players() {
    List<PlayedNote> notes = and(note(3.2, 0.3, 0.6));
    assertEquals(notes, Leftover.dropped(notes));
  }

  @Test
  void a_soft_note_that_is_surely_sung_is_the_players_wherever_it_stands() {
    List<PlayedNote> notes = and(note(8, 0.4, 0.95));
    assertEquals(notes, Leftover.dropped(notes));
  }

  @Test
  void a_loud_note_is_the_players_however_unsure_its_pitch() {
    List<PlayedNote> notes = and(note(8, 0.6, 0.5));
    assertEquals(notes, Leftover.dropped(notes));
  }

  @Test
  void where_nothing_is_sure_all_is_kept() {
    List<PlayedNote> notes = List.of(note(1, 0.3, 0.6), note(5, 0.5, 0.7));
    assertEquals(notes, Leftover.dropped(notes));
  }

  private static List<PlayedNote> and(PlayedNote... more) {
    List<PlayedNote> notes = new ArrayList<>(PHRASE);
    notes.addAll(List.of(more));
    return notes;
  }

  private static PlayedNote note(double onsetSeconds, double loudness, double confidence) {
    return new PlayedNote(onsetSeconds, 0.4, 60, 0, loudness, confidence);
  }
}
