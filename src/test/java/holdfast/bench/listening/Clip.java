package holdfast.bench.listening;

import java.util.List;
import java.util.Optional;

/**
 * A recording whose truth is known: what the microphone would hear, and what was really sung.
 *
 * <p>A plain class, because it holds arrays; nobody may change them.
 */
public final class Clip {

  /** Samples per second of every clip. */
  public static final int RATE = 44_100;

  /** Seconds between frames of the truth. */
  public static final double FRAME_SECONDS = 0.01;

  private final String name;
  private final String who;
  private final float[] samples;
  private final double[] hz;
  private final List<TrueNote> notes;
  private final Optional<float[]> backing;

  /** A clip by all its parts; {@code hz} has a value each 10 ms, 0 where nothing is sung. */
  Clip(
      String name,
      String who,
      float[] samples,
      double[] hz,
      List<TrueNote> notes,
      Optional<float[]> backing) {
    this.name = name;
    this.who = who;
    this.samples = samples;
    this.hz = hz;
    this.notes = List.copyOf(notes);
    this.backing = backing;
  }

  String name() {
    return name;
  }

  /** The group that scores are averaged over: singers, instruments, whistles. */
  String who() {
    return who;
  }

  float[] samples() {
    return samples;
  }

  double[] hz() {
    return hz;
  }

  List<TrueNote> notes() {
    return notes;
  }

  /** The backing as it was rendered, before loudspeaker and room. */
  Optional<float[]> backing() {
    return backing;
  }

  /** The same truth under another sound. */
  Clip sounding(float[] other, Optional<float[]> reference) {
    return new Clip(name, who, other, hz, notes, reference);
  }

  /** Root mean square of the samples while something is sung. */
  double activeLevel() {
    double sum = 0;
    long count = 0;
    int hop = (int) (FRAME_SECONDS * RATE);
    for (int i = 0; i < hz.length; i++) {
      if (hz[i] > 0) {
        for (int j = i * hop; j < Math.min(samples.length, (i + 1) * hop); j++) {
          sum += samples[j] * samples[j];
          count++;
        }
      }
    }
    return Math.sqrt(sum / Math.max(1, count));
  }
}
