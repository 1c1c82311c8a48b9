package holdfast.chart;

import holdfast.mistake.Quoted;
import holdfast.theory.Harmony;
import holdfast.theory.UnknownChordException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds out what the words of a bar mean and how long each chord lasts. There are three ways to
 * write beats: none at all, where the bar is split evenly; a slash for each further beat; or a
 * count behind a chord, where the chords without one share what is left.
 */
final class BarTokens {

  private static final Pattern COUNTED = Pattern.compile("(.+)\\*(\\d{1,2}(?:\\.\\d+)?)");

  /** A word with its count, where it has one. */
  private record Counted(BarToken token, String symbol, Optional<Double> beats) {}

  private final TextLine line;
  private final int bar;
  private final List<BarToken> tokens;
  private final double barBeats;
  private final Map<String, Harmony> known;

  /**
   * The words of one bar.
   *
   * @param known the symbols that were read before; what is read now is added, since a tune has far
   *     more bars than chords
   */
  BarTokens(
      TextLine line, int bar, List<BarToken> tokens, double barBeats, Map<String, Harmony> known) {
    this.line = line;
    this.bar = bar;
    this.tokens = tokens;
    this.barBeats = barBeats;
    this.known = known;
  }

  BarContents contents() {
    for (BarToken token : tokens) {
      Optional<BarContents> repeat = repeatSign(token.text());
      if (repeat.isPresent()) {
        if (tokens.size() > 1) {
          throw wrong(
              token,
              "“"
                  + Quoted.shortly(token.text())
                  + "” repeats whole bars and stands alone between its bar lines",
              "write the chords out, or a slash for each beat that a chord goes on");
        }
        return repeat.get();
      }
    }
    List<Counted> words = tokens.stream().map(this::counted).toList();
    if (words.stream().anyMatch(word -> word.beats().isPresent())) {
      return byCounts(words);
    }
    return tokens.stream().anyMatch(BarToken::isSlashes) ? bySlashes() : evenly();
  }

  private static Optional<BarContents> repeatSign(String text) {
    return switch (text) {
      // The second of each pair is the sign of Unicode's musical symbols.
      case "%", "\uD834\uDD0E" -> Optional.of(new BarContents.OneBarRepeat());
      case "%%", "\uD834\uDD0F" -> Optional.of(new BarContents.TwoBarRepeat());
      default -> Optional.empty();
    };
  }

  private Counted counted(BarToken token) {
    Matcher matcher = COUNTED.matcher(token.text());
    if (!matcher.matches()) {
      return new Counted(token, token.text(), Optional.empty());
    }
    double beats = Double.parseDouble(matcher.group(2));
    if (!(beats > 0)) {
      throw wrong(
          token, "“" + Quoted.shortly(token.text()) + "” lasts no beat", "count more than 0 beats");
    }
    return new Counted(token, matcher.group(1), Optional.of(beats));
  }

  private BarContents byCounts(List<Counted> words) {
    double counted = words.stream().mapToDouble(word -> word.beats().orElse(0.0)).sum();
    long uncounted = words.stream().filter(word -> word.beats().isEmpty()).count();
    double share = uncounted == 0 ? 0 : (barBeats - counted) / uncounted;
    if (uncounted > 0 && !(share > PlayedOut.BEAT_TOLERANCE)) {
      throw wrong(
          words.get(0).token(),
          "the counts leave no beat for the other chords",
          "share out the bar's " + Decimal.text(barBeats) + " beats");
    }
    List<TimedChord> chords = new ArrayList<>();
    for (Counted word : words) {
      double beats = word.beats().orElse(share);
      if (!word.symbol().matches("/+")) {
        chords.add(TimedChord.of(chord(word.symbol(), word.token()), beats));
      } else if (chords.isEmpty() && word.beats().isPresent()) {
        chords.add(TimedChord.goingOn(beats));
      } else {
        throw wrong(
            word.token(), "slashes and counts are mixed", "write either, as in Dm7*3 or Dm7 / /");
      }
    }
    return new BarContents.Chords(chords);
  }

  private BarContents bySlashes() {
    List<TimedChord> chords = new ArrayList<>();
    for (BarToken token : tokens) {
      if (!token.isSlashes()) {
        chords.add(TimedChord.of(chord(token.text(), token), 1));
      } else if (chords.isEmpty()) {
        chords.add(TimedChord.goingOn(token.text().length()));
      } else {
        TimedChord last = chords.remove(chords.size() - 1);
        chords.add(new TimedChord(last.harmony(), last.beats() + token.text().length()));
      }
    }
    return new BarContents.Chords(chords);
  }

  private BarContents evenly() {
    int count = tokens.size();
    if (!splitsEvenly(barBeats, count)) {
      throw wrong(
          tokens.get(0),
          count + " chords do not share " + Decimal.text(barBeats) + " beats evenly",
          "write a slash for each further beat, as in Dm7 / G7, or the beats, as in Dm7*2");
    }
    List<TimedChord> chords = new ArrayList<>();
    for (BarToken token : tokens) {
      chords.add(TimedChord.of(chord(token.text(), token), barBeats / count));
    }
    return new BarContents.Chords(chords);
  }

  /** Whether so many chords share the bar in whole beats, and need no slashes. */
  static boolean splitsEvenly(double barBeats, int chords) {
    return chords == 1 || barBeats % chords == 0;
  }

  private Harmony chord(String symbol, BarToken token) {
    try {
      return known.computeIfAbsent(symbol, Harmony::parse);
    } catch (UnknownChordException unknown) {
      String nearest = String.join(", ", unknown.nearest());
      throw wrong(
          token,
          "“" + Quoted.shortly(symbol) + "” is no chord symbol I know",
          nearest.isEmpty()
              ? "write a root A to G and a kind, as in Dm7 or Bb7"
              : "the nearest that I know are " + nearest);
    }
  }

  private ChartException wrong(BarToken token, String wrong, String mend) {
    return line.wrong(token.at(), "bar " + bar + ": " + wrong, mend);
  }
}
