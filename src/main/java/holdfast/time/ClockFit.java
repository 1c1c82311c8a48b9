package holdfast.time;

/**
 * Ties a device's own count of time to {@link System#nanoTime}: a straight line through what was
 * observed, refitted all the while.
 *
 * <p>An observation pairs a position (microseconds of sound that the device has taken or given)
 * with the moment at which we looked. It can be late, because a thread was, but hardly ever early;
 * and a device takes sound in gulps. So of every quarter of a second only the earliest observation
 * counts, a least-squares line runs through the last twelve seconds of those, and its slope is held
 * near that of a true clock. Corrections are given out in steps of at most 1 ms, so that the clock
 * neither jumps nor runs backwards by an amount that a listener or a judge would notice.
 *
 * <p>When a device runs dry or is exchanged, its count really does jump against the wall; that is
 * told from noise by lasting, and the line then starts anew.
 *
 * <p>One thread observes, any may ask. Nothing is allocated but one small line four times a second.
 */
public final class ClockFit {

  /** The earliest observation of so many microseconds counts: some twenty gulps of a device. */
  private static final long WINDOW_MICROS = 250_000;

  /** Twelve seconds of windows: long enough for a drift of 10 ppm, short enough to follow one. */
  private static final int WINDOWS = 48;

  /** Further off than this is not noise: devices gulp 5 to 20 ms of sound at a time. */
  private static final long JUMP_NANOS = 25_000_000;

  /** So many windows in a row beyond {@link #JUMP_NANOS} are a jump; one may be a late thread. */
  private static final int JUMP_WINDOWS = 2;

  /** The largest correction of one refit, once the fit has settled. */
  private static final long STEP_NANOS = 1_000_000;

  /** Before so many windows the fit may still move freely: half the take's count-in. */
  private static final int SETTLED_WINDOWS = 8;

  /**
   * Holds the slope to that of a true clock until there is time enough to measure it: the variance
   * of one observation over that of a sound card's rate, (2 ms)² / (200 ppm)², in seconds².
   */
  private static final double SLOPE_PRIOR_SECONDS2 = 100;

  /**
   * At {@code micros} the moment is {@code nanos}; from there a device's microsecond lasts 1000 (1
   * + drift) nanoseconds.
   */
  private record Line(long micros, long nanos, double drift, int jumps) {

    long nanoTimeAt(long position) {
      double away = (position - micros) * 1000.0;
      return nanos + Math.round(away + away * drift);
    }

    long microsAt(long nanoTime) {
      return micros + Math.round((nanoTime - nanos) / (1000.0 * (1 + drift)));
    }
  }

  private final long[] micros = new long[WINDOWS];
  private final long[] offsets = new long[WINDOWS];
  private int kept;
  private int next;
  private int beyond;
  private int jumps;

  private long windowStart = Long.MIN_VALUE;
  private long earliestMicros;
  private long earliestOffset = Long.MAX_VALUE;

  private volatile Line line;

  /** A first guess, until the device has been observed: this position falls on this moment. */
  public ClockFit(long micros, long nanoTime) {
    line = new Line(micros, nanoTime, 0, 0);
  }

  /** The moment that belongs to this position of the device. */
  public long nanoTimeAt(long position) {
    return line.nanoTimeAt(position);
  }

  /** The device's position, in microseconds, at this moment. */
  public long microsAt(long nanoTime) {
    return line.microsAt(nanoTime);
  }

  /** How many times the device's count has jumped against the wall since the start. */
  public int jumps() {
    return line.jumps();
  }

  /** How much longer a second of the device's lasts than a true one, in parts per million. */
  public double driftPartsPerMillion() {
    return line.drift() * 1e6;
  }

  /** The device stood at {@code position}, in microseconds, when we looked at {@code nanoTime}. */
  public void observe(long position, long nanoTime) {
    long offset = nanoTime - position * 1000;
    if (windowStart == Long.MIN_VALUE) {
      windowStart = position;
    }
    if (offset < earliestOffset) {
      earliestOffset = offset;
      earliestMicros = position;
      if (kept == 0) {
        line = new Line(position, nanoTime, 0, jumps);
      }
    }
    if (position - windowStart >= WINDOW_MICROS) {
      close(earliestMicros, earliestOffset);
      windowStart = position;
      earliestOffset = Long.MAX_VALUE;
    }
  }

  private void close(long position, long offset) {
    if (kept > 0) {
      long miss = offset - (line.nanoTimeAt(position) - position * 1000);
      beyond = Math.abs(miss) > JUMP_NANOS ? beyond + 1 : 0;
      if (beyond == 1) {
        // Perhaps one late thread: leave it out, and see whether the next says the same.
        return;
      }
      if (beyond >= JUMP_WINDOWS) {
        jumps++;
        beyond = 0;
        kept = 0;
        next = 0;
      }
    }
    micros[next] = position;
    offsets[next] = offset;
    next = (next + 1) % WINDOWS;
    kept = Math.min(kept + 1, WINDOWS);
    refit(position);
  }

  private void refit(long position) {
    double meanMicros = 0;
    double meanOffset = 0;
    long baseOffset = offsets[0];
    for (int i = 0; i < kept; i++) {
      meanMicros += (micros[i] - position) / (double) kept;
      meanOffset += (offsets[i] - baseOffset) / (double) kept;
    }
    double spread = 0;
    double together = 0;
    for (int i = 0; i < kept; i++) {
      double seconds = (micros[i] - position - meanMicros) / 1e6;
      spread += seconds * seconds;
      together += seconds * (offsets[i] - baseOffset - meanOffset) / 1e9;
    }
    double drift = together / (spread + SLOPE_PRIOR_SECONDS2);
    long offset = baseOffset + Math.round(meanOffset - drift * meanMicros * 1000);
    long nanos = position * 1000 + offset;
    if (kept > SETTLED_WINDOWS) {
      long before = line.nanoTimeAt(position);
      nanos = before + Math.max(-STEP_NANOS, Math.min(STEP_NANOS, nanos - before));
    }
    line = new Line(position, nanos, drift, jumps);
  }
}
