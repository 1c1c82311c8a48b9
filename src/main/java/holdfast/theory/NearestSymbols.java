package holdfast.theory;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What may have been meant by a chord symbol that means nothing. */
final class NearestSymbols {

  private static final int MOST = 3;

  private NearestSymbols() {}

  /** Known symbols on the same root whose spelling is nearest, at most three. */
  static List<String> of(String symbol, LetterNames letters) {
    String text = symbol.strip();
    if (text.isEmpty() || !Character.isLetter(text.charAt(0))) {
      return List.of();
    }
    int end = NoteName.endOf(text);
    String root =
        end > 0
            ? text.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + text.substring(1, end)
            : likelyRoot(text);
    String suffix = ChordGrammar.clean(text.substring(end > 0 ? end : Math.min(1, text.length())));
    Map<String, Integer> distances = new LinkedHashMap<>();
    ChordKinds.TABLE
        .spellings()
        .forEach(
            (spelling, kind) ->
                distances.merge(root + kind.suffix(), distance(suffix, spelling), Math::min));
    int farthest = Math.max(1, suffix.length() / 2);
    return distances.entrySet().stream()
        .filter(e -> e.getValue() <= farthest)
        .sorted(
            Comparator.comparingInt((Map.Entry<String, Integer> e) -> e.getValue())
                .thenComparingInt(e -> Math.abs(e.getKey().length() - symbol.length())))
        .limit(MOST)
        .map(Map.Entry::getKey)
        .toList();
  }

  /** H is B where German names are used; any other letter tells nothing, and C stands for it. */
  private static String likelyRoot(String text) {
    return text.startsWith("H") || text.startsWith("h") ? "B" : "C";
  }

  /** A number taken for another changes the chord more than a letter slipped. */
  private static int change(char a, char b) {
    return a == b ? 0 : Character.isDigit(a) && Character.isDigit(b) ? 2 : 1;
  }

  /**
   * Letters inserted, dropped, changed or swapped with their neighbour: optimal string alignment.
   */
  private static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = change(a.charAt(i - 1), b.charAt(j - 1));
        d[i][j] = Math.min(d[i - 1][j - 1] + change, Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
