package holdfast.session;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * How a player's notes lay against the beat: a fact, and no fault, since playing behind or ahead of
 * it is a manner. Only notes that can be meant for a beat are measured.
 *
 * @param middleMillis where the middle note lay, in milliseconds after its beat; negative: before
 * @param lowerMillis a quarter of the notes came earlier than this
 * @param upperMillis a quarter of the notes came later than this
 * @param notes how many were measured
 */
public record BeatTiming(double middleMillis, double lowerMillis, double upperMillis, int notes) {

  /** Further from a beat than this, in beats, a note may be meant for a division of it. */
  private static final double MEANT_FOR_THE_BEAT = 0.17;

  /** A few notes are chance. */
  private static final int FEWEST_NOTES = 8;

  /** What a take says about it; empty where too few of its notes fall on beats. */
  public static Optional<BeatTiming> of(JudgedTake take) {
    List<Double> offs = new ArrayList<>();
    for (JudgedPhrase phrase : take.phrases()) {
      for (int i = 0; i < phrase.notes().size(); i++) {
        offMillis(take.setting(), phrase, i).ifPresent(offs::add);
      }
    }
    if (offs.size() < FEWEST_NOTES) {
      return Optional.empty();
    }
    Collections.sort(offs);
    return Optional.of(
        new BeatTiming(
            offs.get(offs.size() / 2),
            offs.get(offs.size() / 4),
            offs.get(offs.size() * 3 / 4),
            offs.size()));
  }

  /** How many milliseconds after its beat a note came; empty where it is not meant for one. */
  public static Optional<Double> offMillis(Setting setting, JudgedPhrase phrase, int note) {
    Note inBeats = phrase.notes().get(note);
    PlayedNote played = phrase.played().get(note);
    double beat = Math.rint(inBeats.onsetBeats());
    if (Math.abs(inBeats.onsetBeats() - beat) > MEANT_FOR_THE_BEAT) {
      return Optional.empty();
    }
    return Optional.of(1000 * (played.onsetSeconds() - setting.beats().secondsAt(beat)));
  }
}
