package holdfast.theory;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What may have been meant by a chord symbol that means nothing. */
final class NearestSymbols {

  private static final int MOST = 3;

  /** Signs that may differ before a symbol is no longer like another. */
  private static final int FARTHEST = 3;

  /** No chord symbol is longer; a longer text is something else. */
  private static final int LONGEST = 24;

  private NearestSymbols() {}

  /**
   * Known symbols on the same root (and bass) whose spelling is nearest, at most three, in the
   * reader's own letters.
   */
  static List<String> of(String symbol, LetterNames letters) {
    String text = symbol.strip();
    if (text.isEmpty() || text.length() > LONGEST || !Character.isLetter(text.charAt(0))) {
      return List.of();
    }
    SymbolReading.Parts parts = SymbolReading.parts(text, letters);
    String root = letters.text(parts.root().orElse(likelyRoot(text)));
    String bass = parts.bass().map(note -> "/" + letters.text(note)).orElse("");
    String suffix = ChordSigns.plain(parts.suffix());
    int farthest = Math.min(FARTHEST, Math.max(1, suffix.length() / 2));
    Map<ChordKind, Integer> distances = new LinkedHashMap<>();
    ChordKinds.TABLE
        .spellings()
        .forEach((spelling, kind) -> distances.merge(kind, distance(suffix, spelling), Math::min));
    return distances.entrySet().stream()
        .filter(entry -> entry.getValue() <= farthest)
        .sorted(
            Comparator.comparingInt((Map.Entry<ChordKind, Integer> entry) -> entry.getValue())
                .thenComparingInt(
                    entry -> Math.abs(entry.getKey().suffix().length() - suffix.length())))
        .limit(MOST)
        .map(entry -> root + entry.getKey().suffix() + bass)
        .toList();
  }

  /** H is B where German names are used; any other letter tells nothing, and C stands for it. */
  private static NoteName likelyRoot(String text) {
    return new NoteName(text.startsWith("H") || text.startsWith("h") ? Letter.B : Letter.C, 0);
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
