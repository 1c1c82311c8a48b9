package holdfast.listening.pitch;

/** Sums of rows of numbers, four at a time, so that no addition waits for the one before it. */
final class Sums {

  private Sums() {}

  /** The sum of a row from one place on, up to but not with another. */
  static double of(float[] row, int from, int to) {
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    int i = from;
    for (; i + 3 < to; i += 4) {
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
