package holdfast.report;

import holdfast.motif.Expectation;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** How near the player came to what a listener would expect, in words. */
final class ExpectationWords {

  /** From here on what was played is what was expected. */
  private static final double JUST = 0.85;

  /** From here on it is near. */
  private static final double NEAR = 0.5;

  private ExpectationWords() {}

  /** One sentence about one phrase. */
  static String of(Expectation heard) {
    String came =
        heard.nearness() >= JUST
            ? "that is just what you played"
            : heard.nearness() >= NEAR
                ? "you came near it"
                : heard.brokeThread()
                    ? "you went somewhere else, and the thread broke here"
                    : "you went somewhere else";
    return "A listener expected " + heard.way().words() + "; " + came + ".";
  }

  /** The whole take, phrase by phrase, and where the thread broke; nothing to tell: empty. */
  static Optional<String> of(JudgedTake take) {
    List<JudgedPhrase> expected =
        take.phrases().stream().filter(p -> p.expectation().isPresent()).toList();
    if (expected.isEmpty()) {
      return Optional.empty();
    }
    String shares =
        expected.stream()
            .map(p -> Long.toString(Math.round(100 * p.expectation().orElseThrow().nearness())))
            .collect(Collectors.joining(" "));
    String broke =
        expected.stream()
            .filter(p -> p.expectation().orElseThrow().brokeThread())
            .map(p -> p.place().words(take.choruses()))
            .collect(Collectors.joining(", "));
    return Optional.of(
        "as a listener would expect it, in %: "
            + shares
            + (broke.isEmpty() ? "; the thread held" : "; the thread broke in " + broke));
  }
}
