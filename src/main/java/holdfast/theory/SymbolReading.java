package holdfast.theory;

import java.util.Optional;

/** Takes a chord symbol apart into root, kind and bass. */
final class SymbolReading {

  private SymbolReading() {}

  static Optional<ChordSymbol> read(String symbol, LetterNames letters) {
    String text = inEnglish(symbol.strip(), letters);
    int end = NoteName.endOf(text);
    if (end == 0) {
      return Optional.empty();
    }
    NoteName root = NoteName.head(text, end);
    int slash = text.lastIndexOf('/');
    Optional<NoteName> bass =
        slash < end
            ? Optional.empty()
            : NoteName.read(inEnglish(text.substring(slash + 1).strip(), letters));
    // The slash of 6/9 is no bass: what follows it is no note.
    String suffix = bass.isPresent() ? text.substring(end, slash) : text.substring(end);
    return ChordKind.read(suffix).map(kind -> new ChordSymbol(root, kind, bass));
  }

  /** German H becomes B, and German B becomes B flat; Bb means B flat in both. */
  private static String inEnglish(String text, LetterNames letters) {
    if (letters == LetterNames.ENGLISH || text.isEmpty()) {
      return text;
    }
    boolean flat = text.length() > 1 && (text.charAt(1) == 'b' || text.charAt(1) == '♭');
    return switch (text.charAt(0)) {
      case 'H', 'h' -> "B" + text.substring(1);
      case 'B' -> flat ? text : "Bb" + text.substring(1);
      default -> text;
    };
  }
}
