package holdfast.theory;

import java.util.Optional;

/**
 * A chord in parentheses: it may be played or left out, so that a note fits when it fits the chord
 * or the one that goes on without it.
 *
 * @param symbol the chord inside the parentheses
 */
public record OptionalChord(ChordSymbol symbol) implements Harmony {

  @Override
  public String text() {
    return "(" + symbol.text() + ")";
  }

  @Override
  public String display() {
    return "(" + symbol.display() + ")";
  }

  @Override
  public Optional<ChordSymbol> chord() {
    return Optional.of(symbol);
  }

  @Override
  public OptionalChord transpose(Interval interval) {
    return new OptionalChord(symbol.transpose(interval));
  }

  @Override
  public OptionalChord transpose(Interval interval, Key there) {
    return new OptionalChord(symbol.transpose(interval, there));
  }
}
