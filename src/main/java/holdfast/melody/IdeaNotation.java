package holdfast.melody;

import holdfast.mistake.UserMistake;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How is an idea typed on one line? {@code G4/0.5 A4/0.5 C5 A4 E4/1.5}
 *
 * <p>Words stand apart by spaces. A note is a letter, any sharps ({@code #}) or flats ({@code b}),
 * and an octave, with middle C = C4. A slash gives its length in beats, as a decimal ({@code 0.5})
 * or a fraction ({@code 1/3}); without one it lasts a beat. A rest is {@code -}, with a length in
 * the same way ({@code -/0.5}). One bar line {@code |} may stand among them: what comes before it
 * is the pick-up, and beat 0 is at the bar line. Without a bar line the idea starts on beat 0. A
 * note that is held across the bar line is written in two parts with the tie {@code ~} after the
 * first: {@code C5/0.5~ | C5}.
 *
 * <p>The notation is the project's own. Reading what was printed gives the same notes, to a
 * billionth of a beat.
 */
public final class IdeaNotation {

  /** Times closer than this, in beats, are one time: what is left is rounding of the computer. */
  private static final double SAME_BEATS = 1e-9;

  /** Stands for a rest where a pitch is asked for. */
  private static final int REST = -1;

  private static final Pattern WORD =
      Pattern.compile("(?:(-)|([A-Ga-g])([#♯b♭]*)(-?\\d{1,2}))(?:/([^~]+))?(~)?");

  private static final Map<Character, Integer> SEMITONES_ABOVE_C =
      Map.of('C', 0, 'D', 2, 'E', 4, 'F', 5, 'G', 7, 'A', 9, 'B', 11);

  private static final List<String> NAMES =
      List.of("C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B");

  /** Divisions that are written as fractions: triplets and their halves, then rarer ones. */
  private static final int[] DIVISIONS = {3, 6, 12, 5, 7, 9};

  private IdeaNotation() {}

  /**
   * The notes of an idea, beat 0 at its bar line or, without one, at its start.
   *
   * @throws IdeaNotationException when a word cannot be read, when there is more than one bar line,
   *     or when there is no note at all
   */
  public static List<Note> parse(String text) {
    if (text.isBlank()) {
      throw noNote();
    }
    String[] words = text.strip().split("\\s+", -1);
    List<Note> fromStart = new ArrayList<>();
    double cursor = 0;
    Optional<Double> barLine = Optional.empty();
    boolean tied = false;
    for (int i = 0; i < words.length; i++) {
      int place = i + 1;
      String word = words[i];
      if (word.equals("|")) {
        if (barLine.isPresent()) {
          throw new IdeaNotationException(
              place, "a second bar line", "keep one, in front of the idea's first full bar");
        }
        barLine = Optional.of(cursor);
        continue;
      }
      Matcher m = WORD.matcher(word);
      if (!m.matches()) {
        throw new IdeaNotationException(
            place,
            UserMistake.quoted(word) + " is not a note",
            "write letter, octave and beats such as Eb4/0.5, or a rest such as -/0.5");
      }
      double length = m.group(5) == null ? 1 : length(m.group(5), place);
      boolean rest = m.group(1) != null;
      int pitch = rest ? REST : pitch(m, place);
      if (tied && (rest || pitch != tiedPitch(fromStart))) {
        throw new IdeaNotationException(
            place, "a tie leads to another note", "write the same note on both sides of ~");
      }
      if (tied) {
        Note first = fromStart.remove(fromStart.size() - 1);
        fromStart.add(new Note(first.onsetBeats(), first.durationBeats() + length, pitch));
      } else if (!rest) {
        fromStart.add(new Note(cursor, length, pitch));
      }
      tied = m.group(6) != null;
      cursor += length;
    }
    if (tied) {
      throw new IdeaNotationException(
          words.length, "a tie leads nowhere", "write the rest of the note after ~, or drop ~");
    }
    if (fromStart.isEmpty()) {
      throw noNote();
    }
    double zero = barLine.orElse(0.0);
    return fromStart.stream()
        .map(n -> new Note(n.onsetBeats() - zero, n.durationBeats(), n.pitch()))
        .toList();
  }

  /**
   * The line that {@link #parse} reads as these notes; black keys are written as flats.
   *
   * @param notes one at a time, in increasing order of onset
   * @throws IllegalArgumentException when there is no note or when two notes overlap
   */
  public static String print(List<Note> notes) {
    if (notes.isEmpty()) {
      throw new IllegalArgumentException("an idea needs at least one note");
    }
    List<String> words = new ArrayList<>();
    double cursor = Math.min(0, notes.get(0).onsetBeats());
    boolean pickUp = cursor < -SAME_BEATS;
    for (Note note : notes) {
      if (note.onsetBeats() < cursor - SAME_BEATS) {
        throw new IllegalArgumentException(
            "the notes of an idea follow one another, but one starts at beat "
                + note.onsetBeats()
                + " before the last has ended");
      }
      if (pickUp && note.onsetBeats() > -SAME_BEATS) {
        rest(words, -cursor);
        words.add("|");
        cursor = Math.max(0, cursor);
        pickUp = false;
      }
      rest(words, note.onsetBeats() - cursor);
      String name = NAMES.get(note.pitch() % 12) + (note.pitch() / 12 - 1);
      if (pickUp && note.endBeats() > SAME_BEATS) {
        words.add(word(name, -note.onsetBeats()) + "~");
        words.add("|");
        words.add(word(name, note.endBeats()));
        pickUp = false;
      } else {
        words.add(word(name, note.durationBeats()));
      }
      cursor = note.endBeats();
    }
    if (pickUp) {
      rest(words, -cursor);
      words.add("|");
    }
    return String.join(" ", words);
  }

  private static IdeaNotationException noNote() {
    return new IdeaNotationException(
        1, "there is no note", "write notes such as G4/0.5 A4/0.5 C5 A4 E4/1.5");
  }

  private static int tiedPitch(List<Note> notes) {
    return notes.isEmpty() ? REST : notes.get(notes.size() - 1).pitch();
  }

  private static int pitch(Matcher m, int place) {
    char letter = Character.toUpperCase(m.group(2).charAt(0));
    int alter =
        m.group(3).chars().map(accidental -> accidental == '#' || accidental == '♯' ? 1 : -1).sum();
    int pitch = 12 * (Integer.parseInt(m.group(4)) + 1) + SEMITONES_ABOVE_C.get(letter) + alter;
    if (pitch < 0 || pitch > 127) {
      throw new IdeaNotationException(
          place, UserMistake.quoted(m.group()) + " is off the keyboard", "stay between C-1 and G9");
    }
    return pitch;
  }

  private static double length(String text, int place) {
    double beats = Double.NaN;
    if (text.matches("\\d{1,6}(\\.\\d*)?|\\.\\d+")) {
      beats = Double.parseDouble(text);
    } else if (text.matches("\\d{1,6}/\\d{1,6}")) {
      int slash = text.indexOf('/');
      beats =
          Double.parseDouble(text.substring(0, slash))
              / Double.parseDouble(text.substring(slash + 1));
    }
    if (!(beats > 0) || !Double.isFinite(beats)) {
      throw new IdeaNotationException(
          place,
          UserMistake.quoted(text) + " is not a length",
          "write beats more than 0, such as 0.5, 2 or 1/3");
    }
    return beats;
  }

  private static void rest(List<String> words, double beats) {
    if (beats > SAME_BEATS) {
      words.add(word("-", beats));
    }
  }

  private static String word(String name, double beats) {
    return Math.abs(beats - 1) < SAME_BEATS ? name : name + "/" + lengthText(beats);
  }

  private static String lengthText(double beats) {
    double thousandths = beats * 1000;
    if (Math.abs(thousandths - Math.rint(thousandths)) < SAME_BEATS) {
      return decimal(Math.rint(thousandths) / 1000);
    }
    for (int division : DIVISIONS) {
      double parts = beats * division;
      if (Math.abs(parts - Math.rint(parts)) < SAME_BEATS) {
        return (long) Math.rint(parts) + "/" + division;
      }
    }
    return decimal(beats);
  }

  private static String decimal(double beats) {
    // A billionth of a beat is finer than anyone plays; more digits would only show rounding.
    return new BigDecimal(beats)
        .setScale(9, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }
}
