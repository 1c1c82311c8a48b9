package holdfast.listening.keyboard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.mistake.UserMistake;
import holdfast.time.TakeClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.SysexMessage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Message bytes are those of the MIDI 1.0 Detailed Specification, tables I and II (from memory).
 */
class KeyboardTest {

  private static final Duration TICK = Duration.ofMillis(10);
  private static final int NOTE_ON = 0x90;
  private static final int NOTE_OFF = 0x80;

  @BeforeEach
  void plugIn() {
    TestCable.plugIn();
  }

  @AfterEach
  void pullOut() {
    TestCable.pullOut();
  }

  @Test
  void inputs_are_listed_by_their_plain_names() {
    assertTrue(Keyboard.all().contains(new Keyboard(TestCable.NAME)));
    assertEquals(TestCable.NAME, Keyboard.named("test k").name());
  }

  @Test
  void an_input_that_is_missing_is_told_with_those_that_are_there() {
    UserMistake mistake = assertThrows(UserMistake.class, () -> Keyboard.named("harpsichord"));
    assertTrue(mistake.getMessage().contains(TestCable.NAME), mistake.getMessage());
  }

  @Test
  void notes_are_stamped_when_they_arrive_and_not_by_the_device() throws Exception {
    long zero = System.nanoTime();
    try (Capture ear = new Keyboard(TestCable.NAME).open(TakeClock.from(zero))) {
      TestCable.send(NOTE_ON, 60, 100);
      double sentBy = (System.nanoTime() - zero) * 1e-9;
      Heard heard = ear.await(TICK);
      assertEquals(1, heard.events().size());
      double seconds = heard.events().get(0).seconds();
      assertTrue(seconds > 0 && seconds <= sentBy, seconds + " s, sent by " + sentBy);
    }
  }

  @Test
  void a_note_on_of_velocity_0_is_a_note_off() throws Exception {
    try (Capture ear = open()) {
      TestCable.send(NOTE_ON, 60, 100);
      TestCable.send(NOTE_ON, 60, 0);
      List<PlayEvent> events = ear.await(TICK).events();
      assertTrue(events.get(1) instanceof PlayEvent.NoteOff, events.toString());
    }
  }

  @Test
  void clocks_sensing_bends_and_aftertouch_do_no_harm() throws Exception {
    try (Capture ear = open()) {
      TestCable.send(NOTE_ON, 60, 100);
      for (int i = 0; i < 2000; i++) {
        TestCable.send(new ShortMessage(ShortMessage.ACTIVE_SENSING));
        TestCable.send(new ShortMessage(ShortMessage.TIMING_CLOCK));
        TestCable.send(0xD0, i % 128, 0);
        TestCable.send(0xA0, 60, i % 128);
        TestCable.send(0xE0, 0, i % 128);
        TestCable.send(0xB0, 64, i % 128);
      }
      TestCable.send(new SysexMessage(new byte[] {(byte) 0xF0, 1, 2, (byte) 0xF7}, 4));
      TestCable.send(NOTE_OFF, 60, 0);
      assertEquals(2, ear.await(TICK).events().size());
      assertEquals(0, ear.lost());
    }
  }

  @Test
  void bursts_of_a_thousand_messages_are_kept_in_order_and_none_is_lost() throws Exception {
    try (Capture ear = open()) {
      List<PlayEvent> heard = new ArrayList<>();
      for (int burst = 0; burst < 20; burst++) {
        for (int i = 0; i < 500; i++) {
          TestCable.send(NOTE_ON, i % 128, 64);
          TestCable.send(NOTE_OFF, i % 128, 0);
        }
        heard.addAll(ear.await(TICK).events());
      }
      assertEquals(20_000, heard.size());
      assertEquals(0, ear.lost());
      for (int i = 0; i < heard.size(); i++) {
        assertEquals(i / 2 % 500 % 128, heard.get(i).pitch(), "message " + i);
        assertTrue(i == 0 || heard.get(i - 1).seconds() <= heard.get(i).seconds());
      }
    }
  }

  @Test
  void a_full_queue_counts_what_it_lets_go() {
    EventRing ring = new EventRing(4);
    for (int i = 0; i < 10; i++) {
      ring.offer(i, NOTE_ON, i, 64);
    }
    List<Integer> kept = new ArrayList<>();
    ring.drain((nanos, status, key, velocity) -> kept.add(key));
    assertEquals(List.of(0, 1, 2, 3), kept);
    assertEquals(6, ring.lost());
    assertTrue(ring.isEmpty());
  }

  @Test
  void a_pulled_cable_ends_what_was_held_and_a_plugged_one_is_heard_again() throws Exception {
    try (Capture ear = open()) {
      TestCable.send(NOTE_ON, 64, 90);
      List<PlayEvent> heard = new ArrayList<>(ear.await(TICK).events());
      TestCable.pullOut();
      until(ear, heard, () -> !ear.isListening());
      assertFalse(ear.isListening());
      assertEquals(new PlayEvent.NoteOff(heard.get(1).seconds(), 64), heard.get(1));

      TestCable.plugIn();
      until(ear, heard, ear::isListening);
      TestCable.send(NOTE_ON, 65, 90);
      until(ear, heard, () -> heard.size() == 3);
      assertEquals(65, heard.get(2).pitch());
    }
  }

  @Test
  void an_input_that_cannot_be_opened_is_told() {
    TestCable.pullOut();
    UserMistake mistake = assertThrows(UserMistake.class, KeyboardTest::open);
    assertTrue(mistake.getMessage().contains("cannot be opened"), mistake.getMessage());
  }

  private static Capture open() {
    return new Keyboard(TestCable.NAME).open(TakeClock.from(System.nanoTime()));
  }

  /** Waits for what a device thread brings about; a hang fails after ten seconds. */
  private static void until(Capture ear, List<PlayEvent> heard, BooleanSupplier done)
      throws InterruptedException {
    for (int i = 0; i < 1000 && !done.getAsBoolean(); i++) {
      heard.addAll(ear.await(TICK).events());
    }
    assertTrue(done.getAsBoolean(), "waited ten seconds in vain");
  }
}
