package holdfast.listening.pitch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Held against the sum that defines the transform (DCT-I), worked out term by term. */
class CosinePairTest {

  private static final int SIZE = 64;

  @Test
  void both_rows_become_what_the_sum_of_cosines_says() {
    float[] a = row(1);
    float[] b = row(2);
    float[] toA = new float[SIZE];
    float[] toB = new float[SIZE / 2];
    new CosinePair(SIZE).transform(a, b, toA, toB);
    for (int n = 0; n < toA.length; n++) {
      assertEquals(sum(a, n), toA[n], 1e-4, "first row, " + n);
    }
    for (int n = 0; n < toB.length; n++) {
      assertEquals(sum(b, n), toB[n], 1e-4, "second row, " + n);
    }
  }

  private static float[] row(long seed) {
    Random random = new Random(seed);
    float[] row = new float[SIZE + 1];
    for (int k = 0; k <= SIZE; k++) {
      row[k] = random.nextFloat();
    }
    return row;
  }

  private static double sum(float[] row, int n) {
    double sum = 0.5 * (row[0] + (n % 2 == 0 ? row[SIZE] : -row[SIZE]));
    for (int k = 1; k < SIZE; k++) {
      sum += row[k] * Math.cos(Math.PI * n * k / SIZE);
    }
    return sum;
  }
}
