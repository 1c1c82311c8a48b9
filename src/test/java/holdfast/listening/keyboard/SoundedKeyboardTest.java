package holdfast.listening.keyboard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.Capture;
import holdfast.listening.PlayEvent;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.Receiver;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A keyboard that makes no sound itself is heard through a voice, and by the coach as ever. */
@Timeout(20)
class SoundedKeyboardTest {

  private static final class Voice implements Receiver {
    private final List<String> told = new CopyOnWriteArrayList<>();

    @Override
    public void send(MidiMessage message, long stamp) {
      StringBuilder bytes = new StringBuilder();
      for (int i = 0; i < message.getLength(); i++) {
        bytes.append(String.format("%02X ", message.getMessage()[i]));
      }
      told.add(bytes.toString().strip());
    }

    @Override
    public void close() {
      told.add("silence");
    }
  }

  private final Voice voice = new Voice();

  @BeforeEach
  void plugIn() {
    TestCable.plugIn();
  }

  @AfterEach
  void pullOut() {
    TestCable.pullOut();
  }

  private Capture open() {
    return new SoundedKeyboard(Keyboard.named(TestCable.NAME), voice)
        .open(nanoTime -> nanoTime / 1e9);
  }

  @Test
  void every_message_reaches_the_voice_at_once_pedal_and_bend_included() throws Exception {
    try (Capture ear = open()) {
      TestCable.send(0xB0, 64, 127);
      TestCable.send(0x90, 60, 90);
      TestCable.send(0xE0, 0, 80);
      TestCable.send(0x80, 60, 0);
      // Before anybody has listened: the way to the ear is no detour of the sound.
      assertEquals(List.of("B0 40 7F", "90 3C 5A", "E0 00 50", "80 3C 00"), voice.told);
      List<PlayEvent> heard = new ArrayList<>(ear.await(Duration.ofSeconds(1)).events());
      assertEquals(List.of(60, 60), heard.stream().map(PlayEvent::pitch).toList());
    }
    assertEquals("silence", voice.told.get(voice.told.size() - 1));
  }

  @Test
  void when_the_cable_is_pulled_no_note_hangs_and_when_it_is_back_it_sounds_again()
      throws Exception {
    try (Capture ear = open()) {
      TestCable.send(0x90, 60, 90);
      TestCable.pullOut();
      while (ear.isListening()) {
        ear.await(Duration.ofMillis(20));
      }
      assertEquals(List.of("90 3C 5A", "silence"), voice.told);
      TestCable.plugIn();
      while (!ear.isListening()) {
        ear.await(Duration.ofMillis(20));
      }
      TestCable.send(0x90, 62, 90);
      assertTrue(voice.told.contains("90 3E 5A"), voice.told.toString());
    }
  }
}
