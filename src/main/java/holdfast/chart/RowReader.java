package holdfast.chart;

import holdfast.mistake.Quoted;
import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads rows of bars, and remembers where each bar stands. */
final class RowReader {

  private static final Pattern BAR_LINE = Pattern.compile(":?\\|{1,2}:?");
  private static final Pattern TIMES = Pattern.compile("\\s*(\\d{1,3})x(?![\\p{L}\\d])");
  private static final Pattern ENDING =
      Pattern.compile("\\s*(\\d{1,3}(?:\\s*,\\s*\\d{1,3})*)\\s*\\.");

  private record Place(TextLine line, int at) {}

  private final String source;
  private final int metreBeats;
  private final double pickupBeats;
  private final List<Place> places = new ArrayList<>();

  /** How many bars of the tune come before each written bar. */
  private final List<Integer> barsBefore = new ArrayList<>();

  private final Map<String, Harmony> known = new HashMap<>();

  /** How many bars of the tune the bars so far stand for. */
  private int barsSoFar;

  /** The signs to the left of the bar to come; an opening sign may end the row before. */
  private RepeatSigns pending = RepeatSigns.NONE;

  private Optional<Place> pendingPlace = Optional.empty();

  RowReader(String source, int metreBeats, double pickupBeats) {
    this.source = source;
    this.metreBeats = metreBeats;
    this.pickupBeats = pickupBeats;
  }

  /** The bars of a line from an index on; its first and last bar line may be left out. */
  ChartLine.Row read(TextLine line, int from) {
    Row row = new Row(line, from);
    while (row.step()) {
      // Each step takes a bar line, a mark or a chord.
    }
    return new ChartLine.Row(row.bars, line.remarkFrom(row.at));
  }

  /** Fails where a sign at the very end has no bar to belong to. */
  void requireNothingPending() {
    if (pendingPlace.isPresent()) {
      Place place = pendingPlace.get();
      throw place
          .line()
          .wrong(place.at(), "no bar follows this sign", "write the bar or take the sign out");
    }
  }

  /** The same mistake, with its place in the text. */
  ChartException told(UnplayableBarException mistake) {
    if (mistake.index() >= places.size()) {
      return new ChartException(source, mistake.wrong(), mistake.mend());
    }
    Place place = places.get(mistake.index());
    int number = pickupBeats > 0 ? 0 : 1;
    return place
        .line()
        .wrong(
            place.at(),
            "bar " + (number + barsBefore.get(mistake.index())) + ": " + mistake.wrong(),
            mistake.mend());
  }

  /** One row while it is read. */
  private final class Row {
    private final TextLine line;
    private final String text;
    private final List<WrittenBar> bars = new ArrayList<>();
    private final List<BarToken> tokens = new ArrayList<>();
    private int at;
    private boolean unexpected;
    private boolean anyLine;

    Row(TextLine line, int from) {
      this.line = line;
      this.text = line.text();
      this.at = from;
    }

    /** Takes the next sign; false at the end of the row. */
    boolean step() {
      while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
        at++;
      }
      if (at == text.length() || line.startsRemark(at)) {
        if (!tokens.isEmpty() || unexpected) {
          closeBar(RepeatSigns.NONE);
        }
        if (bars.isEmpty()) {
          throw line.wrong(at, "there is no bar on this line", "write chords between bar lines");
        }
        return false;
      }
      char c = text.charAt(at);
      if (c == '|' || c == ':') {
        takeBarLine();
      } else if (c == '!') {
        takeMark();
      } else {
        takeToken();
      }
      return true;
    }

    private void takeBarLine() {
      int start = at;
      while (at < text.length() && (text.charAt(at) == '|' || text.charAt(at) == ':')) {
        at++;
      }
      String lineSign = text.substring(start, at);
      if (!BAR_LINE.matcher(lineSign).matches()) {
        throw line.wrong(
            start,
            "“" + lineSign + "” is no bar line",
            "write |, ||, |: or :|, and something between two of them");
      }
      RepeatSigns right = RepeatSigns.NONE;
      boolean closes = lineSign.startsWith(":");
      if (closes) {
        right = right.closing(times(start));
      }
      if (lineSign.contains("||")) {
        right = right.doubled();
      }
      boolean isFirst = !anyLine && tokens.isEmpty() && !unexpected;
      anyLine = true;
      if (isFirst) {
        if (closes) {
          throw line.wrong(
              start, "no bar stands before this repeat sign", "write it behind the last bar");
        }
      } else {
        closeBar(right);
      }
      notePending(lineSign, start);
    }

