package holdfast.theory;

import java.util.Optional;

/** Takes a chord symbol apart into root, kind and bass. */
final class SymbolReading {

  private SymbolReading() {}

  /**
   * A symbol in its parts.
   *
   * @param root empty when the text begins with no note name
   * @param suffix what stands between root and bass; without a root, all after the first character
   * @param bass the note after the slash, if there is one
   */
  record Parts(Optional<NoteName> root, String suffix, Optional<NoteName> bass) {}

  static Optional<ChordSymbol> read(String symbol, LetterNames letters) {
    Parts parts = parts(symbol.strip(), letters);
    return parts
        .root()
        .flatMap(
            root ->
                ChordKind.read(parts.suffix())
                    .map(kind -> new ChordSymbol(root, kind, parts.bass())));
  }

  static Parts parts(String symbol, LetterNames letters) {
    String text = letters.inEnglish(symbol);
    int end = NoteName.endOf(text);
    Optional<NoteName> root = end == 0 ? Optional.empty() : Optional.of(NoteName.head(text, end));
    int start = Math.max(end, Math.min(1, text.length()));
    int slash = text.lastIndexOf('/');
    Optional<NoteName> bass =
        slash < start
            ? Optional.empty()
            : NoteName.read(letters.inEnglish(text.substring(slash + 1).strip()));
    // The slash of 6/9 is no bass: what follows it is no note.
    String suffix = bass.isPresent() ? text.substring(start, slash) : text.substring(start);
    return new Parts(root, suffix, bass);
  }
}
