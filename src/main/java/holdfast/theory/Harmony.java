package holdfast.theory;

import java.util.Optional;

/** What a chart asks for at one place: a chord, a chord that may be left out, or none. */
public sealed interface Harmony permits ChordSymbol, OptionalChord, NoChord {

  /**
   * Reads a chord symbol in any usual spelling, {@code N.C.} for no chord, or a chord in
   * parentheses for an optional one. Signs that repeat a bar ({@code %}) are the chart's, not
   * harmony.
   *
   * @throws UnknownChordException when the text is no chord symbol; it names the nearest ones
   */
  static Harmony parse(String symbol) {
    return parse(symbol, LetterNames.ENGLISH);
  }

  /**
   * As {@link #parse(String)}, with the letters as a country uses them.
   *
   * @throws UnknownChordException when the text is no chord symbol; it names the nearest ones
   */
  static Harmony parse(String symbol, LetterNames letters) {
    String text = symbol.strip();
    Optional<NoChord> none = NoChord.read(text);
    if (none.isPresent()) {
      return none.get();
    }
    if (text.startsWith("(") && text.endsWith(")")) {
      return new OptionalChord(
          ChordSymbol.parse(text.substring(1, text.length() - 1).strip(), letters));
    }
    return ChordSymbol.parse(text, letters);
  }

  /** As Holdfast types it: {@code Ebmaj7}, {@code (E7)}, {@code N.C.}; it reads back the same. */
  String text();

  /** As shown to people: {@code E♭maj7}. */
  String display();

  /** The chord that is named, whether it may be left out or not; empty without a chord. */
  Optional<ChordSymbol> chord();

  /** The same harmony an interval higher, without double accidentals in its root or bass. */
  Harmony transpose(Interval interval);

  /**
   * The same harmony an interval higher, spelled as a chart in the given key would: E♯, B♯, F♭ and
   * C♭ only where the key or the chord itself has them.
   */
  Harmony transpose(Interval interval, Key there);

  /**
   * The pitch classes that sound when players play it: the bass included, the notes that players
   * leave out not. Empty without a chord.
   */
  default PitchClassSet pitchClasses() {
    return chord().map(ChordSymbol::soundingPitchClasses).orElse(PitchClassSet.EMPTY);
  }

  /** The pitch classes that the symbol spells above its root, a foreign bass left out. */
  default PitchClassSet standardPitchClasses() {
    return chord().map(ChordSymbol::spelledPitchClasses).orElse(PitchClassSet.EMPTY);
  }

  /** Third and seventh, or what stands for them; empty without a chord. */
  default PitchClassSet guideTones() {
    return chord().map(ChordSymbol::guideTonePitchClasses).orElse(PitchClassSet.EMPTY);
  }

  /** Whether notes can be judged against it at all. */
  default boolean hasChord() {
    return chord().isPresent();
  }
}
