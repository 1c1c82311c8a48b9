package holdfast.chart;

import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Plays a written chart out, bar by bar: signs of repetition become the chords they stand for. */
final class PlayedOut {

  /** More bars than any tune has; a chart beyond it is a mistake or mischief. */
  static final int MOST_BARS = 4096;

  /** Far below what anyone hears, far above the rounding of sums of beats. */
  static final double BEAT_TOLERANCE = 1e-6;

  private final Heading heading;
  private final List<WrittenBar> written;
  private final int[] writtenNumbers;
  private final List<Optional<String>> sections;
  private final List<Bar> bars = new ArrayList<>();
  private Optional<Bar> pickup = Optional.empty();

  private PlayedOut(Heading heading, List<WrittenBar> written, List<Optional<String>> sections) {
    this.heading = heading;
    this.written = written;
    this.sections = sections;
    this.writtenNumbers = new int[written.size()];
    int number = hasPickup() ? 0 : 1;
    for (int i = 0; i < writtenNumbers.length; i++) {
      writtenNumbers[i] = number;
      number += written.get(i).contents().barCount();
    }
  }

  /** Fails with the first bar that cannot be played. */
  static void check(Heading heading, List<WrittenBar> written) {
    new PlayedOut(heading, written, List.of()).play();
  }

  /** One chorus of the chart, in the pitch it is written in. */
  static Form form(Chart chart) {
    PlayedOut out = new PlayedOut(chart.heading(), chart.writtenBars(), sections(chart));
    out.play();
    return new Form(chart.metre(), out.pickup, out.bars);
  }

  private static List<Optional<String>> sections(Chart chart) {
    List<Optional<String>> sections = new ArrayList<>();
    Optional<String> section = Optional.empty();
    for (ChartLine line : chart.lines()) {
      if (line instanceof ChartLine.SectionName named) {
        section = Optional.of(named.name());
      } else if (line instanceof ChartLine.Row row) {
        for (int i = 0; i < row.bars().size(); i++) {
          sections.add(section);
        }
      }
    }
    return sections;
  }

  private boolean hasPickup() {
    return heading.pickupBeats() > 0;
  }

  private void play() {
    int first = hasPickup() ? 1 : 0;
    if (written.size() <= first) {
      throw new UnplayableBarException(
          0,
          hasPickup() ? "no bar follows the pick-up" : "there is no bar to play",
          "write bars between bar lines, as in | Dm7 | G7 |");
    }
    checkLengths();
    if (hasPickup()) {
      playPickup();
    }
    PlayingOrder order = PlayingOrder.of(written, first);
    checkRepeatStarts(order, first);
    for (PlayingOrder.Step step : order.steps()) {
      play(step);
      if (bars.size() > MOST_BARS) {
        throw new UnplayableBarException(
            step.index(),
            "with all repeats the tune has more than " + MOST_BARS + " bars",
            "repeat less");
      }
    }
  }

  private void checkLengths() {
    for (int i = 0; i < written.size(); i++) {
      if (written.get(i).contents() instanceof BarContents.Chords chords) {
        double wanted = i == 0 && hasPickup() ? heading.pickupBeats() : heading.metre().beats();
        if (Math.abs(chords.beats() - wanted) > BEAT_TOLERANCE) {
          throw new UnplayableBarException(
              i,
              "its chords last "
                  + Decimal.text(chords.beats())
                  + " beats where the bar has "
                  + Decimal.text(wanted),
              "write a slash for each further beat, as in Dm7 / / G7, or the beats, as in Dm7*3");
        }
      }
    }
  }

  private void playPickup() {
    WrittenBar bar = written.get(0);
    boolean isPlain = !bar.signs().opens() && !bar.signs().startsEnding() && !bar.signs().closes();
    if (!isPlain) {
      throw new UnplayableBarException(
          0, "the pick-up bar is played only once", "move the repeat sign behind it");
    }
    if (!(bar.contents() instanceof BarContents.Chords chords)) {
      throw new UnplayableBarException(
          0, "the pick-up bar has nothing before it to repeat", "write its chord or N.C.");
    }
    pickup = Optional.of(bar(0, 0, 1, -heading.pickupBeats(), resolved(chords, 0)));
  }