    private int times(int start) {
      Matcher matcher = TIMES.matcher(text).region(at, text.length());
      if (!matcher.lookingAt()) {
        return 2;
      }
      at = matcher.end();
      int times = Integer.parseInt(matcher.group(1));
      if (times < 2 || times > RepeatSigns.MOST_PLAYS) {
        throw line.wrong(
            start,
            "a repeat cannot be played " + times + " times",
            "choose 2 to " + RepeatSigns.MOST_PLAYS);
      }
      return times;
    }

    private void notePending(String lineSign, int start) {
      if (lineSign.endsWith(":") && lineSign.length() > 1) {
        pending = pending.opening();
        pendingPlace = Optional.of(new Place(line, start));
      }
      Matcher matcher = ENDING.matcher(text).region(at, text.length());
      if (matcher.lookingAt()) {
        at = matcher.end();
        pending = pending.startingEnding(passes(matcher.group(1), start));
        pendingPlace = Optional.of(new Place(line, start));
      }
    }

    private List<Integer> passes(String numbers, int start) {
      List<Integer> passes = new ArrayList<>();
      for (String number : numbers.split(",", -1)) {
        int pass = Integer.parseInt(number.strip());
        boolean upwards = passes.isEmpty() || pass > passes.get(passes.size() - 1);
        if (pass < 1 || pass > RepeatSigns.MOST_PLAYS || !upwards) {
          throw line.wrong(
              start,
              "“" + Quoted.shortly(numbers) + ".” does not number an ending",
              "number endings upwards from 1 to " + RepeatSigns.MOST_PLAYS + ", as in |1,2.");
        }
        passes.add(pass);
      }
      return passes;
    }

    private void takeMark() {
      if (!tokens.isEmpty() || unexpected) {
        throw line.wrong(
            at, "the mark ! stands inside a bar", "write it once, before the bar's first chord");
      }
      unexpected = true;
      at++;
    }

    private void takeToken() {
      int start = at;
      int depth = 0;
      StringBuilder word = new StringBuilder();
      for (; at < text.length(); at++) {
        char c = text.charAt(at);
        boolean blank = Character.isWhitespace(c);
        boolean betweenWords = depth == 0 && (blank || c == ':');
        if (betweenWords || c == '|' || c == '!') {
          break;
        }
        depth += c == '(' ? 1 : c == ')' ? -1 : 0;
        if (!blank) {
          word.append(c);
        }
      }
      if (depth != 0) {
        throw line.wrong(
            start,
            "bar "
                + number()
                + ": the parentheses of “"
                + Quoted.shortly(word.toString())
                + "” do not match",
            "open and close each of them");
      }
      addWord(word.toString(), start);
    }

    /** Slashes that lean on a chord, as in Dm7//, are words of their own. */
    private void addWord(String word, int start) {
      int end = word.length();
      while (end > 0 && word.charAt(end - 1) == '/') {
        end--;
      }
      if (end > 0) {
        tokens.add(new BarToken(word.substring(0, end), start));
      }
      if (end < word.length()) {
        tokens.add(new BarToken(word.substring(end), start + end));
      }
    }

    private int number() {
      return barsSoFar + (pickupBeats > 0 ? 0 : 1);
    }

    private void closeBar(RepeatSigns right) {
      if (tokens.isEmpty()) {
        throw line.wrong(
            at,
            "bar " + number() + " is empty",
            "write a chord, % for the bar before once more, a slash for each beat that the chord"
                + " goes on, or N.C.");
      }
      double beats = places.isEmpty() && pickupBeats > 0 ? pickupBeats : metreBeats;
      BarContents contents = new BarTokens(line, number(), tokens, beats, known).contents();
      RepeatSigns signs =
          new RepeatSigns(pending.opens(), pending.ending(), right.plays(), right.doubleLine());
      places.add(new Place(line, tokens.get(0).at()));
      barsBefore.add(barsSoFar);
      bars.add(new WrittenBar(contents, unexpected, signs));
      barsSoFar += contents.barCount();
      pending = RepeatSigns.NONE;
      pendingPlace = Optional.empty();
      tokens.clear();
      unexpected = false;
    }
  }
}
