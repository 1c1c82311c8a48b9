package holdfast.listening.microphone;

import holdfast.listening.Capture;
import holdfast.listening.NoteSource;
import holdfast.listening.pitch.Levels;
import holdfast.mistake.UserMistake;
import holdfast.time.TakeClock;
import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;

/**
 * A microphone to sing or play into.
 *
 * @param name the device's name as the system gives it
 * @param delaySeconds from a sound's reaching the microphone to its reaching the ear, as
 *     calibration measured it; taken off every time that is told
 * @param lowestHz lowest pitch that is looked for
 * @param highestHz highest pitch that is looked for
 * @param levels what calibration found of voice and room
 */
public record Microphone(
    String name, double delaySeconds, double lowestHz, double highestHz, Levels levels)
    implements NoteSource {

  /** Bytes that may wait in the device, as time: 20 ms, so that sound comes in small pieces. */
  private static final double LINE_SECONDS = 0.02;

  /** Formats from the most wanted on: rates, then bits, then channels. */
  private static List<AudioFormat> formats() {
    List<AudioFormat> formats = new ArrayList<>();
    for (int bits : new int[] {16, 24}) {
      for (float rate : new float[] {48_000, 44_100}) {
        for (int channels : new int[] {1, 2}) {
          formats.add(new AudioFormat(rate, bits, channels, true, false));
        }
      }
    }
    return formats;
  }

  /** The names of all devices that can be recorded from. */
  public static List<String> names() {
    List<String> names = new ArrayList<>();
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      if (records(info)) {
        names.add(info.getName());
      }
    }
    return List.copyOf(names);
  }

  private static boolean records(Mixer.Info info) {
    Mixer mixer = AudioSystem.getMixer(info);
    return formats().stream()
        .anyMatch(format -> mixer.isLineSupported(new DataLine.Info(TargetDataLine.class, format)));
  }

  @Override
  public Capture open(TakeClock clock) {
    return new MicrophoneCapture(this, openLine(name), clock);
  }

  /**
   * Opens a device in the best format that it has.
   *
   * @param name a name from {@link #names()}, or part of one; empty for the system's default
   * @throws UserMistake when it is missing, busy or of the wrong kind
   */
  public static TargetDataLine openLine(String name) {
    boolean found = false;
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      if (!info.getName().contains(name) || !records(info)) {
        continue;
      }
      found = true;
      Mixer mixer = AudioSystem.getMixer(info);
      for (AudioFormat format : formats()) {
        DataLine.Info wanted = new DataLine.Info(TargetDataLine.class, format);
        if (!mixer.isLineSupported(wanted)) {
          continue;
        }
        try {
          TargetDataLine line = (TargetDataLine) mixer.getLine(wanted);
          int frames = (int) (format.getSampleRate() * LINE_SECONDS);
          line.open(format, frames * format.getFrameSize());
          return line;
        } catch (LineUnavailableException | IllegalArgumentException | SecurityException next) {
          // The next format may be free; if none is, that is told below.
        }
      }
    }
    if (found) {
      throw new UserMistake(
          "the microphone \""
              + name
              + "\" is busy or cannot record at 44.1 or 48 kHz; close the program that uses it, or"
              + " choose another: "
              + String.join(", ", names()));
    }
    List<String> there = names();
    throw new UserMistake(
        there.isEmpty()
            ? "no microphone is connected; plug one in, or play on a keyboard instead"
            : "there is no microphone \"" + name + "\"; there are: " + String.join(", ", there));
  }
}
