package holdfast.theory;

import java.util.List;
import java.util.Optional;

/**
 * A chord symbol that some musicians read otherwise.
 *
 * @param taken the chord that Holdfast takes it for
 * @param other the chord that it may mean as well
 * @param why in a few words, for people
 */
public record Ambiguity(ChordSymbol taken, ChordSymbol other, String why) {

  private static final List<Table.Row> TABLE = Table.named("chord-ambiguities.csv").rows();

  /** What is ambiguous about a symbol as it was typed; empty when nothing is. */
  public static Optional<Ambiguity> of(String symbol) {
    String text = symbol.strip();
    int end = NoteName.endOf(text);
    if (end == 0) {
      return Optional.empty();
    }
    String suffix = ChordSigns.plain(text.substring(end));
    return TABLE.stream()
        .filter(row -> sameSpelling(row.get("suffix"), suffix))
        .findFirst()
        .flatMap(row -> of(text, NoteName.head(text, end), row));
  }

  /** The letter o, "dim" and the circle are one sign, and all of them leave the seventh open. */
  private static boolean sameSpelling(String listed, String suffix) {
    boolean circle = suffix.equals("o") || suffix.equals("dim");
    return listed.equals(circle ? "°" : suffix);
  }

  private static Optional<Ambiguity> of(String text, NoteName root, Table.Row row) {
    Optional<ChordSymbol> taken = SymbolReading.read(text, LetterNames.ENGLISH);
    Optional<ChordKind> other = ChordKind.read(row.get("other"));
    return taken.isPresent() && other.isPresent()
        ? Optional.of(
            new Ambiguity(
                taken.get(), new ChordSymbol(root, other.get(), Optional.empty()), row.get("why")))
        : Optional.empty();
  }
}
