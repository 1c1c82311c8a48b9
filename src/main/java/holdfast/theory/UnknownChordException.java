package holdfast.theory;

import java.util.List;

/** A text that should be a chord symbol and means nothing as one. */
public final class UnknownChordException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /** As many characters of a text that is no chord at all stand in the message. */
  private static final int SHOWN = 40;

  private final String symbol;
  private final transient List<String> nearest;

  /**
   * Says which text it was and what was perhaps meant.
   *
   * @param symbol the text as it was written
   * @param nearest symbols that are known and look like it, the nearest first; at most three
   */
  public UnknownChordException(String symbol, List<String> nearest) {
    super(message(symbol, nearest));
    this.symbol = symbol;
    this.nearest = List.copyOf(nearest);
  }

  private static String message(String symbol, List<String> nearest) {
    String shown = symbol.length() > SHOWN ? symbol.substring(0, SHOWN) + "…" : symbol;
    String unknown = "“" + shown + "” is not a chord symbol that Holdfast knows";
    return nearest.isEmpty() ? unknown : unknown + "; near it are " + String.join(", ", nearest);
  }

  /** The text as it was written. */
  public String symbol() {
    return symbol;
  }

  /** Symbols that are known and look like it, the nearest first; at most three. */
  public List<String> nearest() {
    return nearest;
  }
}
