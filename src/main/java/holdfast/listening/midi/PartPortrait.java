package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * What a part looks like to someone who searches the melody in a score: how much of it is one note
 * at a time, how high it lies, what its name and its instrument say.
 *
 * @param part whose portrait it is
 * @param aloneShare of the time in which it sounds, the share with exactly one note, 0 to 1
 * @param medianPitch its middle pitch
 * @param nameSays 1 for a melody's name, −1 for an accompaniment's, 0 for neither
 * @param programSays likewise for its General MIDI program
 */
record PartPortrait(
    TakePart part, double aloneShare, int medianPitch, int nameSays, int programSays) {

  private static final Pattern MELODY_WORDS =
      words("solo", "melody", "melodie", "mélodie", "voice", "vocal", "vocals", "lead", "line")
          .or(words("player", "student", "tune", "theme", "right hand", "singer", "impro.*"))
          .pattern();

  private static final Pattern ACCOMPANIMENT_WORDS =
      words("bass", "chord", "chords", "comp", "comping", "pad", "pads", "drum", "drums")
          .or(words("percussion", "click", "metronome", "count", "count-in", "left hand"))
          .or(
              words(
                  "backing", "accompaniment", "harmony", "harmonies", "rhythm", "strings", "time"))
          .pattern();

  /** A line of the human voice and most melody instruments lies above this, in the middle. */
  private static final int MELODY_FLOOR = 55; // G3: a tenor's or alto saxophone's low middle

  private static final int OCTAVE = 12;

  /** Above this a part is more likely a doubling or bells. */
  private static final int MELODY_CEILING = 88;

  private static final Pattern CLICK_WORDS =
      words("click", "metronome", "count", "count-in").pattern();

  /** Whether a part of this name only counts. */
  static boolean isClick(String name) {
    return CLICK_WORDS.matcher(name).find();
  }

  static PartPortrait of(TakePart part) {
    int[] pitches = part.notes().stream().mapToInt(PlayedNote::pitch).sorted().toArray();
    return new PartPortrait(
        part,
        aloneShare(part.notes()),
        pitches[pitches.length / 2],
        nameSays(part.name()),
        part.program().isPresent() ? programSays(part.program().getAsInt()) : 0);
  }

  /**
   * How much this looks like a melody. The weights order what is trusted: a name before anything
   * else, then that it is one note at a time, then register and instrument; our own, from trying
   * files of several programs.
   */
  double likeness() {
    double low = (MELODY_FLOOR - medianPitch) / (double) OCTAVE;
    double high = (medianPitch - MELODY_CEILING) / (double) OCTAVE;
    double register = 1 - Math.max(0, Math.min(1, Math.max(low, high)));
    double busy = Math.min(1, part.notes().size() / 24.0);
    return 4 * nameSays
        + 3 * aloneShare
        + register
        + programSays
        + busy
        + medianPitch / 127.0; // of two equals the upper one leads
  }

  /** Of the time in which these notes sound, the share with exactly one. */
  static double aloneShare(List<PlayedNote> notes) {
    List<double[]> edges = new ArrayList<>(2 * notes.size());
    for (PlayedNote note : notes) {
      edges.add(new double[] {note.onsetSeconds(), 1});
      edges.add(new double[] {note.endSeconds(), -1});
    }
    edges.sort((a, b) -> a[0] != b[0] ? Double.compare(a[0], b[0]) : Double.compare(a[1], b[1]));
    double alone = 0;
    double sounding = 0;
    double since = 0;
    int count = 0;
    for (double[] edge : edges) {
      if (count == 1) {
        alone += edge[0] - since;
      }
      if (count > 0) {
        sounding += edge[0] - since;
      }
      since = edge[0];
      count += (int) edge[1];
    }
    return sounding > 0 ? alone / sounding : 0;
  }

  private static int nameSays(String name) {
    boolean melody = MELODY_WORDS.matcher(name).find();
    boolean accompaniment = ACCOMPANIMENT_WORDS.matcher(name).find();
    return (melody ? 1 : 0) - (accompaniment ? 1 : 0);
  }

  /** General MIDI 1 sound set: families of eight programs. */
  private static int programSays(int program) {
    int family = program / 8;
    return switch (family) {
      case 4 -> -1; // basses
      case 7, 8, 9, 10 -> 1; // brass, reeds, pipes, synthesizer leads
      case 6, 11, 14, 15 -> -1; // ensembles, pads, percussive, sound effects
      default -> 0;
    };
  }

  private static Words words(String... words) {
    return new Words(String.join("|", words));
  }

  private record Words(String alternatives) {
    Words or(Words other) {
      return new Words(alternatives + "|" + other.alternatives);
    }

    Pattern pattern() {
      return Pattern.compile(
          "(?<![\\p{L}])(" + alternatives + ")(?![\\p{L}])",
          Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    }
  }
}
