package holdfast.chart;

import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;

/** Writes the chords of a bar in the shortest of the three ways that say their beats. */
final class BarWords {

  private BarWords() {}

  /** The words between the bar lines. */
  static String of(List<TimedChord> chords, double barBeats) {
    if (isEven(chords, barBeats)) {
      return String.join(" ", chords.stream().map(BarWords::symbol).toList());
    }
    if (chords.stream().allMatch(chord -> chord.beats() == Math.rint(chord.beats()))) {
      return withSlashes(chords);
    }
    return String.join(
        " ", chords.stream().map(c -> symbol(c) + "*" + Decimal.text(c.beats())).toList());
  }

  private static boolean isEven(List<TimedChord> chords, double barBeats) {
    return chords.get(0).harmony().isPresent()
        && BarTokens.splitsEvenly(barBeats, chords.size())
        && chords.stream().allMatch(chord -> chord.beats() == barBeats / chords.size());
  }

  private static String withSlashes(List<TimedChord> chords) {
    List<String> words = new ArrayList<>();
    for (TimedChord chord : chords) {
      words.add(symbol(chord));
      for (int beat = 1; beat < chord.beats(); beat++) {
        words.add("/");
      }
    }
    return String.join(" ", words);
  }

  private static String symbol(TimedChord chord) {
    return chord.harmony().map(Harmony::text).orElse("/");
  }
}
