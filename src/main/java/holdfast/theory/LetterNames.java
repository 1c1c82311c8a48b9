package holdfast.theory;

/** Which names a country gives to the notes. */
public enum LetterNames {
  /** A to G. */
  ENGLISH,
  /** H is B natural, B is B flat; only where the user has said so. Bb is read as B flat too. */
  GERMAN;

  /** The same text with its first letter as English has it. */
  String inEnglish(String text) {
    if (this == ENGLISH || text.isEmpty()) {
      return text;
    }
    boolean flat = text.length() > 1 && (text.charAt(1) == 'b' || text.charAt(1) == '♭');
    return switch (text.charAt(0)) {
      case 'H', 'h' -> "B" + text.substring(1);
      case 'B' -> flat ? text : "Bb" + text.substring(1);
      default -> text;
    };
  }

  /** A note name as this country types it. */
  String text(NoteName name) {
    if (this == ENGLISH || name.letter() != Letter.B) {
      return name.text();
    }
    return name.alter() == -1 ? "B" : "H" + name.text().substring(1);
  }
}
