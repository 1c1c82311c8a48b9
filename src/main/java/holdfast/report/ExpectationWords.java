package holdfast.report;

import holdfast.motif.CarryWay;
import holdfast.motif.Expectation;

/** How near the player came to what a listener would expect, in words. */
final class ExpectationWords {

  /** From here on what was played is what was expected. */
  private static final double JUST = 0.85;

  /** From here on it is near. */
  private static final double NEAR = 0.5;

  private ExpectationWords() {}

  /** Whether what was played went about as expected. */
  static boolean isNear(Expectation heard) {
    return heard.nearness() >= NEAR;
  }

  /** One sentence about one phrase. */
  static String of(Expectation heard) {
    String came =
        heard.nearness() >= JUST
            ? "that is just what you played"
            : isNear(heard)
                ? "you came near it"
                : heard.brokeThread()
                    ? "you went somewhere else, and the thread broke here"
                    : "you went somewhere else";
    String what = heard.way() == CarryWay.WITH_THE_ROOT ? "the idea " : "";
    return "A listener expected " + what + heard.way().words() + "; " + came + ".";
  }
}
