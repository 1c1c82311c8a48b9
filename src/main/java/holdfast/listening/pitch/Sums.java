package holdfast.listening.pitch;

/** Sums of rows of numbers, four at a time, so that no addition waits for the one before it. */
final class Sums {

  private Sums() {}

  /** The sum of a row from one place on, up to but not with another, to about a millionth. */
  static double of(float[] row, int from, int to) {
    float a = 0;
    float b = 0;
    float c = 0;
    float d = 0;
    int i = from;
    for (; i < to - 3; i += 4) {
      a += row[i];
      b += row[i + 1];
      c += row[i + 2];
      d += row[i + 3];
    }
    for (; i < to; i++) {
      a += row[i];
    }
    return a + b + (c + d);
  }
}
