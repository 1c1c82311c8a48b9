package holdfast.harmony;

import holdfast.time.Metre;

/**
 * Where in the bar a beat falls, and how much weight that has.
 *
 * @param metre the metre; bar 1 starts on beat 0
 */
public record Beats(Metre metre) {

  /** How far off the beat a note may start and still be on it: a player's spread, in quarters. */
  private static final double ON_THE_BEAT_QUARTERS = 0.12;

  /** Places in the bar that ears tell apart. */
  public enum Place {
    DOWNBEAT("downbeat", 1.3),
    MID_BAR("mid-bar", 1.15),
    OTHER_BEAT("other-beat", 1.05),
    OFF_BEAT("off-beat", 1);

    private final String text;
    private final double weight;

    Place(String text, double weight) {
      this.text = text;
      this.weight = weight;
    }

    /** As in the table of notes over chords. */
    String text() {
      return text;
    }

    /** How much a note here counts in a phrase; common practice, no source. */
    double weight() {
      return weight;
    }
  }

  /** The place of a note that starts at this beat. */
  public Place place(double beat) {
    double nearest = Math.rint(beat);
    if (Math.abs(beat - nearest) * metre.quartersPerBeat() > ON_THE_BEAT_QUARTERS) {
      return Place.OFF_BEAT;
    }
    int inBar = (int) Math.floorMod((long) nearest, (long) metre.beats());
    if (inBar == 0) {
      return Place.DOWNBEAT;
    }
    return metre.beats() % 2 == 0 && metre.beats() > 2 && inBar == metre.beats() / 2
        ? Place.MID_BAR
        : Place.OTHER_BEAT;
  }

  /** So many beats in quarter notes. */
  public double quarters(double beats) {
    return beats * metre.quartersPerBeat();
  }

  /** So many quarter notes in beats. */
  public double beats(double quarters) {
    return quarters / metre.quartersPerBeat();
  }
}
