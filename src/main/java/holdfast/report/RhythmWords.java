package holdfast.report;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;

/** A rhythm in words that can be said aloud: {@code short short long}. */
public final class RhythmWords {

  /** Below this ratio of the longest to the shortest, a listener hears even notes. */
  private static final double EVEN_RATIO = 1.35;

  private RhythmWords() {}

  /**
   * One word for each note; the length of a note is the time to the next, the last one's its own.
   */
  public static String of(List<Note> idea) {
    double[] lengths = new double[idea.size()];
    double shortest = Double.POSITIVE_INFINITY;
    double longest = 0;
    for (int i = 0; i < lengths.length; i++) {
      Note note = idea.get(i);
      lengths[i] =
          i + 1 < lengths.length
              ? idea.get(i + 1).onsetBeats() - note.onsetBeats()
              : note.durationBeats();
      shortest = Math.min(shortest, lengths[i]);
      longest = Math.max(longest, lengths[i]);
    }
    if (longest < shortest * EVEN_RATIO) {
      return "even notes";
    }
    // The middle, as the ear takes it: by ratio, not by difference.
    double middle = Math.sqrt(shortest * longest);
    List<String> words = new ArrayList<>();
    for (double length : lengths) {
      words.add(length < middle ? "short" : "long");
    }
    return String.join(" ", words);
  }
}
