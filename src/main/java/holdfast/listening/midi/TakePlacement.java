package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.Metre;
import holdfast.time.TempoMap;
import java.util.List;

/**
 * How a take lies over the bars of a chart: the place where what was played, in seconds, becomes
 * what could be written, in beats.
 *
 * @param tempo chart beats against seconds of the take; beat 0 is beat 1 of bar 1
 * @param rule how bar 1 was found
 * @param reason the same in one sentence, for the user
 */
public record TakePlacement(TempoMap tempo, Rule rule, String reason) {

  /** How bar 1 was found. */
  public enum Rule {
    /** The user said where. */
    STARTS_AT,
    /** A marker of the file names bar 1 or the first chorus. */
    MARKER,
    /** The clicks before the music lead to it. */
    COUNT_IN,
    /** It is the first bar of the file's own bars. */
    FIRST_BAR,
    /** The file knows no tempo; the first note is taken as beat 1. */
    FIRST_NOTE
  }

  /** Where bar 1 starts, in seconds of the take. */
  public double barOneSeconds() {
    return tempo.secondsAt(0);
  }

  /** The notes in beats of the chart, with beat 0 at bar 1; a pick-up is negative. */
  public List<Note> notes(List<PlayedNote> played) {
    return played.stream().map(this::note).toList();
  }

  /** One note in beats of the chart. */
  public Note note(PlayedNote played) {
    return played.inBeats(tempo);
  }

  /**
   * Beats of a chart over the quarter notes of a file.
   *
   * @param quarters where the file's quarter notes fall
   * @param barOne the quarter at which bar 1 starts
   * @param metre of the chart, whose lower number says what a beat is
   */
  static TempoMap inBeats(TempoMap quarters, double barOne, Metre metre) {
    double perBeat = metre.quartersPerBeat();
    return new TempoMap(
        quarters.points().stream()
            .map(
                p ->
                    new TempoMap.Point(
                        (p.beat() - barOne) / perBeat, p.seconds(), p.beatsPerMinute() / perBeat))
            .toList());
  }
}
