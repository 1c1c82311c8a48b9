package holdfast.practice.invent;

import holdfast.backing.Arrangement;
import holdfast.backing.Feel;
import holdfast.backing.Performance;
import holdfast.backing.PitchRange;
import holdfast.chart.Chart;
import holdfast.chart.ChartText;
import holdfast.mistake.UserMistake;
import holdfast.theory.Harmony;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A chord or two that go round while ideas are invented.
 *
 * @param chords one or two chord symbols
 * @param minutes how long, {@value #SHORTEST_MINUTES} to {@value #LONGEST_MINUTES}
 * @param tempo beats a minute
 */
public record Vamp(List<String> chords, double minutes, double tempo) {

  /** Beats a minute where nobody says. */
  public static final double USUAL_TEMPO = 66;

  /** Minutes; for a try. */
  public static final double SHORTEST_MINUTES = 0.1;

  /** Minutes; after that the ear is tired. */
  public static final double LONGEST_MINUTES = 20;

  private static final int BARS_OF_A_CHORD = 2;
  private static final int MOST_CHORDS = 2;

  /** Checks what can be checked. */
  public Vamp {
    chords = List.copyOf(chords);
    if (chords.isEmpty() || chords.size() > MOST_CHORDS) {
      throw new UserMistake("name one chord or two, such as Dm7 or Dm7 G7");
    }
    if (!(minutes >= SHORTEST_MINUTES && minutes <= LONGEST_MINUTES)) {
      throw new UserMistake("choose 0.1 to 20 minutes, not " + minutes);
    }
  }

  /**
   * What sounds.
   *
   * @param singersRange the chords keep out of its way
   * @throws UserMistake where a chord cannot be read
   */
  public Performance performance(Optional<PitchRange> singersRange) {
    String bars = chords.stream().map(Vamp::bars).collect(Collectors.joining());
    Chart chart =
        ChartText.parse(
            "title: Inventing over " + String.join(" ", chords) + "\n\n" + bars + "|\n", "");
    Arrangement arrangement =
        Arrangement.of(chart, Feel.PLAIN, tempo, Optional.empty(), singersRange);
    double round = (double) arrangement.bars().size() * arrangement.metre().beats();
    return Performance.of(arrangement, (int) Math.max(1, Math.ceil(minutes * tempo / round)));
  }

  private static String bars(String chord) {
    try {
      if (!Harmony.parse(chord).hasChord()) {
        throw new UserMistake("\"" + chord + "\" is silence; name a chord such as Dm7");
      }
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage(), e);
    }
    return ("| " + chord + " ").repeat(BARS_OF_A_CHORD);
  }
}
