package holdfast.backing;

import java.util.List;

/**
 * How far do the voices go from one chord to the next, and how badly does that sound?
 *
 * <p>Voices do not cross: the lowest goes to the lowest. Where one chord has a voice more, two
 * voices part from one note or meet on one. Steps are cheap, leaps dear, and all voices leaping the
 * same way is what a listener hears as a break. Common practice, no source.
 *
 * @param semitones how far all voices go together
 * @param largest the largest move of one voice
 * @param parallelLeap whether every voice, of two or more, leaps the same way
 */
record VoiceMotion(int semitones, int largest, boolean parallelLeap) {

  /** A voice moves smoothly by up to a major third; further is a leap. */
  static final int LARGEST_STEP = 4;

  /** What a leap costs beside its distance, for each semitone beyond a step. */
  private static final double LEAP_COST = 2;

  /** More than any way round it. */
  private static final double PARALLEL_LEAP_COST = 40;

  static VoiceMotion between(Voicing from, Voicing to) {
    List<Integer> a = from.pitches();
    List<Integer> b = to.pitches();
    return a.size() <= b.size() ? pair(a, b, 1) : pair(b, a, -1);
  }

  double cost() {
    return semitones
        + LEAP_COST * Math.max(0, largest - LARGEST_STEP)
        + (parallelLeap ? PARALLEL_LEAP_COST : 0);
  }

  /** Each of the many goes to one of the few, in order, all of the few used, at the least cost. */
  private static VoiceMotion pair(List<Integer> few, List<Integer> many, int direction) {
    int n = few.size();
    int m = many.size();
    int[][] best = new int[m][n];
    for (int j = 0; j < m; j++) {
      for (int i = 0; i < n; i++) {
        int move = Math.abs(many.get(j) - few.get(i));
        int before;
        if (j == 0) {
          before = i == 0 ? 0 : UNREACHED;
        } else {
          before = Math.min(best[j - 1][i], i == 0 ? UNREACHED : best[j - 1][i - 1]);
        }
        best[j][i] = Math.min(UNREACHED, before + move);
      }
    }
    int largest = 0;
    int leapsUp = 0;
    int leapsDown = 0;
    int i = n - 1;
    for (int j = m - 1; j >= 0; j--) {
      int move = direction * (many.get(j) - few.get(i));
      largest = Math.max(largest, Math.abs(move));
      leapsUp += move > LARGEST_STEP ? 1 : 0;
      leapsDown += move < -LARGEST_STEP ? 1 : 0;
      if (j > 0 && i > 0 && best[j - 1][i - 1] <= best[j - 1][i]) {
        i--;
      }
    }
    return new VoiceMotion(best[m - 1][n - 1], largest, m > 1 && (leapsUp == m || leapsDown == m));
  }

  private static final int UNREACHED = 1_000_000;
}
