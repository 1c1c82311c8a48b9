package holdfast.chart;

import java.util.List;

/** Writes rests as long as chords last, so that every chord stands at its place in the bar. */
final class MusicXmlRests {

  /**
   * Parts of a quarter note to count in, the first that counts exactly: 96 holds 64ths and
   * triplets, 480 fifths too, 3360 sevenths too. The last is taken where none is exact.
   */
  private static final int[] DIVISIONS = {96, 480, 3360, 10080};

  /** A plain note value: its MusicXML type and its length in quarter notes. */
  private record NoteValue(String type, boolean dotted, double quarters) {}

  private static final List<NoteValue> LONGEST_FIRST =
      List.of(
          new NoteValue("whole", false, 4),
          new NoteValue("half", true, 3),
          new NoteValue("half", false, 2),
          new NoteValue("quarter", true, 1.5),
          new NoteValue("quarter", false, 1),
          new NoteValue("eighth", true, 0.75),
          new NoteValue("eighth", false, 0.5),
          new NoteValue("16th", true, 0.375),
          new NoteValue("16th", false, 0.25),
          new NoteValue("32nd", false, 0.125),
          new NoteValue("64th", false, 0.0625));

  private final XmlPage page;
  private final int divisions;

  /**
   * Rests on a page.
   *
   * @param quarters all the lengths to come, from which the divisions are chosen
   */
  MusicXmlRests(XmlPage page, List<Double> quarters) {
    this.page = page;
    this.divisions = divisions(quarters);
  }

  /** Parts of a quarter note in which durations are counted. */
  int divisions() {
    return divisions;
  }

  private static int divisions(List<Double> quarters) {
    for (int divisions : DIVISIONS) {
      if (quarters.stream().allMatch(q -> isWhole(q * divisions))) {
        return divisions;
      }
    }
    return DIVISIONS[DIVISIONS.length - 1];
  }

  private static boolean isWhole(double number) {
    return Math.abs(number - Math.rint(number)) < PlayedOut.BEAT_TOLERANCE;
  }

  /** Rests from one place of a bar to another, in quarter notes from its start. */
  void write(double from, double to) {
    long left = Math.round(to * divisions) - Math.round(from * divisions);
    for (NoteValue value : LONGEST_FIRST) {
      long length = Math.round(value.quarters() * divisions);
      while (left >= length) {
        write(value, length);
        left -= length;
      }
    }
    if (left > 0) {
      // A rest that no plain note value fills, as in a triplet.
      page.open("forward").leaf("duration", String.valueOf(left)).close();
    }
  }

  private void write(NoteValue value, long length) {
    page.open("note").leaf("rest", "").leaf("duration", String.valueOf(length));
    page.leaf("voice", "1").leaf("type", value.type());
    if (value.dotted()) {
      page.leaf("dot", "");
    }
    page.close();
  }
}
