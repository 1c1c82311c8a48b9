package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import java.util.List;
import java.util.OptionalInt;
import java.util.TreeSet;

/**
 * Tells the hand that plays the line from the hand that accompanies it, where both play in one part
 * of a piano: from some pitch on upwards there is one note at a time, and its notes come at moments
 * of their own. Chords that move with the tune, whose lower notes come with the upper ones, are one
 * hand's.
 */
final class UpperHand {

  /** A part that is one note at a time for as much as this needs no second hand. */
  private static final double A_LINE_ALREADY = 0.8;

  /** What the upper hand plays is one note at a time for at least this share. */
  private static final double A_LINE = 0.9;

  /** Notes that come with one of the other hand's are no more than this share. */
  private static final double TOGETHER_AT_MOST = 0.6;

  /** Less than this share of the notes is no hand but some stray ones. */
  private static final double LEAST_SHARE = 0.2;

  /** A take of one player has fewer notes; beyond this nobody looks for hands. */
  private static final int MOST_NOTES = 20_000;

  private UpperHand() {}

  /** The lowest pitch of the hand that plays the line, where the part shows two hands. */
  static OptionalInt lowestPitch(List<PlayedNote> notes) {
    if (notes.size() > MOST_NOTES || PartPortrait.aloneShare(notes) >= A_LINE_ALREADY) {
      return OptionalInt.empty();
    }
    TreeSet<Integer> pitches = new TreeSet<>(notes.stream().map(PlayedNote::pitch).toList());
    for (int pitch : pitches) {
      List<PlayedNote> upper = notes.stream().filter(note -> note.pitch() >= pitch).toList();
      List<PlayedNote> lower = notes.stream().filter(note -> note.pitch() < pitch).toList();
      double least = LEAST_SHARE * notes.size();
      if (upper.size() < least) {
        return OptionalInt.empty();
      }
      if (lower.size() >= least
          && PartPortrait.aloneShare(upper) >= A_LINE
          && shareTogether(upper, lower) <= TOGETHER_AT_MOST) {
        return OptionalInt.of(pitch);
      }
    }
    return OptionalInt.empty();
  }

  /** The share of the upper notes that are struck with a lower one. */
  private static double shareTogether(List<PlayedNote> upper, List<PlayedNote> lower) {
    TreeSet<Double> strokes = new TreeSet<>(lower.stream().map(PlayedNote::onsetSeconds).toList());
    long together =
        upper.stream()
            .map(PlayedNote::onsetSeconds)
            .filter(
                onset ->
                    !strokes
                        .subSet(
                            onset - MonophonicLine.TOGETHER_SECONDS,
                            true,
                            onset + MonophonicLine.TOGETHER_SECONDS,
                            true)
                        .isEmpty())
            .count();
    return (double) together / upper.size();
  }
}
