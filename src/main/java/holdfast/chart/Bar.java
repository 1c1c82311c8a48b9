package holdfast.chart;

import java.util.List;
import java.util.Optional;

/**
 * A bar as it is played.
 *
 * @param number where it comes in the form, counted from 1; 0 is the pick-up bar
 * @param writtenNumber where it stands on the page, counted from 1 as musicians count, each bar of
 *     each ending once; 0 is the pick-up bar
 * @param pass the how-manieth time its repeat is played, from 1
 * @param section the name of the section it belongs to, where sections have names
 * @param unexpected whether it is marked as a turn that the ear does not expect
 * @param chords its chords in time, filling the bar
 */
public record Bar(
    int number,
    int writtenNumber,
    int pass,
    Optional<String> section,
    boolean unexpected,
    List<ChordSpan> chords) {

  /** Copies the chords. */
  public Bar {
    chords = List.copyOf(chords);
    if (chords.isEmpty()) {
      throw new IllegalArgumentException("bar " + number + " holds no chord");
    }
  }

  /** Its first beat. */
  public double startBeat() {
    return chords.get(0).startBeat();
  }

  /** Where the next bar starts. */
  public double endBeat() {
    return chords.get(chords.size() - 1).endBeat();
  }
}
