package holdfast.listening.pitch;

/**
 * The pitch of one voice, frame by frame, from sound at the ear's rate. Live it hears only the past
 * and decides within a few frames; on a file it may look ahead. The code is the same.
 */
public final class PitchTracker {

  /** Frames that the path waits before it decides, live: 5 ms. */
  private static final int LIVE_LAG = 1;

  /** The same on a file: 300 ms, longer than any consonant. */
  private static final int FILE_LAG = 60;

  /** Frames by which a file's player is known ahead: 15 s, a few phrases. */
  private static final int FILE_ACQUAINTANCE = 3000;

  private static final int HALF_SHORT = FrameAnalysis.SHORT / 2;

  private final FrameAnalysis analysis;
  private final Voicing voicing = new Voicing();
  private final Portrait player;
  private final PitchPath path;
  private final FrameListener listener;
  private final int longStartOffset;
  private final int neededAhead;

  /** Frames that were analysed and wait, so that a file's player is known before deciding. */
  private final FrameView[] waiting;

  private final float[] levelOf;
  private final float[] fluxOf;
  private final float[] samples = new float[1 << 14];

  /** Ear samples before {@code samples[0]}; negative at first, for the silence before the take. */
  private long dropped;

  private int filled;
  private long nextFrame;

  /**
   * A tracker for one take.
   *
   * @param lowestHz lowest pitch looked for, 55 or more
   * @param highestHz highest pitch looked for, 4500 or less
   * @param live whether to decide at once rather than look ahead
   * @param levels how loud the singer and the rests are at the start
   * @param listener told each decided frame
   */
  public PitchTracker(
      double lowestHz, double highestHz, boolean live, Levels levels, FrameListener listener) {
    this.analysis = new FrameAnalysis(lowestHz, highestHz);
    this.player = new Portrait(levels);
    int lag = live ? LIVE_LAG : FILE_LAG;
    this.path = new PitchPath(lag);
    this.listener = listener;
    this.neededAhead = live ? HALF_SHORT : FrameAnalysis.LONG / 2;
    this.longStartOffset = neededAhead - FrameAnalysis.LONG;
    this.waiting = new FrameView[(live ? 0 : FILE_ACQUAINTANCE) + 1];
    for (int i = 0; i < waiting.length; i++) {
      waiting[i] = new FrameView();
    }
    this.levelOf = new float[lag + 2];
    this.fluxOf = new float[lag + 2];
    this.dropped = longStartOffset;
    this.filled = -longStartOffset;
  }

  /** Takes the next samples at the ear's rate. */
  public void push(float[] in, int offset, int length) {
    int taken = 0;
    while (taken < length) {
      int room = Math.min(length - taken, samples.length - filled);
      for (int i = 0; i < room; i++) {
        float value = in[offset + taken + i];
        // A broken driver's not-a-number must not poison the transforms: it counts as silence.
        samples[filled + i] = Float.isFinite(value) ? value : 0;
      }
      filled += room;
      taken += room;
      analyseWhatIsComplete();
    }
  }

  private void analyseWhatIsComplete() {
    while (true) {
      int middle = (int) (nextFrame * Frames.HOP - dropped);
      if (middle + neededAhead > filled) {
        int keepFrom = Math.max(0, middle + longStartOffset);
        System.arraycopy(samples, keepFrom, samples, 0, filled - keepFrom);
        filled -= keepFrom;
        dropped += keepFrom;
        return;
      }
      analysis.analyse(samples, middle - HALF_SHORT, middle + longStartOffset);
      FrameView frame = waiting[(int) (nextFrame % waiting.length)];
      analysis.into(frame);
      player.hear(frame);
      nextFrame++;
      if (nextFrame >= waiting.length) {
        weigh(nextFrame - waiting.length);
      }
    }
  }

  private void weigh(long number) {
    FrameView frame = waiting[(int) (number % waiting.length)];
    int slot = (int) (number % levelOf.length);
    levelOf[slot] = frame.levelDb;
    fluxOf[slot] = frame.flux;
    if (path.push(frame, voicing.probability(frame, player))) {
      tell();
    }
  }

  /** Ends the take: decides all that is left. */
  public void end() {
    float[] silence = new float[FrameAnalysis.LONG];
    push(silence, 0, neededAhead);
    for (long left = Math.max(0, nextFrame - waiting.length + 1); left < nextFrame; left++) {
      weigh(left);
    }
    while (path.flush()) {
      tell();
    }
  }

  private void tell() {
    int slot = (int) (path.frame() % levelOf.length);
    listener.frame(
        path.frame(), path.cents(), path.isSung(), path.probability(), levelOf[slot], fluxOf[slot]);
  }

  /** Seconds of the take up to which every frame has been decided. */
  public double decidedSeconds() {
    return (path.frame() + 1) * Frames.HOP_SECONDS;
  }
}
