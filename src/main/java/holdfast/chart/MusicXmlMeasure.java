package holdfast.chart;

import holdfast.theory.Harmony;
import java.util.List;
import java.util.Optional;

/**
 * A measure of a MusicXML part, as far as a chart has use for it.
 *
 * @param number as printed, for errors
 * @param implicit whether it is a measure that is not counted, as a pick-up is
 * @param quarters how long its notes and rests last, in quarter notes; 0 where it holds none
 * @param chords its chords in the order of their places
 * @param signs its repeat signs, endings and double line
 * @param section the rehearsal mark above it
 * @param unexpected whether it bears our mark
 * @param startsRow whether a new system or page begins with it
 * @param repeats how many measures the repeat sign that stands for it repeats, 1 or 2; 0 where it
 *     is written out
 */
record MusicXmlMeasure(
    String number,
    boolean implicit,
    double quarters,
    List<Placed> chords,
    RepeatSigns signs,
    Optional<String> section,
    boolean unexpected,
    boolean startsRow,
    int repeats) {

  /**
   * A chord at its place.
   *
   * @param quarters from the measure's start, in quarter notes
   */
  record Placed(double quarters, Harmony harmony) {}

  MusicXmlMeasure {
    chords = List.copyOf(chords);
  }
}
