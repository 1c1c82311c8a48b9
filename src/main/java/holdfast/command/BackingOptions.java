package holdfast.command;

import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.backing.Part;
import holdfast.backing.Performance;
import holdfast.backing.PitchRange;
import holdfast.chart.Chart;
import holdfast.chart.Transposition;
import holdfast.mistake.UserMistake;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import holdfast.theory.SpelledPitch;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import picocli.CommandLine.Option;

/** What is played, and how: the options of every command that plays a backing. */
final class BackingOptions {

  private static final int MOST_CHORUSES = 999;
  private static final int LONGEST_COUNT_IN = 4;

  @Option(
      names = "--tempo",
      paramLabel = "BPM",
      description = "Beats a minute, 30 to 240 (the chart's own without it).")
  private Optional<Double> tempo = Optional.empty();

  @Option(
      names = "--key",
      paramLabel = "KEY",
      description = "Move the chart to this key: Eb, F#m (the chart's own without it).")
  private Optional<String> key = Optional.empty();

  @Option(
      names = "--feel",
      paramLabel = "FEEL",
      description = "plain, ballad, swing, even or drone (the chart's own without it).")
  private Optional<String> feel = Optional.empty();

  @Option(names = "--choruses", paramLabel = "N", description = "How many times round, or endless.")
  private Optional<String> choruses = Optional.empty();

  @Option(
      names = "--count-in",
      paramLabel = "BARS",
      description = "Bars to count in, 0 to 4 (1, or 2 above 120 beats a minute).")
  private Optional<Integer> countIn = Optional.empty();

  @Option(
      names = "--bars",
      paramLabel = "A..B",
      description = "Only bars A to B of the form, round and round.")
  private Optional<String> bars = Optional.empty();

  @Option(
      names = "--mute",
      paramLabel = "PART",
      split = ",",
      description = "Silence parts: chords, bass, time, line (a melody over them).")
  private List<String> mute = List.of();

  @Option(
      names = "--range",
      paramLabel = "LOW..HIGH",
      description = "Keep the top of the chords out of this range: D4..C5 for a child who sings.")
  private Optional<String> range = Optional.empty();

  /**
   * The performance that is asked for.
   *
   * @param usualChoruses where the user does not say; empty for endless
   */
  Performance performance(Chart written, OptionalInt usualChoruses) {
    return performance(written, usualChoruses, Optional.empty());
  }

  /**
   * The same over which somebody sings.
   *
   * @param singer the range of whoever sings, where {@code --range} does not say
   */
  Performance performance(Chart written, OptionalInt usualChoruses, Optional<PitchRange> singer) {
    Chart chart = key.map(wanted -> moved(written, wanted)).orElse(written);
    Arrangement arrangement =
        Arrangement.of(
            chart,
            feel.map(Feel::parse).orElse(Feel.read(chart.feel()).orElse(Feel.PLAIN)),
            tempo.map(BackingOptions::checkedTempo).orElse(chart.tempo()),
            bars.map(BarRange::parse),
            range.map(BackingOptions::pitchRange).or(() -> singer));
    return new Performance(
        arrangement,
        choruses.map(BackingOptions::rounds).orElse(usualChoruses),
        countIn.map(BackingOptions::checkedCountIn).orElse(arrangement.usualCountIn()),
        muted());
  }

  /**
   * A performance that is settled already, with what only this machine and this player can know.
   *
   * @param settled what was asked for
   * @param singer the range of whoever sings, where {@code --range} does not say
   */
  Performance within(Performance settled, Optional<PitchRange> singer) {
    Arrangement asked = settled.arrangement();
    return new Performance(
        Arrangement.of(
            asked.chart(),
            asked.feel(),
            asked.tempo(),
            Optional.empty(),
            range.map(BackingOptions::pitchRange).or(() -> singer)),
        settled.rounds(),
        countIn.map(BackingOptions::checkedCountIn).orElse(settled.countInBars()),
        muted());
  }

  /** Options that were given and say what an assignment says already. */
  List<String> settledByAnAssignment() {
    List<String> given = new ArrayList<>();
    tempo.ifPresent(said -> given.add("--tempo"));
    key.ifPresent(said -> given.add("--key"));
    feel.ifPresent(said -> given.add("--feel"));
    choruses.ifPresent(said -> given.add("--choruses"));
    bars.ifPresent(said -> given.add("--bars"));
    return given;
  }

  /** The key that the chart is moved to, as it was typed. */
  Optional<String> key() {
    return key;
  }

  /** Whether a tempo was asked for. */
  boolean hasTempo() {
    return tempo.isPresent();
  }

  /** The bars that were asked for. */
  Optional<BarRange> bars() {
    return bars.map(BarRange::parse);
  }

  /** How often round was asked for; empty where nobody said, or where it is endless. */
  OptionalInt rounds() {
    return choruses.map(BackingOptions::rounds).orElse(OptionalInt.empty());
  }

  /** The range that was asked for. */
  Optional<PitchRange> range() {
    return range.map(BackingOptions::pitchRange);
  }

  /** The tempo of {@code --tempo}, where a backing can be played at it. */
  static double checkedTempo(double beatsPerMinute) {
    if (beatsPerMinute >= Arrangement.SLOWEST && beatsPerMinute <= Arrangement.FASTEST) {
      return beatsPerMinute;
    }
    throw new UserMistake("--tempo takes 30 to 240 beats a minute, not " + beatsPerMinute);
  }

  private static int checkedCountIn(int bars) {
    if (bars >= 0 && bars <= LONGEST_COUNT_IN) {
      return bars;
    }
    throw new UserMistake("--count-in takes 0 to 4 bars, not " + bars);
  }

  private static OptionalInt rounds(String text) {
    if (text.equalsIgnoreCase("endless")) {
      return OptionalInt.empty();
    }
    if (text.matches("[0-9]{1,3}") && Integer.parseInt(text) >= 1) {
      return OptionalInt.of(Integer.parseInt(text));
    }
    throw new UserMistake(
        "--choruses takes a number from 1 to "
            + MOST_CHORUSES
            + ", or endless, not \""
            + text
            + "\"");
  }

  /** The chart in the key of {@code --key}. */
  static Chart moved(Chart chart, String wanted) {
    NoteName tonic;
    try {
      Optional<NoteName> note = NoteName.read(wanted);
      tonic = note.isPresent() ? note.get() : Key.parse(wanted).tonic();
    } catch (IllegalArgumentException e) {
      throw new UserMistake("--key: " + e.getMessage(), e);
    }
    try {
      return Transposition.to(chart, tonic);
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage(), e);
    }
  }

  private static PitchRange pitchRange(String text) {
    String[] ends = text.split("\\.\\.", -1);
    try {
      if (ends.length == 2) {
        return new PitchRange(
            SpelledPitch.parse(ends[0].strip()).midi(), SpelledPitch.parse(ends[1].strip()).midi());
      }
    } catch (IllegalArgumentException e) {
      throw new UserMistake("--range: " + e.getMessage(), e);
    }
    throw new UserMistake("--range takes two pitches as C4..A5, not \"" + text + "\"");
  }

  private Set<Part> muted() {
    Set<Part> parts = EnumSet.noneOf(Part.class);
    for (String name : mute) {
      parts.add(
          switch (name.strip().toLowerCase(java.util.Locale.ROOT)) {
            case "chords" -> Part.CHORDS;
            case "bass" -> Part.BASS;
            case "time" -> Part.TIME;
            case "line" -> Part.LINE;
            default ->
                throw new UserMistake(
                    "there is no part \"" + name + "\" to mute; choose chords, bass, time or line");
          });
    }
    return parts;
  }
}
