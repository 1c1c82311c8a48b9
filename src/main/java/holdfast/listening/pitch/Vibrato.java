package holdfast.listening.pitch;

/**
 * Takes the shake out of a pitch track, so that a note sung with vibrato stands on one pitch.
 *
 * <p>Within a stretch a little longer than one swing, a pitch that turns twice shakes; then the
 * middle between its highest and lowest is what is meant (listeners hear the mean: Shonle and Horan
 * 1980, "The pitch of vibrato tones"). A glide turns never and a passing note once: they stay as
 * they are.
 */
final class Vibrato implements NoteStage {

  /** Frames of the stretch: 255 ms, in which a shake of 5 Hz turns twice wherever it begins. */
  private static final int STRETCH = 51;

  /** A turn must go back by this many cents to count; less is the voice's own unsteadiness. */
  private static final float TURN_CENTS = 30;

  /**
   * In a shake some other swing is at least this share of the widest. What falls from one note to
   * the next, the old one ending high or the new one scooped, has one wide swing and small ones.
   */
  private static final float EVEN_SHARE = 0.33f;

  /** A shake is at most this wide from top to bottom, in cents: ±130. */
  static final double WIDEST_CENTS = 260;

  private final int ahead;
  private final double widest;
  private final NoteStage next;
  private final float[] pitch = new float[STRETCH];
  private final boolean[] sung = new boolean[STRETCH];
  private final float[] sure = new float[STRETCH];
  private final float[] level = new float[STRETCH];
  private final float[] own = new float[STRETCH];
  private final float[] flux = new float[STRETCH];
  private long newest = -1;

  /**
   * A stage in front of another.
   *
   * @param ahead frames of the stretch that lie ahead of the one that is told, 0 to half of it
   * @param widest a shake wider than this from top to bottom, in cents, is more than one note
   * @param next told each frame
   */
  Vibrato(int ahead, double widest, NoteStage next) {
    this.ahead = ahead;
    this.widest = widest;
    this.next = next;
  }

  @Override
  public void frame(
      long frame,
      double cents,
      boolean isSung,
      double sureness,
      double levelDb,
      double ownDb,
      double newness) {
    newest = frame;
    int slot = (int) (frame % STRETCH);
    pitch[slot] = (float) cents;
    sung[slot] = isSung;
    sure[slot] = (float) sureness;
    level[slot] = (float) levelDb;
    own[slot] = (float) ownDb;
    flux[slot] = (float) newness;
    pass(frame - ahead);
  }

  /** Ends the take: passes on what lies ahead. */
  void end() {
    long last = newest;
    for (int i = 1; i <= ahead; i++) {
      int slot = (int) ((last + i) % STRETCH);
      sung[slot] = false;
      newest = last + i;
      pass(newest - ahead);
    }
  }

  private void pass(long frame) {
    if (frame < 0) {
      return;
    }
    int slot = (int) (frame % STRETCH);
    double cents = sung[slot] ? middle(frame) : pitch[slot];
    next.frame(frame, cents, sung[slot], sure[slot], level[slot], own[slot], flux[slot]);
  }

  /** The middle of a shake, or the pitch itself. */
  private double middle(long frame) {
    long from = frame;
    long oldest = Math.max(0, newest - STRETCH + 1);
    while (from > oldest && joined(from - 1, from)) {
      from--;
    }
    long to = frame;
    while (to < newest && joined(to, to + 1)) {
      to++;
    }
    float top = pitch[(int) (from % STRETCH)];
    float bottom = top;
    float highest = top;
    float lowest = top;
    float turnedAt = top;
    float widestSwing = 0;
    float nextSwing = 0;
    int direction = 0;
    int turns = 0;
    for (long i = from; i <= to; i++) {
      float value = pitch[(int) (i % STRETCH)];
      highest = Math.max(highest, value);
      lowest = Math.min(lowest, value);
      top = Math.max(top, value);
      bottom = Math.min(bottom, value);
      boolean falls = direction >= 0 && value < top - TURN_CENTS;
      boolean rises = direction <= 0 && value > bottom + TURN_CENTS;
      if (falls || rises) {
        float extreme = falls ? top : bottom;
        float swing = Math.abs(extreme - turnedAt);
        nextSwing = Math.max(nextSwing, Math.min(widestSwing, swing));
        widestSwing = Math.max(widestSwing, swing);
        turnedAt = extreme;
        turns += direction != 0 ? 1 : 0;
        direction = falls ? -1 : 1;
        top = value;
        bottom = value;
      }
    }
    float swing = Math.abs((direction > 0 ? top : bottom) - turnedAt);
    nextSwing = Math.max(nextSwing, Math.min(widestSwing, swing));
    widestSwing = Math.max(widestSwing, swing);
    boolean even = nextSwing >= EVEN_SHARE * widestSwing;
    return turns >= 2 && even && highest - lowest <= widest
        ? 0.5 * (highest + lowest)
        : pitch[(int) (frame % STRETCH)];
  }

  /** Whether two neighbours belong to one breath without a leap between them. */
  private boolean joined(long a, long b) {
    int i = (int) (a % STRETCH);
    int j = (int) (b % STRETCH);
    return sung[i] && sung[j] && Math.abs(pitch[i] - pitch[j]) < 100;
  }
}
