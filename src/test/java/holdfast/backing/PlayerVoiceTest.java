package holdfast.backing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;

class PlayerVoiceTest {

  private final LockstepOut out = new LockstepOut();

  private static ShortMessage key(int status, int data1, int data2)
      throws InvalidMidiDataException {
    return new ShortMessage(status, data1, data2);
  }

  @Test
  void keys_pedal_and_bends_sound_on_a_channel_that_no_part_of_the_band_uses() throws Exception {
    PlayerVoice voice = new PlayerVoice(out);
    int before = out.sent().size();
    voice.send(key(0x95, 60, 90), -1);
    voice.send(key(0xB5, 64, 127), -1);
    voice.send(key(0xE5, 0, 80), -1);
    voice.send(key(0x85, 60, 0), -1);
    // A volume pedal, a program and the clock would change what the band's mixer set.
    voice.send(key(0xB5, 7, 10), -1);
    voice.send(key(0xC5, 20, 0), -1);
    voice.send(new ShortMessage(ShortMessage.TIMING_CLOCK), -1);
    List<ShortMessage> passed =
        out.sent().stream().skip(before).map(LockstepOut.Sent::message).toList();
    assertEquals(
        List.of(0x90, 0xB0, 0xE0, 0x80), passed.stream().map(ShortMessage::getCommand).toList());
    for (Feel feel : Feel.values()) {
      List<Integer> band = Seat.band(feel).stream().map(Seat::channel).toList();
      assertEquals(band.size(), band.stream().distinct().count(), "two parts on one channel");
      assertFalse(band.contains(passed.get(0).getChannel()));
    }
  }

  @Test
  void closed_it_is_silent_at_its_old_volume_so_that_it_can_sound_again() throws Exception {
    PlayerVoice voice = new PlayerVoice(out);
    voice.send(key(0x90, 60, 90), -1);
    voice.close();
    List<ShortMessage> sent = out.sent().stream().map(LockstepOut.Sent::message).toList();
    // MIDI 1.0: controller 64 is the pedal, 120 all sound off, 7 the volume.
    assertTrue(sent.stream().anyMatch(m -> isControl(m, 64) && m.getData2() == 0));
    assertTrue(isControl(sent.get(sent.size() - 1), 120));
    assertTrue(sent.stream().filter(m -> isControl(m, 7)).allMatch(m -> m.getData2() > 0));
    assertFalse(out.silenced());
  }

  private static boolean isControl(ShortMessage message, int controller) {
    return message.getCommand() == ShortMessage.CONTROL_CHANGE && message.getData1() == controller;
  }
}
