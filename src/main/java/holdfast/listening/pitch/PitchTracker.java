package holdfast.listening.pitch;

/**
 * Cuts sound at the ear's rate into frames, says of each which pitches it could be, and how likely
 * it is that the player sounds in it. Live it hears only the past; on a file the player is known
 * from a few phrases ahead. The code is the same.
 */
final class PitchTracker {

  /** Frames by which a file's player is known ahead: 15 s, a few phrases. */
  private static final int FILE_ACQUAINTANCE = 3000;

  private static final int HALF_SHORT = FrameAnalysis.SHORT / 2;

  /** Is handed each weighed frame, in order; the frame is good until the hand returns. */
  @FunctionalInterface
  interface Weighed {
    void frame(long number, FrameView frame, double probability);
  }

  private final FrameAnalysis analysis;
  private final Voicing voicing = new Voicing();
  private final Portrait player;
  private final Weighed weighed;
  private final int longStartOffset;
  private final int neededAhead;

  /** Frames that were analysed and wait, so that a file's player is known before weighing. */
  private final FrameView[] waiting;

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
   * @param live whether to weigh at once rather than look ahead
   * @param levels how loud the singer and the rests are at the start
   * @param weighed handed each frame
   */
  PitchTracker(double lowestHz, double highestHz, boolean live, Levels levels, Weighed weighed) {
    this.analysis = new FrameAnalysis(lowestHz, highestHz);
    this.player = new Portrait(levels);
    this.weighed = weighed;
    this.neededAhead = live ? HALF_SHORT : FrameAnalysis.LONG / 2;
    this.longStartOffset = neededAhead - FrameAnalysis.LONG;
    this.waiting = new FrameView[(live ? 0 : FILE_ACQUAINTANCE) + 1];
    for (int i = 0; i < waiting.length; i++) {
      waiting[i] = new FrameView();
    }
    this.dropped = longStartOffset;
    this.filled = -longStartOffset;
  }

  /** Takes the next samples at the ear's rate. */
  void push(float[] in, int offset, int length) {
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
    weighed.frame(number, frame, voicing.probability(frame, player));
  }

  /** Where player and room stand, as they were heard of late. */
  Levels levels() {
    return player.levels();
  }

  /** Ends the take: weighs all that is left. */
  void end() {
    float[] silence = new float[FrameAnalysis.LONG];
    push(silence, 0, neededAhead);
    for (long left = Math.max(0, nextFrame - waiting.length + 1); left < nextFrame; left++) {
      weigh(left);
    }
  }
}
