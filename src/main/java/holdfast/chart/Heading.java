package holdfast.chart;

import holdfast.theory.Key;
import holdfast.time.Metre;
import java.util.List;
import java.util.Optional;

/**
 * What stands at the head of a chart.
 *
 * @param title one line, not empty
 * @param about what the chart is good for, in a few words; where anyone said so
 * @param key the key as written; empty where the tune has none
 * @param metre beats in a bar and their note value
 * @param tempo beats a minute, a beat being the metre's lower number; 10 to 400
 * @param feel how it is played, in the words of the backing band: {@code plain}, {@code swing}
 * @param pickupBeats how long the first written bar is, in beats, where it is a pick-up; 0 where
 *     the tune starts on the first beat of bar 1
 * @param writtenFor whose pitch it is written in
 * @param remarks lines for people to read, above all else
 */
public record Heading(
    String title,
    Optional<String> about,
    Optional<Key> key,
    Metre metre,
    double tempo,
    String feel,
    double pickupBeats,
    WrittenFor writtenFor,
    List<String> remarks) {

  /** What a chart without a tempo is played at: slow enough to think. */
  public static final double USUAL_TEMPO = 60;

  /** What a chart without a feel is played with. */
  public static final String USUAL_FEEL = "plain";

  /** The slowest tempo, in beats a minute; below it no pulse is felt. */
  public static final double SLOWEST = 10;

  /** The fastest tempo, in beats a minute; eighth notes of a quick 6/8 come near it. */
  public static final double FASTEST = 400;

  /** Checks ranges, and that every word can be written on a line of its own. */
  public Heading {
    remarks = List.copyOf(remarks);
    requireOneLine("title", title);
    about.ifPresent(words -> requireOneLine("about", words));
    requireOneLine("feel", feel);
    if (!(tempo >= SLOWEST && tempo <= FASTEST)) {
      throw new IllegalArgumentException(
          "a tempo is " + SLOWEST + " to " + FASTEST + " beats a minute, not " + tempo);
    }
    if (!(pickupBeats >= 0 && pickupBeats < metre.beats())) {
      throw new IllegalArgumentException(
          "a pick-up is shorter than a bar of " + metre.text() + ", not " + pickupBeats + " beats");
    }
    for (String remark : remarks) {
      if (!Remarks.isOneLine(remark)) {
        throw new IllegalArgumentException("a remark is one line, not “" + remark + "”");
      }
    }
  }

  /** A heading with a title and a key, in common time, and all else as usual. */
  public static Heading of(String title, Optional<Key> key) {
    return new Heading(
        title,
        Optional.empty(),
        key,
        Metre.COMMON,
        USUAL_TEMPO,
        USUAL_FEEL,
        0,
        WrittenFor.CONCERT,
        List.of());
  }

  /** The same heading in another key, written for another instrument. */
  Heading in(Optional<Key> newKey, WrittenFor instrument) {
    return new Heading(title, about, newKey, metre, tempo, feel, pickupBeats, instrument, remarks);
  }

  private static void requireOneLine(String name, String words) {
    if (words.isEmpty() || !Remarks.isOneLine(words)) {
      throw new IllegalArgumentException(
          "a chart's " + name + " is one line without blanks around it, not “" + words + "”");
    }
  }
}
