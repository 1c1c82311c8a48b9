package holdfast.listening.keyboard;

import holdfast.listening.Capture;
import holdfast.listening.NoteSource;
import holdfast.time.TakeClock;
import javax.sound.midi.Receiver;

/**
 * A keyboard that makes no sound itself, and a voice that sounds it while it is listened to. Every
 * message goes to the voice, pedals and bends included, on the device's own thread: any detour
 * would be felt.
 *
 * @param keyboard what is listened to
 * @param voice what it sounds through; must not keep its caller waiting. It is closed when the
 *     cable is pulled, and used again when the cable is back.
 */
public record SoundedKeyboard(Keyboard keyboard, Receiver voice) implements NoteSource {

  @Override
  public String name() {
    return keyboard.name();
  }

  @Override
  public Capture open(TakeClock clock) {
    return keyboard.open(clock, new SoundedCable(new DeviceCable(keyboard), voice));
  }
}
