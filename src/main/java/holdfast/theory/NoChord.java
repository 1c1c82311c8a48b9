package holdfast.theory;

import java.util.Optional;

/** A place without a chord to judge by: notes there restate or not, but neither fit nor clash. */
public enum NoChord implements Harmony {
  /** Nobody plays: {@code N.C.}, {@code NC}, {@code N}, {@code (no chord)}. */
  SILENT("N.C."),
  /** A chord that the writer did not know: {@code X} of Harte's notation. */
  UNKNOWN("X");

  private final String text;

  NoChord(String text) {
    this.text = text;
  }

  static Optional<NoChord> read(String text) {
    return switch (text) {
      case "N.C.", "N.C", "n.c.", "NC", "N", "(N.C.)", "(no chord)", "no chord" ->
          Optional.of(SILENT);
      case "X" -> Optional.of(UNKNOWN);
      default -> Optional.empty();
    };
  }

  @Override
  public String text() {
    return text;
  }

  @Override
  public String display() {
    return text;
  }

  @Override
  public Optional<ChordSymbol> chord() {
    return Optional.empty();
  }

  @Override
  public NoChord transpose(Interval interval) {
    return this;
  }

  @Override
  public NoChord transpose(Interval interval, Key there) {
    return this;
  }
}
