package holdfast.listening.pitch;

/**
 * Keeps a ringing string on its note. A plucked string's partials die at different speeds, and
 * where the first dies before the second, what is left repeats an octave higher: a tracker follows
 * it, a listener hears the string ring on.
 *
 * <p>So a pitch that leaps up by an octave while the sound dies away, with nothing new in its
 * spectrum, is the old note. Who really leaps, even legato, changes the spectrum at once.
 */
final class Ringing implements NoteStage {

  /** How exactly an octave a leap must be, in cents. */
  private static final double OCTAVE_CENTS = 50;

  /** A sound has begun to die when it stands this far under its loudest, in decibels. */
  private static final double DYING_DB = 6;

  /** Frames for which the higher pitch must stand: 30 ms, in which an attack would show. */
  private static final int STANDING = 6;

  /** Frames without anything new, before the leap and after it: 60 ms. */
  private static final int QUIET = 12;

  /**
   * So much more than usual is something new in the spectrum. In ringing guitars 0.02 to 0.06 is
   * usual, in a noisy room more; the weakest of real players' attacks showed 0.18.
   */
  private static final double NEWER = 0.08;

  /** How fast the usual follows: over some 50 ms. */
  private static final double FOLLOWING = 0.1;

  /** A held string that is struck again is louder by more than this, in decibels. */
  private static final double STRUCK_DB = 3;

  /** Frames for which the lower pitch must have stood: 0.3 s, for partials die slowly. */
  private static final int LONG = 60;

  /** Frames of silence after which nothing rings: 100 ms. */
  private static final int SILENCE = 20;

  private final NoteStage next;
  private double base;
  private double loudestDb = Double.NEGATIVE_INFINITY;
  private double quietestDb;
  private double usualFlux;
  private int unsung = SILENCE;
  private int stood;
  private int standing;
  private int quiet;
  private boolean octaveAbove;

  /**
   * A stage in front of another.
   *
   * @param next told each frame
   */
  Ringing(NoteStage next) {
    this.next = next;
  }

  @Override
  public void frame(
      long frame,
      double cents,
      boolean sung,
      double sureness,
      double levelDb,
      double ownDb,
      double flux) {
    quiet = flux < usualFlux + NEWER ? quiet + 1 : 0;
    usualFlux += FOLLOWING * (flux - usualFlux);
    if (sung) {
      hear(cents, levelDb);
    } else if (++unsung >= SILENCE) {
      octaveAbove = false;
    }
    double heard = octaveAbove && sung ? cents - 1200 : cents;
    next.frame(frame, heard, sung, sureness, levelDb, ownDb, flux);
  }

  private void hear(double cents, double levelDb) {
    boolean rings = unsung < SILENCE;
    unsung = 0;
    boolean louder = levelDb > quietestDb + STRUCK_DB;
    if (!rings || (quiet == 0 && (louder || !octaveAbove))) {
      // Struck, or struck again: whatever it is now, it is new.
      loudestDb = levelDb;
      octaveAbove = false;
    }
    loudestDb = Math.max(loudestDb, levelDb);
    quietestDb = octaveAbove ? Math.min(quietestDb, levelDb) : levelDb;
    boolean leapt = rings && Math.abs(cents - base - 1200) < OCTAVE_CENTS;
    if (!leapt) {
      stood = rings && Math.abs(cents - base) < 100 ? stood + 1 : 0;
      base = cents;
      standing = 0;
      octaveAbove = false;
    } else if (!octaveAbove && ++standing >= STANDING) {
      octaveAbove = stood >= LONG && quiet >= QUIET && loudestDb - levelDb >= DYING_DB;
      if (!octaveAbove) {
        base = cents;
        stood = 0;
      }
      standing = 0;
    }
  }
}
