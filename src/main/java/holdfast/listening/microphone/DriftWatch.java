package holdfast.listening.microphone;

import holdfast.time.ClockFit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;

/**
 * Does what a microphone hears of the backing stay where the backing's clock says it is heard? Now
 * and then a stretch of the capture, placed by the microphone's clock as every sung note is, is
 * laid against what the output says is heard at that moment. Both clocks with all their corrections
 * are in the answer; a delay that stays the same is no drift.
 *
 * <p>In an audio loop the two sounds are one, so a likeness near 1 says that the answer is true.
 */
public final class DriftWatch implements AutoCloseable {

  /** What is compared at once. */
  private static final double WINDOW_SECONDS = 0.25;

  /** Heard earlier or later by more than this is not found, which its likeness tells. */
  private static final double REACH_SECONDS = 0.25;

  /** A loop gives nearly 1; a microphone in a room less than this. */
  private static final double ALIKE = 0.9;

  /** Where nothing sounded, or nothing alike, another look follows so soon. */
  private static final long LOOK_AGAIN_NANOS = 1_000_000_000L;

  /** Less than the line's own memory. */
  private static final long DOZE_NANOS = 50_000_000L;

  /** Mean square under which there is silence: 60 dB under full scale. */
  private static final double SILENCE = 1e-6;

  /**
   * One look.
   *
   * @param seconds since the watch began
   * @param lateMillis by how much later than the output's clock says the backing was heard
   */
  public record Look(double seconds, double lateMillis) {}

  private final OpenLine line;
  private final KnownSound sound;
  private final ClockFit fit;
  private final AtomicBoolean enough = new AtomicBoolean();
  private final List<Look> looks = new ArrayList<>();
  private final long start = System.nanoTime();
  private final Thread watcher;
  private final float[] block = new float[1024];
  private final float[] latest;
  private long fetched;

  private DriftWatch(OpenLine line, KnownSound sound, long everyNanos) {
    this.line = line;
    this.sound = sound;
    this.fit = new ClockFit(0, start);
    this.latest = new float[(int) (WINDOW_SECONDS * line.rate())];
    watcher = new Thread(() -> watch(everyNanos), "drift");
    watcher.setDaemon(true);
  }

  /**
   * Opens the microphone and looks now and then until it is closed.
   *
   * @return empty where nobody hears the backing
   * @throws holdfast.mistake.UserMistake when the microphone is missing or busy
   */
  public static Optional<DriftWatch> start(Microphone microphone, long everyNanos) {
    return microphone
        .backing()
        .map(
            sound -> {
              OpenLine line =
                  new OpenLine(Microphone.openLine(microphone.name()), System::nanoTime);
              DriftWatch watch = new DriftWatch(line, sound, everyNanos);
              watch.watcher.start();
              return watch;
            });
  }

  private void watch(long everyNanos) {
    long next = start + everyNanos;
    while (!enough.get()) {
      fetch();
      long now = System.nanoTime();
      if (now >= next) {
        next = look(now) ? next + everyNanos : now + LOOK_AGAIN_NANOS;
      }
      LockSupport.parkNanos(this, DOZE_NANOS);
    }
  }

  private void fetch() {
    for (int count = line.ring().read(block); count > 0; count = line.ring().read(block)) {
      line.ring().tell(fit);
      int kept = Math.max(0, latest.length - count);
      System.arraycopy(latest, latest.length - kept, latest, 0, kept);
      int taken = latest.length - kept;
      System.arraycopy(block, count - taken, latest, kept, taken);
      fetched += count;
    }
  }

  private boolean look(long now) {
    if (fetched < latest.length) {
      return false;
    }
    long first = fetched - latest.length;
    long heardAt = fit.nanoTimeAt(Math.round(first * 1e6 / line.rate()));
    Optional<Alike> found = find(latest, expected(sound.sampleHeard(heardAt)));
    if (found.isEmpty() || found.get().likeness() < ALIKE) {
      return false;
    }
    synchronized (looks) {
      looks.add(new Look((now - start) * 1e-9, 1e3 * found.get().late() / line.rate()));
    }
    return true;
  }

  /** The backing around this sample, at the line's rate. */
  private float[] expected(long sample) {
    int reach = (int) (REACH_SECONDS * line.rate());
    double step = (double) sound.rate() / line.rate();
    float[] expected = new float[latest.length + 2 * reach];
    long from = sample - Math.round(reach * step);
    float[] known = new float[2 + (int) Math.ceil(expected.length * step)];
    sound.copy(from, known, known.length);
    for (int i = 0; i < expected.length; i++) {
      int at = (int) (i * step);
      double into = i * step - at;
      expected[i] = (float) ((1 - into) * known[at] + into * known[at + 1]);
    }
    return expected;
  }

  /**
   * Where two sounds agree.
   *
   * @param late samples by which it is heard later than expected
   * @param likeness 1 for the same sound
   */
  record Alike(double late, double likeness) {}

  /**
   * Where what was heard lies in what was expected, by normalised cross-correlation.
   *
   * @param expected longer than what was heard, by as much in front as behind
   * @return empty where it was silent
   */
  static Optional<Alike> find(float[] heard, float[] expected) {
    int places = expected.length - heard.length + 1;
    double[] likeness = new double[places];
    double heardPower = 0;
    double power = 0;
    for (int i = 0; i < heard.length; i++) {
      heardPower += heard[i] * heard[i];
      power += expected[i] * expected[i];
    }
    if (heardPower < SILENCE * heard.length) {
      return Optional.empty();
    }
    int best = 0;
    for (int place = 0; place < places; place++) {
      double together = 0;
      for (int i = 0; i < heard.length; i++) {
        together += heard[i] * expected[place + i];
      }
      likeness[place] = together / Math.sqrt(heardPower * Math.max(power, SILENCE));
      best = likeness[place] > likeness[best] ? place : best;
      if (place + 1 < places) {
        power -= expected[place] * expected[place];
        power += expected[place + heard.length] * expected[place + heard.length];
      }
    }
    double fine = 0;
    if (best > 0 && best < places - 1) {
      double curve = likeness[best - 1] - 2 * likeness[best] + likeness[best + 1];
      fine = curve < 0 ? 0.5 * (likeness[best - 1] - likeness[best + 1]) / curve : 0;
    }
    return Optional.of(new Alike((places - 1) / 2.0 - best - fine, likeness[best]));
  }

  /** All looks so far that heard the backing, in order. */
  public List<Look> looks() {
    synchronized (looks) {
      return List.copyOf(looks);
    }
  }

  @Override
  public void close() {
    enough.set(true);
    LockSupport.unpark(watcher);
    line.close();
  }
}
