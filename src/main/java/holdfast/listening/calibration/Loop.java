package holdfast.listening.calibration;

import holdfast.listening.microphone.LineSamples;
import holdfast.mistake.UserMistake;
import java.util.Arrays;
import java.util.OptionalDouble;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;

/** Plays a chirp and records it again: how long does sound take from the program and back? */
public final class Loop {

  private static final int RATE = 48_000;

  /** Seconds recorded after the chirp has been handed over. */
  private static final double LISTEN_SECONDS = 1.5;

  private Loop() {}

  /**
   * Measures the delay of a pair of devices.
   *
   * @param output part of the output device's name; empty for the default
   * @param microphone an open line, already started
   * @return seconds from the chirp's being handed to the output to its being heard; empty when it
   *     was not heard
   * @throws UserMistake when the output is missing or busy
   */
  public static OptionalDouble delay(String output, LineSamples microphone) {
    AudioFormat format = new AudioFormat(RATE, 16, 2, true, false);
    try (SourceDataLine out = open(output, format)) {
      out.start();
      microphone.forget();
      float[] recorded = new float[(int) (LISTEN_SECONDS * microphone.rate())];
      int have = microphone.read(recorded, 0, microphone.rate() / 10);
      byte[] bytes = bytes(Chirp.samples(RATE));
      int first = have;
      // What has been recorded at this moment: what was read, and what waits in the line.
      int atWrite = have + microphone.waiting();
      out.write(bytes, 0, bytes.length);
      while (have < recorded.length) {
        int got = microphone.read(recorded, have, Math.min(480, recorded.length - have));
        if (got <= 0) {
          break;
        }
        have += got;
      }
      OptionalDouble at = Chirp.find(Arrays.copyOf(recorded, have), microphone.rate());
      return at.isEmpty() || at.getAsDouble() < first
          ? OptionalDouble.empty()
          : OptionalDouble.of(Math.max(0, (at.getAsDouble() - atWrite) / microphone.rate()));
    } catch (LineUnavailableException | IllegalArgumentException busy) {
      throw new UserMistake(
          "the loudspeaker \""
              + output
              + "\" is missing or busy; choose another, or close the"
              + " program that uses it",
          busy);
    }
  }

  private static SourceDataLine open(String output, AudioFormat format)
      throws LineUnavailableException {
    DataLine.Info wanted = new DataLine.Info(SourceDataLine.class, format);
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      Mixer mixer = AudioSystem.getMixer(info);
      if (info.getName().contains(output) && mixer.isLineSupported(wanted)) {
        SourceDataLine line = (SourceDataLine) mixer.getLine(wanted);
        line.open(format, RATE * format.getFrameSize());
        return line;
      }
    }
    throw new LineUnavailableException("no output " + output);
  }

  private static byte[] bytes(float[] chirp) {
    byte[] bytes = new byte[4 * chirp.length];
    for (int i = 0; i < chirp.length; i++) {
      short value = (short) Math.round(32767 * chirp[i]);
      for (int c = 0; c < 2; c++) {
        bytes[4 * i + 2 * c] = (byte) value;
        bytes[4 * i + 2 * c + 1] = (byte) (value >> 8);
      }
    }
    return bytes;
  }
}