  /** What comes before a repeat's first bar differs from pass to pass, so it cannot be repeated. */
  private void checkRepeatStarts(PlayingOrder order, int first) {
    for (int i = first; i < written.size(); i++) {
      BarContents contents = written.get(i).contents();
      boolean atStart = order.isRepeatStart(i);
      boolean afterStart = i > first && order.isRepeatStart(i - 1);
      boolean looksBack =
          contents instanceof BarContents.OneBarRepeat
              || contents instanceof BarContents.TwoBarRepeat
              || (contents instanceof BarContents.Chords chords
                  && chords.chords().get(0).harmony().isEmpty());
      if ((atStart && looksBack)
          || (afterStart
              && contents instanceof BarContents.TwoBarRepeat
              && written.get(i - 1).contents().barCount() == 1)) {
        throw new UnplayableBarException(
            i,
            "it looks back across the start of a repeat, where each pass finds other chords",
            "write its chords out");
      }
    }
  }

  private void play(PlayingOrder.Step step) {
    int index = step.index();
    BarContents contents = written.get(index).contents();
    if (contents instanceof BarContents.Chords chords) {
      add(index, 0, step.pass(), resolved(chords, index));
      return;
    }
    int back = contents.barCount();
    if (bars.size() < back) {
      throw new UnplayableBarException(
          index,
          back == 1 ? "no whole bar comes before it" : "no two whole bars come before it",
          "write its chords out");
    }
    for (int i = 0; i < back; i++) {
      Bar again = bars.get(bars.size() - back);
      List<TimedChord> chords =
          again.chords().stream()
              .map(span -> TimedChord.of(span.harmony(), span.lengthBeats()))
              .toList();
      add(index, i, step.pass(), chords);
    }
  }

  private void add(int index, int within, int pass, List<TimedChord> chords) {
    double start = (double) bars.size() * heading.metre().beats();
    bars.add(bar(index, within, pass, start, chords));
  }

  private Bar bar(int index, int within, int pass, double start, List<TimedChord> chords) {
    boolean isPickup = start < 0;
    int number = isPickup ? 0 : bars.size() + 1;
    double end = isPickup ? 0 : start + heading.metre().beats();
    List<ChordSpan> spans = new ArrayList<>();
    double beat = start;
    for (int i = 0; i < chords.size(); i++) {
      // The last one ends on the bar line, whatever the sum of the others was rounded to.
      double next = i + 1 < chords.size() ? beat + chords.get(i).beats() : end;
      spans.add(new ChordSpan(beat, next - beat, chords.get(i).harmony().orElseThrow(), number));
      beat = next;
    }
    return new Bar(
        number,
        writtenNumbers[index] + within,
        pass,
        sections.isEmpty() ? Optional.empty() : sections.get(index),
        written.get(index).unexpected() && within == 0,
        spans);
  }

  private List<TimedChord> resolved(BarContents.Chords chords, int index) {
    List<TimedChord> resolved = new ArrayList<>();
    for (TimedChord chord : chords.chords()) {
      Harmony harmony = chord.harmony().orElseGet(() -> lastChord(index));
      resolved.add(TimedChord.of(harmony, chord.beats()));
    }
    return resolved;
  }

  private Harmony lastChord(int index) {
    Optional<Bar> before = bars.isEmpty() ? pickup : Optional.of(bars.get(bars.size() - 1));
    List<ChordSpan> chords = before.map(Bar::chords).orElse(List.of());
    if (chords.isEmpty()) {
      throw new UnplayableBarException(
          index, "no chord comes before it that could go on", "begin it with a chord or N.C.");
    }
    return chords.get(chords.size() - 1).harmony();
  }
}
