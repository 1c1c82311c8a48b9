package holdfast.chart;

import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Writes the chords of a bar in the shortest of the three ways that say their beats. */
final class BarWords {

  private final List<TimedChord> chords;
  private final double barBeats;
  private final Function<Harmony, String> symbols;

  private BarWords(List<TimedChord> chords, double barBeats, Function<Harmony, String> symbols) {
    this.chords = chords;
    this.barBeats = barBeats;
    this.symbols = symbols;
  }

  /**
   * The words between the bar lines.
   *
   * @param symbols how a harmony is written
   */
  static String of(List<TimedChord> chords, double barBeats, Function<Harmony, String> symbols) {
    BarWords words = new BarWords(chords, barBeats, symbols);
    return String.join(" ", words.words());
  }

  private List<String> words() {
    if (isEven()) {
      return chords.stream().map(this::symbol).toList();
    }
    if (chords.stream().allMatch(chord -> chord.beats() == Math.rint(chord.beats()))) {
      return withSlashes();
    }
    return chords.stream().map(c -> symbol(c) + "*" + Decimal.text(c.beats())).toList();
  }

  private boolean isEven() {
    return chords.get(0).harmony().isPresent()
        && BarTokens.splitsEvenly(barBeats, chords.size())
        && chords.stream().allMatch(chord -> chord.beats() == barBeats / chords.size());
  }

  private List<String> withSlashes() {
    List<String> words = new ArrayList<>();
    for (TimedChord chord : chords) {
      words.add(symbol(chord));
      for (int beat = 1; beat < chord.beats(); beat++) {
        words.add("/");
      }
    }
    return words;
  }

  private String symbol(TimedChord chord) {
    return chord.harmony().map(symbols).orElse("/");
  }
}
