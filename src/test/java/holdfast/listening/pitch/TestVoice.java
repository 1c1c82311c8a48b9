package holdfast.listening.pitch;

import holdfast.listening.audio.Resampler;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** A voice of harmonics at the ear's rate, whose pitch and level are curves that a test draws. */
final class TestVoice {

  /** Level of each harmonic of an open vowel, falling 9 dB an octave; no source. */
  static final double[] OPEN = {1, 0.35, 0.19, 0.13, 0.09, 0.07, 0.06, 0.05};

  /**
   * An "oh" at C3: the first formant, near 650 Hz, lifts the fifth harmonic 20 dB over the lowest
   * ones, as in adult speech (measured on a diphone voice; no table).
   */
  static final double[] FORMANT_ON_THE_FIFTH = {
    0.1, 0.09, 0.12, 0.35, 1, 0.3, 0.1, 0.1, 0.06, 0.05, 0.05, 0.05
  };

  /** Lips closed: little above the second harmonic. */
  static final double[] HUM = {1, 0.2, 0.02};

  static final double[] WHISTLE = {1};

  private static final int RATE = Resampler.EAR_RATE;

  private final float[] samples;

  /** A take of so many seconds, so far only a quiet microphone's noise at -66 dB. */
  TestVoice(double seconds) {
    samples = new float[(int) (seconds * RATE)];
    Random random = new Random(20261125);
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) (0.0005 * random.nextGaussian());
    }
  }

  /** Sings one note on a straight pitch, with 20 ms to begin and to end. */
  TestVoice note(double start, double end, double cents, double... harmonics) {
    return note(start, end, t -> cents, t -> 1, harmonics);
  }

  /**
   * Sings one note.
   *
   * @param cents pitch by the seconds since its start
   * @param level level by the seconds since its start, 1 being full voice
   */
  TestVoice note(
      double start,
      double end,
      DoubleUnaryOperator cents,
      DoubleUnaryOperator level,
      double... harmonics) {
    double phase = 0;
    for (int i = (int) (start * RATE); i < (int) (end * RATE) && i < samples.length; i++) {
      double t = (double) i / RATE - start;
      double hz = Frames.hertz(cents.applyAsDouble(t));
      phase += hz / RATE;
      double edge = Math.max(0, Math.min(1, Math.min(t, end - start - t) / 0.02));
      double sum = 0;
      for (int h = 0; h < harmonics.length && (h + 1) * hz < 0.45 * RATE; h++) {
        sum += harmonics[h] * Math.sin(2 * Math.PI * phase * (h + 1));
      }
      samples[i] += (float) (0.2 * edge * level.applyAsDouble(t) * sum);
    }
    return this;
  }

  /** A hiss, as of an s or a breath. */
  TestVoice hiss(double start, double end, double level) {
    Random random = new Random(7);
    for (int i = (int) (start * RATE); i < (int) (end * RATE); i++) {
      double t = (double) i / RATE - start;
      samples[i] += (float) (level * random.nextGaussian() * Math.sin(Math.PI * t / (end - start)));
    }
    return this;
  }

  /** The take so far. */
  float[] samples() {
    return samples.clone();
  }

  /** A note as it was heard: its onset, its end and its pitch in cents. */
  record Note(double onset, double end, double cents) {}

  /** What the ear hears in this take. */
  List<Note> heard(boolean live) {
    return heard(samples, live, Manner.ANYONE);
  }

  /** What the ear hears in this take of someone who plays like this. */
  List<Note> heard(boolean live, Manner manner) {
    return heard(samples, live, manner);
  }

  /** What the ear hears in these samples, in pieces of 1 to 3000 samples. */
  static List<Note> heard(float[] samples, boolean live) {
    return heard(samples, live, Manner.ANYONE);
  }

  private static List<Note> heard(float[] samples, boolean live, Manner manner) {
    List<Note> notes = new ArrayList<>();
    Ear ear =
        new Ear(
            RATE,
            live,
            Ear.LOWEST_HZ,
            Ear.HIGHEST_HZ,
            Levels.UNKNOWN,
            manner,
            (frame, cents, sung, sure, level, flux) -> {},
            new NoteListener() {
              @Override
              public void began(double onsetSeconds, double cents, double levelDb) {}

              @Override
              public void ended(
                  double onset, double end, double cents, double levelDb, double confidence) {
                notes.add(new Note(onset, end, cents));
              }

              @Override
              public void takenBack() {}
            });
    Random random = new Random(3);
    for (int i = 0; i < samples.length; ) {
      int count = Math.min(1 + random.nextInt(3000), samples.length - i);
      ear.push(Arrays.copyOfRange(samples, i, i + count), 0, count);
      i += count;
    }
    ear.end();
    return notes;
  }
}
