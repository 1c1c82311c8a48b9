package holdfast.harmony;

import holdfast.theory.ChordKind;
import holdfast.theory.ChordSymbol;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/**
 * How surprising is this chord after that one? Answered from the chord changes under 456 jazz solos
 * ({@code chord-changes.csv} beside this class, with its source and licence).
 */
final class ChordChanges {

  /** The one table: it never changes. */
  static final ChordChanges COUNTED = read();

  /** Each of the 120 changes (ten families, twelve ways) counts half a time beforehand. */
  private static final double BEFOREHAND = 0.5;

  private static final int POSSIBLE_CHANGES = 120;

  private record Change(String from, int up, String to) {}

  private final Map<Change, Integer> counts;
  private final Map<String, Integer> totals;

  private ChordChanges(Map<Change, Integer> counts, Map<String, Integer> totals) {
    this.counts = Map.copyOf(counts);
    this.totals = Map.copyOf(totals);
  }

  /**
   * The surprisal of a change, in bits: 1 for an even chance, 10 for one in a thousand. A chord
   * that goes on, over another bass maybe, is no surprise: 0.
   */
  double surprisalBits(ChordSymbol from, ChordSymbol to) {
    int up = Math.floorMod(to.root().pitchClass() - from.root().pitchClass(), 12);
    if (up == 0 && from.kind().equals(to.kind())) {
      return 0;
    }
    String family = family(from.kind());
    double count = counts.getOrDefault(new Change(family, up, family(to.kind())), 0) + BEFOREHAND;
    double total = totals.getOrDefault(family, 0) + BEFOREHAND * POSSIBLE_CHANGES;
    return -Math.log(count / total) / Math.log(2);
  }

  /** The family as the counts name it. */
  private static String family(ChordKind kind) {
    boolean seventh = kind.has(7, -1);
    if (kind.has(3, -1) && !kind.has(3, 0)) {
      if (kind.has(5, -1) && !kind.has(5, 0)) {
        return seventh ? "m7b5" : "dim";
      }
      return seventh ? "m7" : kind.has(7, 0) ? "mM" : "m";
    }
    if (kind.has(3, 0)) {
      boolean augmented = kind.has(5, 1) && !kind.has(5, -1);
      return seventh ? "7" : augmented && !kind.has(7, 0) ? "aug" : "maj";
    }
    return seventh ? "7sus" : kind.has(4, 0) || kind.has(2, 0) ? "sus" : "maj";
  }

  private static ChordChanges read() {
    Map<Change, Integer> counts = new HashMap<>();
    Map<String, Integer> totals = new HashMap<>();
    try (InputStream in = ChordChanges.class.getResourceAsStream("chord-changes.csv");
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.startsWith("#") || line.startsWith("from,")) {
          continue;
        }
        String[] cells = line.split(",", -1);
        int count = Integer.parseInt(cells[3]);
        counts.merge(
            new Change(cells[0], Integer.parseInt(cells[1]), cells[2]), count, Integer::sum);
        totals.merge(cells[0], count, Integer::sum);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new ChordChanges(counts, totals);
  }
}
