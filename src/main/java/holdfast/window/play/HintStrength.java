package holdfast.window.play;

import holdfast.window.Preferences.Hints;

/**
 * How clearly the idea is shown where it could go. A hint that is always there is leaned on (the
 * guidance hypothesis: Salmoni, Schmidt and Walter 1984, from memory), so it can fade as the player
 * manages without.
 *
 * @param hints what the user chose
 * @param inARow phrases that carried the idea since it was last lost
 */
record HintStrength(Hints hints, int inARow) {

  /** After so many phrases in a row that carried the idea the hint is gone. */
  private static final int GONE_AFTER = 6;

  /** Nothing heard yet. */
  static HintStrength start(Hints hints) {
    return new HintStrength(hints, 0);
  }

  /** One phrase later. */
  HintStrength after(boolean carried) {
    return new HintStrength(hints, carried ? inARow + 1 : 0);
  }

  /** The same with another choice. */
  HintStrength with(Hints other) {
    return new HintStrength(other, inARow);
  }

  /** 0 not shown, to 1. */
  double strength() {
    return switch (hints) {
      case ON -> 1;
      case OFF -> 0;
      case FADING -> Math.max(0, 1 - (double) inARow / GONE_AFTER);
    };
  }
}
