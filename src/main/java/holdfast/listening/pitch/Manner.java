package holdfast.listening.pitch;

/**
 * How someone plays, as far as it tells notes from what is none.
 *
 * @param gateDb a note must stand this far over the room's noise, in decibels
 * @param smoothingCents the widest shake that is still one note, from top to bottom, in cents; 0
 *     for what cannot shake
 */
public record Manner(double gateDb, double smoothingCents) {

  /** Anyone, singers among them: a soft voice counts, and so does a wide vibrato. */
  public static final Manner ANYONE = new Manner(6, Vibrato.WIDEST_CENTS);

  /**
   * A note this far under the player's usual level still counts, in decibels: players go some 10 to
   * 20 dB from soft to loud (from memory), and where nobody rests, or a backing sounds in the room,
   * what lies around the player is not the room alone.
   */
  private static final double NEVER_GATED_DB = 18;

  /** Checks the ranges. */
  public Manner {
    if (!(gateDb >= 0 && Double.isFinite(gateDb))
        || !(smoothingCents >= 0 && smoothingCents <= Vibrato.WIDEST_CENTS)) {
      throw new IllegalArgumentException(
          "a gate is 0 or more and a shake 0 to "
              + Math.round(Vibrato.WIDEST_CENTS)
              + " cents, not "
              + gateDb
              + " and "
              + smoothingCents);
    }
  }

  /** The level under which a note is the room, in decibels under full scale. */
  public double gate(Levels levels) {
    return Math.min(levels.backgroundDb() + gateDb, levels.voiceDb() - NEVER_GATED_DB);
  }
}
