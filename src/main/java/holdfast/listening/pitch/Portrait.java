package holdfast.listening.pitch;

/**
 * How loud and how high this player usually is, and how loud what sounds in the rests.
 *
 * <p>That is how a listener tells a player from a backing that comes out of a loudspeaker in the
 * same room: the player is nearer, and stays in one register. Only the level of a pitch's own
 * harmonics counts, since a chord shares its level among several pitches.
 */
final class Portrait {

  /** Frames after which what was heard counts half: 20 s, a few phrases. */
  private static final double HALF_LIFE = 4000;

  /** What is known of the player before the take counts as much as one second of it. */
  private static final double FIRST_WEIGHT = 200;

  /**
   * What is known of the rests counts as much as a tenth of a second: a backing sounds from the
   * first bar on, and a room that was quiet before says nothing of it.
   */
  private static final double FIRST_REST_WEIGHT = 20;

  /** Harmonics alone are about this much softer than the whole frame, in decibels. */
  private static final double HARMONICS_UNDER_ALL_DB = 3;

  /** Only frames as clear as this say how loud a player is. */
  private static final double CLEAR = 0.8;

  /** The player's level: the loudest twentieth of the clear frames lies over it. */
  private static final double LOUD_SHARE = 0.95;

  /** The level of the rests: the softest eighth of all frames lies under it. */
  private static final double REST_SHARE = 0.12;

  /** Frames this far under the player's level are not asked for the register, in decibels. */
  private static final double STRONG_DB = 12;

  /** Frames after which what they show is half known: an eighth of a second. */
  private static final double ACQUAINTANCE = 25;

  /** Frames from one look at the quantiles to the next. */
  private static final int LOOK = 8;

  /** The register before anything is heard, in cents: E4. */
  private static final double FIRST_CENTS = 6400;

  private final Histogram clear = new Histogram(-120, 1, 128, HALF_LIFE);
  private final Histogram all = new Histogram(-120, 1, 128, HALF_LIFE);
  private final Histogram register = new Histogram(-50, 100, 128, HALF_LIFE);
  private long heard;
  private long clearFrames;
  private long strongFrames;
  private double playerDb;
  private double restDb;
  private double usualCents = FIRST_CENTS;

  Portrait(Levels levels) {
    playerDb = levels.voiceDb() - HARMONICS_UNDER_ALL_DB;
    restDb = levels.backgroundDb() - HARMONICS_UNDER_ALL_DB;
    clear.add(playerDb, FIRST_WEIGHT);
    all.add(restDb, FIRST_REST_WEIGHT);
  }

  void hear(FrameView frame) {
    double level = frame.favouriteDb();
    all.add(level, 1);
    if (frame.favouriteClarity() > CLEAR) {
      clear.add(level, 1);
      clearFrames++;
      if (level > playerDb - STRONG_DB) {
        register.add(frame.favouriteCents(), 1);
        strongFrames++;
      }
    }
    all.age();
    clear.age();
    register.age();
    if (heard++ % LOOK == 0) {
      playerDb = clear.quantile(LOUD_SHARE, playerDb);
      restDb = all.quantile(REST_SHARE, restDb);
      usualCents = register.quantile(0.5, usualCents);
    }
  }

  /** Level of the player's louder notes, harmonics alone, in decibels. */
  double playerDb() {
    return playerDb;
  }

  /** Level of what sounds in the rests, harmonics of the strongest pitch alone, in decibels. */
  double restDb() {
    return restDb;
  }

  /** Middle of the player's register, in cents. */
  double usualCents() {
    return usualCents;
  }

  /** How well anyone is known: 0 before the first clear tone, soon 1. */
  double acquaintance() {
    return clearFrames / (ACQUAINTANCE + clearFrames);
  }

  /** How well the register is known: 0 before the first clear and strong tone, soon 1. */
  double registerKnown() {
    return strongFrames / (ACQUAINTANCE + strongFrames);
  }

  /** Where player and rests stand, on the scale of a whole frame's level. */
  Levels levels() {
    return new Levels(playerDb + HARMONICS_UNDER_ALL_DB, restDb + HARMONICS_UNDER_ALL_DB);
  }
}
