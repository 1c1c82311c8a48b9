package holdfast.report;

import holdfast.motif.Expectation;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How well a listener who had heard the phrases before could foresee each next one; see {@link
 * Expectation}.
 *
 * @param phrases how many could have been foreseen or not
 * @param foreseen of these, those that carried the idea as was expected
 * @param broke where the thread broke, in order
 */
record Foreseen(int phrases, int foreseen, List<JudgedPhrase> broke) {

  Foreseen {
    broke = List.copyOf(broke);
  }

  static Optional<Foreseen> of(JudgedTake take) {
    int phrases = 0;
    int foreseen = 0;
    List<JudgedPhrase> broke = new ArrayList<>();
    for (JudgedPhrase phrase : take.phrases()) {
      if (phrase.expectation().isPresent()) {
        Expectation expected = phrase.expectation().get();
        phrases++;
        foreseen += phrase.carries() && ExpectationWords.isNear(expected) ? 1 : 0;
        if (expected.brokeThread()) {
          broke.add(phrase);
        }
      }
    }
    return phrases == 0 ? Optional.empty() : Optional.of(new Foreseen(phrases, foreseen, broke));
  }

  List<String> sentences(int choruses) {
    String all =
        foreseen == phrases
            ? "A listener could have guessed how each of your phrases would go on."
            : foreseen == 0
                ? "A listener could not have guessed how your phrases would go on."
                : "A listener could have guessed how "
                    + foreseen
                    + " of your "
                    + phrases
                    + " phrases would go on.";
    if (broke.isEmpty()) {
      return List.of(all);
    }
    JudgedPhrase first = broke.get(0);
    String where = first.place().words(choruses);
    return List.of(
        all,
        first.carries()
            ? "The first surprise came in " + where + "; your idea was still there."
            : "The thread broke first in " + where + ".");
  }
}
