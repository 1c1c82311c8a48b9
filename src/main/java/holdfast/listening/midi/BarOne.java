package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import holdfast.listening.midi.RecordedTake.Mark;
import holdfast.listening.midi.RecordedTake.MarkKind;
import holdfast.listening.midi.RecordedTake.MetreChange;
import holdfast.listening.midi.TakePlacement.Rule;
import holdfast.time.Metre;
import holdfast.time.TempoMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * Finds where bar 1 of a chart is in a take. In this order: where the user says; at a marker; after
 * a count-in; at the first bar of the file, if the file knows its tempo; at the first note.
 *
 * @param metre of the chart
 * @param beatsPerMinute of the chart; used where the file names no tempo
 */
public record BarOne(Metre metre, double beatsPerMinute) {

  /** Names of the place itself, before names of the form that starts there. */
  private static final List<Pattern> NAMES =
      List.of(
          pattern("(bar|measure|m\\.?)?\\s*1"),
          pattern("(chorus|form|top|head)(\\s*(1|one|start))?"),
          pattern("(solo)(\\s*(1|one|start))?"));

  private static final String MEND = "--starts-at BEATS names another place";

  /** A bar line is looked for within this part of a beat. */
  private static final double NEAR_BEATS = 0.1;

  /**
   * Lays the take over the chart.
   *
   * @param line the melody of the take, in order
   * @param startsAt where bar 1 is by the user's word, in beats from the start of the file
   */
  public TakePlacement of(RecordedTake take, List<PlayedNote> line, OptionalDouble startsAt) {
    if (startsAt.isPresent()) {
      return startingAt(take, startsAt.getAsDouble());
    }
    Optional<Mark> mark = mark(take.marks());
    if (mark.isPresent()) {
      return atMark(take, mark.get());
    }
    Optional<CountIn> countIn = CountIn.in(take, line, metre);
    if (countIn.isPresent()) {
      return afterCountIn(take, countIn.get());
    }
    return take.tempoIsWritten() ? atFirstBar(take) : atFirstNote(line);
  }

  private TakePlacement startingAt(RecordedTake take, double beats) {
    TempoMap tempo =
        take.tempoIsWritten()
            ? TakePlacement.inBeats(take.tempo(), beats * metre.quartersPerBeat(), metre)
            : TempoMap.steady(beatsPerMinute, beats * 60 / beatsPerMinute);
    return new TakePlacement(
        tempo,
        Rule.STARTS_AT,
        "Bar 1 starts at beat " + number(beats) + " of the file, as you said.");
  }

  private TakePlacement atMark(RecordedTake take, Mark mark) {
    TempoMap tempo =
        take.tempoIsWritten()
            ? TakePlacement.inBeats(take.tempo(), mark.quarters(), metre)
            : TempoMap.steady(beatsPerMinute, mark.seconds());
    return new TakePlacement(
        tempo,
        Rule.MARKER,
        "Bar 1 is where the file has the marker “"
            + mark.text()
            + "”, at "
            + number(mark.seconds())
            + " s; "
            + MEND
            + ".");
  }

  private TakePlacement afterCountIn(RecordedTake take, CountIn countIn) {
    TempoMap tempo;
    if (take.tempoIsWritten()) {
      double perBeat = metre.quartersPerBeat();
      double beat = take.tempo().beatAt(countIn.barOneSeconds()) / perBeat;
      double whole = Math.rint(beat);
      double barOne = Math.abs(beat - whole) <= NEAR_BEATS ? whole : beat;
      tempo = TakePlacement.inBeats(take.tempo(), barOne * perBeat, metre);
    } else {
      tempo = TempoMap.steady(countIn.beatsPerMinute(), countIn.barOneSeconds());
    }
    return new TakePlacement(
        tempo,
        Rule.COUNT_IN,
        "Bar 1 comes after the count-in of "
            + countIn.beats()
            + " beats, at "
            + number(tempo.secondsAt(0))
            + " s"
            + (take.tempoIsWritten()
                ? ""
                : ", and the tempo is the clicks', " + number(countIn.beatsPerMinute()))
            + "; "
            + MEND
            + ".");
  }

  private TakePlacement atFirstBar(RecordedTake take) {
    OptionalDouble pickUp = pickUp(take.metres());
    return new TakePlacement(
        TakePlacement.inBeats(take.tempo(), pickUp.orElse(0), metre),
        Rule.FIRST_BAR,
        (pickUp.isPresent()
                ? "Bar 1 is the first whole bar of the file, after its pick-up"
                : "Bar 1 is taken to be the first bar of the file")
            + "; "
            + MEND
            + ".");
  }

  private TakePlacement atFirstNote(List<PlayedNote> line) {
    double first = line.isEmpty() ? 0 : line.get(0).onsetSeconds();
    return new TakePlacement(
        TempoMap.steady(beatsPerMinute, first),
        Rule.FIRST_NOTE,
        "The file names no tempo, so the chart's "
            + number(beatsPerMinute)
            + " beats a minute hold and the first note is taken as beat 1 of bar 1; "
            + MEND
            + ".");
  }

  /** Notation programs write a pick-up as a first bar of a shorter metre. */
  private static OptionalDouble pickUp(List<MetreChange> metres) {
    if (metres.size() < 2) {
      return OptionalDouble.empty();
    }
    MetreChange first = metres.get(0);
    MetreChange second = metres.get(1);
    double firstBar = first.metre().beats() * first.metre().quartersPerBeat();
    double secondBar = second.metre().beats() * second.metre().quartersPerBeat();
    boolean isPickUp =
        first.quarters() == 0
            && Math.abs(second.quarters() - firstBar) < NEAR_BEATS
            && firstBar < secondBar;
    return isPickUp ? OptionalDouble.of(second.quarters()) : OptionalDouble.empty();
  }

  private static Optional<Mark> mark(List<Mark> marks) {
    for (Pattern name : NAMES) {
      Optional<Mark> found =
          marks.stream()
              .filter(mark -> mark.kind() != MarkKind.TEXT)
              .filter(mark -> name.matcher(mark.text()).matches())
              .findFirst();
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private static Pattern pattern(String name) {
    return Pattern.compile("[\\[(]?\\s*(" + name + ")\\s*[\\])]?", Pattern.CASE_INSENSITIVE);
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value).replaceAll("\\.?0+$", "");
  }
}
