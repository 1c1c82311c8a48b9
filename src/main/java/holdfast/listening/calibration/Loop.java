package holdfast.listening.calibration;

import holdfast.listening.microphone.LineSamples;
import holdfast.mistake.UserMistake;
import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicLong;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;

/** Plays a chirp and records it again: how long does sound take from the program and back? */
public final class Loop {

  private static final int RATE = 48_000;

  /** Seconds recorded while the chirp sounds in their first half. */
  private static final double LISTEN_SECONDS = 2;

  /** What the output line holds when it is full, in seconds. */
  static final double LINE_SECONDS = 0.05;

  /** Seconds of silence before and after the chirp. */
  private static final double LEAD = 0.4;

  /** Frames that are read and written at once: 5 ms. */
  private static final int READ = 240;

  private Loop() {}

  /**
   * Measures the delay of a pair of devices.
   *
   * @param output part of the output device's name; empty for the default
   * @param microphone an open line, already started
   * @return seconds from the chirp's being written to a full line of {@link #LINE_SECONDS} to its
   *     being read from the microphone; empty when it was not heard
   * @throws UserMistake when the output is missing or busy
   */
  public static OptionalDouble delay(String output, LineSamples microphone)
      throws InterruptedException {
    AudioFormat format = new AudioFormat(RATE, 16, 2, true, false);
    AtomicLong playedNanos = new AtomicLong(Long.MIN_VALUE);
    try (SourceDataLine out = open(output, format)) {
      Thread player = new Thread(() -> play(out, playedNanos), "chirp");
      player.setDaemon(true);
      player.start();
      microphone.forget();
      float[] recorded = new float[(int) (LISTEN_SECONDS * microphone.rate())];
      int have = 0;
      // The latest sample of a read is as old as the read: the earliest such guess is the best.
      double zeroNanos = Double.MAX_VALUE;
      while (have < recorded.length) {
        int got = microphone.read(recorded, have, Math.min(READ, recorded.length - have));
        if (got <= 0) {
          break;
        }
        have += got;
        zeroNanos = Math.min(zeroNanos, System.nanoTime() - have * 1e9 / microphone.rate());
      }
      player.join();
      OptionalDouble at = Chirp.find(Arrays.copyOf(recorded, have), microphone.rate());
      if (at.isEmpty() || playedNanos.get() == Long.MIN_VALUE) {
        return OptionalDouble.empty();
      }
      double heardNanos = zeroNanos + at.getAsDouble() * 1e9 / microphone.rate();
      return OptionalDouble.of(Math.max(0, (heardNanos - playedNanos.get()) * 1e-9));
    } catch (LineUnavailableException | IllegalArgumentException busy) {
      throw new UserMistake(
          "the loudspeaker \""
              + output
              + "\" is missing or busy; choose another, or close the program that uses it",
          busy);
    }
  }

  /** Silence, the chirp, silence: a line that runs dry starts late. */
  private static void play(SourceDataLine out, AtomicLong playedNanos) {
    byte[] silence = new byte[4 * READ];
    out.start();
    for (int i = 0; i < LEAD * RATE / READ; i++) {
      out.write(silence, 0, silence.length);
    }
    // The line is full now, as it is while a backing plays: its own buffer is part of the delay.
    playedNanos.set(System.nanoTime());
    byte[] chirp = bytes(Chirp.samples(RATE));
    out.write(chirp, 0, chirp.length);
    for (int i = 0; i < LEAD * RATE / READ; i++) {
      out.write(silence, 0, silence.length);
    }
  }

  private static SourceDataLine open(String output, AudioFormat format)
      throws LineUnavailableException {
    DataLine.Info wanted = new DataLine.Info(SourceDataLine.class, format);
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      Mixer mixer = AudioSystem.getMixer(info);
      if (info.getName().contains(output) && mixer.isLineSupported(wanted)) {
        SourceDataLine line = (SourceDataLine) mixer.getLine(wanted);
        int frames = (int) (LINE_SECONDS * RATE);
        line.open(format, frames * format.getFrameSize());
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
