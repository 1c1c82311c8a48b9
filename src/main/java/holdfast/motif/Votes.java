package holdfast.motif;

/**
 * Which number do most pairs of an idea note and a phrase note propose, as a transposition or an
 * axis? Each pair near its own place votes; so a phrase itself says which moves are worth weighing.
 */
final class Votes {

  private Votes() {}

  /**
   * The differences that most pairs near the diagonal propose, best first: phrase note less idea
   * note, each told as a pitch, or as a step of its scale; or as less than nothing, to be mirrored.
   */
  static int[] best(int[] idea, int[] phrase, int most) {
    int n = idea.length;
    int m = phrase.length;
    int slack = Math.abs(n - m) + 1;
    int pairs = 0;
    int[] values = new int[n * Math.min(m, 2 * slack + 1)];
    int[] votes = new int[values.length];
    for (int i = 0; i < n; i++) {
      for (int j = Math.max(0, i - slack); j <= Math.min(m - 1, i + slack); j++) {
        int value = phrase[j] - idea[i];
        // A pair in its own place says more than one that needs notes left out.
        int vote = i == j || n - i == m - j ? 3 : 1;
        int at = 0;
        while (at < pairs && values[at] != value) {
          at++;
        }
        if (at == pairs) {
          values[pairs++] = value;
        }
        votes[at] += vote;
      }
    }
    int count = Math.min(most, pairs);
    int[] best = new int[count];
    for (int k = 0; k < count; k++) {
      int top = 0;
      for (int at = 1; at < pairs; at++) {
        if (votes[at] > votes[top]) {
          top = at;
        }
      }
      best[k] = values[top];
      votes[top] = -1;
    }
    return best;
  }
}
