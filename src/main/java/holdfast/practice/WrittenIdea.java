package holdfast.practice;

import holdfast.melody.Note;
import holdfast.melody.PlainRhythm;
import holdfast.melody.WrittenRhythm;
import holdfast.time.Metre;
import java.util.List;

/** How would a played idea be written down, beside its own bar line? */
public final class WrittenIdea {

  /** A first note at most this much before a bar line is a pick-up to it, in beats. */
  private static final double LONGEST_PLAYED_PICK_UP = 1.5;

  private WrittenIdea() {}

  /**
   * The idea in the plainest rhythm that it can be meant in, in beats from its own bar line.
   *
   * @param played in beats of the take that it was played in
   */
  public static List<Note> ofPlayed(List<Note> played, Metre metre) {
    List<Note> notes = PlainRhythm.of(played, metre);
    return later(notes, -barPlayed(notes, metre));
  }

  /**
   * An idea that was typed or comes from a file: silent bars in front of it are left out.
   *
   * @param given in beats from a bar line
   */
  public static List<Note> ofGiven(List<Note> given, Metre metre) {
    List<Note> notes = WrittenRhythm.of(given, metre);
    double silentBars = Math.max(0, Math.floor(notes.get(0).onsetBeats() / metre.beats()));
    return later(notes, -silentBars * metre.beats());
  }

  /** The bar line on which played notes start, or to which they lead. */
  private static double barPlayed(List<Note> notes, Metre metre) {
    double first = notes.get(0).onsetBeats();
    double bar = Math.floor(first / metre.beats()) * metre.beats();
    double line = bar + metre.beats();
    double behind = notes.get(notes.size() - 1).endBeats() - line;
    boolean leads = line - first <= LONGEST_PLAYED_PICK_UP && behind > line - first;
    return leads ? line : bar;
  }

  private static List<Note> later(List<Note> notes, double beats) {
    return notes.stream()
        .map(n -> new Note(n.onsetBeats() + beats, n.durationBeats(), n.pitch()))
        .toList();
  }
}
