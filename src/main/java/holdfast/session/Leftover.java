package holdfast.session;

import holdfast.listening.PlayedNote;
import holdfast.listening.pitch.Levels;
import java.util.List;
import java.util.function.Predicate;

/**
 * What is left of a backing after it was taken out of a recording: where the player pauses, now and
 * then a weak tone of it passes for a note.
 */
final class Leftover {

  /** So sure, a note is the player's. */
  private static final double SURE = 0.9;

  /** So far under the player's middle loudness, a note is soft: 10 dB. */
  private static final double SOFTER = 10 / Levels.SILENT_DB;

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
    Predicate<PlayedNote> isPlayers = note -> note.confidence() > SURE || note.loudness() >= soft;
    List<PlayedNote> players = notes.stream().filter(isPlayers).toList();
    return notes.stream()
        .filter(isPlayers.or(note -> players.stream().anyMatch(own -> isNear(note, own))))
        .toList();
  }

  private static boolean isNear(PlayedNote a, PlayedNote b) {
    return a.onsetSeconds() - b.endSeconds() < ALONE_SECONDS
        && b.onsetSeconds() - a.endSeconds() < ALONE_SECONDS;
  }
}
