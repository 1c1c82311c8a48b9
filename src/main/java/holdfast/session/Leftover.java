package holdfast.session;

import holdfast.listening.PlayedNote;
import java.util.List;

/**
 * What is left of a backing after it was taken out of a recording: where the player pauses, now and
 * then a weak tone of it passes for a note.
 */
final class Leftover {

  /** So sure, a note is the player's. */
  private static final double SURE = 0.9;

  /** Loudness under the player's middle one: 10 dB on the scale of 60 dB that loudness has. */
  private static final double SOFTER = 10.0 / 60;

  /** Soft notes of a player stand among louder ones, not this far from any, in seconds. */
  private static final double ALONE_SECONDS = 1;

  private Leftover() {}

  /** The notes without those that are soft, unsure and far from any other, in the same order. */
  static List<PlayedNote> dropped(List<PlayedNote> notes) {
    double[] loudness =
        notes.stream()
            .filter(note -> note.confidence() > SURE)
            .mapToDouble(PlayedNote::loudness)
            .sorted()
            .toArray();
    if (loudness.length == 0) {
      return notes;
    }
    double soft = loudness[loudness.length / 2] - SOFTER;
    List<PlayedNote> players =
        notes.stream().filter(note -> note.confidence() > SURE || note.loudness() >= soft).toList();
    return notes.stream()
        .filter(note -> players.stream().anyMatch(own -> isNear(note, own)))
        .toList();
  }

  private static boolean isNear(PlayedNote a, PlayedNote b) {
    return a.onsetSeconds() - end(b) < ALONE_SECONDS && b.onsetSeconds() - end(a) < ALONE_SECONDS;
  }

  private static double end(PlayedNote note) {
    return note.onsetSeconds() + note.durationSeconds();
  }
}
