package holdfast.listening.microphone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayEvent;
import holdfast.listening.pitch.Tuning;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the ear takes back was never said. */
class DecidedNotesTest {

  private final DecidedNotes notes =
      new DecidedNotes(Tuning.unknown(), () -> Double.NEGATIVE_INFINITY);

  @Test
  void a_note_that_is_taken_back_is_never_told() {
    notes.began(1.0, 6000, -20);
    assertEquals(6000, notes.sounding().orElseThrow());
    assertEquals(1.0, notes.promise(1.1), "the promise waits where the open note began");
    notes.takenBack();
    assertTrue(notes.sounding().isEmpty());
    assertEquals(List.of(), notes.take());
    assertEquals(1.2, notes.promise(1.2));
  }

  @Test
  void a_scoop_is_told_as_the_pitch_where_it_settles() {
    notes.began(1.0, 5890, -20);
    assertEquals(List.of(), notes.take(), "nothing yet that could have to be unsaid");
    notes.ended(1.0, 1.6, 6004, -20, 0.9);
    List<PlayEvent> told = notes.take();
    PlayEvent.NoteOn on = (PlayEvent.NoteOn) told.get(0);
    assertEquals(60, on.pitch());
    assertEquals(4, on.cents(), 1e-9);
    assertEquals(1.0, on.seconds());
    assertEquals(new PlayEvent.NoteOff(1.6, 60), told.get(1));
    assertEquals(List.of(), notes.take(), "each event once");
  }

  @Test
  void a_note_that_the_ear_finds_late_keeps_the_promise_that_was_given() {
    notes.promise(2.0);
    notes.began(1.98, 6200, -20);
    notes.ended(1.98, 2.5, 6200, -20, 0.9);
    assertEquals(2.0, notes.take().get(0).seconds());
  }

  @Test
  void what_is_softer_than_the_gate_is_the_room() {
    DecidedNotes gated = new DecidedNotes(Tuning.unknown(), () -> -50);
    gated.began(1.0, 6000, -55);
    gated.ended(1.0, 1.5, 6000, -55, 0.9);
    gated.began(2.0, 6000, -30);
    gated.ended(2.0, 2.5, 6000, -30, 0.9);
    assertEquals(2.0, gated.take().get(0).seconds());
  }

  @Test
  void a_group_that_is_known_to_stand_forty_cents_flat_sings_the_pitches_it_means() {
    DecidedNotes flat = new DecidedNotes(Tuning.of(-40), () -> Double.NEGATIVE_INFINITY);
    flat.began(1.0, 5948, -20);
    flat.ended(1.0, 1.5, 5948, -20, 0.9);
    PlayEvent.NoteOn on = (PlayEvent.NoteOn) flat.take().get(0);
    assertEquals(60, on.pitch(), "52 cents flat of C4 at 440 Hz, 12 flat of this group's");
    assertEquals(-52, on.cents(), 1e-9);
  }
}
