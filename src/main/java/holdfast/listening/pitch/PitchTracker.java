package holdfast.listening.pitch;

/**
 * Cuts sound at the ear's rate into frames, says of each which pitches it could be, and how likely
 * it is that the player sounds in it. Live it hears only the past; on a file the player is known
 * from a few phrases ahead, and what lies between two frames that are alike is not looked at. The
 * code is the same.
 */
final class PitchTracker {

  /** Frames by which a file's player is known ahead: 15 s, a few phrases. */
  private static final int FILE_ACQUAINTANCE = 3000;

  /** Frames from one that is looked at anyway to the next, on a file: 80 ms. */
  static final int STRIDE = 16;

  // Chosen on the bench's development clips, where half of the frames or more are passed over and
  // notes are heard as well as if each was looked at.
  private static final double REST_UNDER_DB = 25;
  private static final double REST_CHANGES_DB = 6;

  /** So far under the player, what is sooner not sung than sung on both sides is a rest, too. */
  private static final double UNSUNG_UNDER_DB = 12;

  private static final double SOONER_UNSUNG = 0.5;

  /** A short note between two frames of a rest stands out of both by more. */
  private static final double NOTE_OUT_OF_REST_DB = 6;

  /** Under the player by this, what stands out of a silence is no note. */
  private static final double NOTHING_UNDER_DB = 40;

  /** Under that, what is left of a backing sounds, which flickers, and must not be smoothed. */
  private static final double STEADY_UNDER_DB = 12;

  /** The widest gap, in frames, in which a tone is taken to go on; half of it is the usual one. */
  private static final int STEADY_GAP = 4;

  private static final double STEADY_FLUX = 0.25;
  private static final double WIDE_SHARE = 0.4;

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
  private final int acquaintance;
  private final int stride;

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
    this.stride = live ? 1 : STRIDE;
    this.acquaintance = (live ? 0 : FILE_ACQUAINTANCE) + 1;
    this.waiting = new FrameView[acquaintance + stride + 1];
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
      append(in, offset + taken, room);
      taken += room;
      analyseWhatIsComplete(stride);
    }
  }

  /** A broken driver's not-a-number must not poison the transforms: it counts as silence. */
  private void append(float[] in, int from, int count) {
    for (int i = 0; i < count; i++) {
      float value = in[from + i];
      samples[filled + i] = Float.isFinite(value) ? value : 0;
    }
    filled += count;
  }

  /** Looks at each frame of so many, and at those between where it must. */
  private void analyseWhatIsComplete(int every) {
    while (true) {
      int now = nextFrame == 0 ? 1 : every;
      long last = nextFrame + now - 1;
      if (middle(last) + neededAhead > filled) {
        int keepFrom = Math.max(0, middle(nextFrame) + longStartOffset);
        System.arraycopy(samples, keepFrom, samples, 0, filled - keepFrom);
        filled -= keepFrom;
        dropped += keepFrom;
        return;
      }
      look(last, now);
      between(nextFrame - 1, last);
      while (nextFrame <= last) {
        told();
      }
    }
  }

  /**
   * Fills the frames between two that were looked at: by what lies between these where they are
   * alike or both rests, else by a look at the middle.
   */
  private void between(long from, long to) {
    if (to - from < 2) {
      return;
    }
    FrameView before = view(from);
    FrameView after = view(to);
    boolean rest = (isFaint(before, after) || isUnsung(before, after)) && isEven(from, to);
    if (rest || isSteady(from, to)) {
      for (long number = from + 1; number < to; number++) {
        FrameView frame = view(number);
        float way = (float) (number - from) / (to - from);
        if (rest) {
          frame.restBetween(before, after, way);
        } else {
          frame.between(before, after, way);
        }
        analysis.passOver(number, from, to);
      }
      return;
    }
    long middle = (from + to) / 2;
    look(middle, 0);
    between(from, middle);
    between(middle, to);
  }

  /** Far under the player nothing is sung, unless the same pitch goes on: a note that dies away. */
  private boolean isFaint(FrameView before, FrameView after) {
    return Math.max(before.favouriteDb(), after.favouriteDb()) < player.playerDb() - REST_UNDER_DB
        && Math.abs(before.levelDb - after.levelDb) < REST_CHANGES_DB
        && !before.isOfPitch(after, 1);
  }

  /** So soft, so little in tune with itself or so far off that it is sooner not sung than sung. */
  private boolean isUnsung(FrameView before, FrameView after) {
    return Math.max(before.favouriteDb(), after.favouriteDb()) < player.playerDb() - UNSUNG_UNDER_DB
        && Voicing.mostProbable(before, player) < SOONER_UNSUNG
        && Voicing.mostProbable(after, player) < SOONER_UNSUNG;
  }

  /** Whether no short note is hidden between two frames of a rest: nothing stands out of it. */
  private boolean isEven(long from, long to) {
    double restDb = Math.max(view(from).levelDb, view(to).levelDb);
    double mostDb = Math.max(restDb, player.playerDb() - NOTHING_UNDER_DB) + NOTE_OUT_OF_REST_DB;
    for (int at = middle(from); at < middle(to); at += Frames.HOP) {
      if (Levels.decibels(samples, at, Frames.HOP) > mostDb) {
        return false;
      }
    }
    return true;
  }

  /** The wider the gap, the more alike what lies on both sides must be. */
  private boolean isSteady(long from, long to) {
    double share = to - from > STEADY_GAP / 2 ? WIDE_SHARE : 1;
    return to - from <= STEADY_GAP
        && Math.min(view(from).favouriteDb(), view(to).favouriteDb())
            > player.playerDb() - STEADY_UNDER_DB
        && view(from).isLike(view(to), share)
        && analysis.flux(from, to) < STEADY_FLUX * share;
  }

  private int middle(long number) {
    return (int) (number * Frames.HOP - dropped);
  }

  private FrameView view(long number) {
    return waiting[(int) (number % waiting.length)];
  }

  private void look(long number, int passed) {
    int middle = middle(number);
    analysis.analyse(number, passed, samples, middle - HALF_SHORT, middle + longStartOffset);
    analysis.into(view(number));
  }

  private void told() {
    FrameView frame = view(nextFrame);
    frame.flux = (float) analysis.flux(nextFrame - FrameAnalysis.FLUX_FRAMES, nextFrame);
    player.hear(frame);
    nextFrame++;
    if (nextFrame >= acquaintance) {
      weigh(nextFrame - acquaintance);
    }
  }

  private void weigh(long number) {
    FrameView frame = view(number);
    double probability = voicing.probability(frame, player);
    weighed.frame(number, frame, frame.inRest ? 0 : probability);
  }

  /** Where player and room stand, as they were heard of late. */
  Levels levels() {
    return player.levels();
  }

  /** Ends the take: weighs all that is left. */
  void end() {
    float[] silence = new float[FrameAnalysis.LONG];
    push(silence, 0, neededAhead);
    analyseWhatIsComplete(1);
    for (long left = Math.max(0, nextFrame - acquaintance + 1); left < nextFrame; left++) {
      weigh(left);
    }
  }
}
