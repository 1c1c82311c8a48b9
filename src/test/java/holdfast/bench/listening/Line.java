package holdfast.bench.listening;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A melodic line of our own to sing or play: phrases of steps and leaps with rests between. */
final class Line {

  private static final int[] MAJOR = {0, 2, 4, 5, 7, 9, 11};

  private Line() {}

  /**
   * One note to be sung.
   *
   * @param start seconds
   * @param end seconds
   * @param midi pitch
   * @param joined whether it follows the note before without a break
   */
  record Sung(double start, double end, int midi, boolean joined) {}

  /** A line of about {@code seconds}, between two pitches, with notes of the given lengths. */
  static List<Sung> random(
      Random random,
      double seconds,
      int low,
      int high,
      double shortest,
      double longest,
      double legato) {
    List<Sung> line = new ArrayList<>();
    int tonic = random.nextInt(12);
    double time = 0.4;
    int pitch = inKey((low + high) / 2, tonic);
    while (time < seconds - 1) {
      int size = 3 + random.nextInt(5);
      for (int i = 0; i < size && time < seconds - 0.8; i++) {
        double length = shortest * Math.pow(longest / shortest, random.nextDouble());
        boolean last = i == size - 1;
        boolean joined = i > 0 && random.nextDouble() < legato;
        if (last) {
          length = Math.max(length, 0.35);
        }
        line.add(new Sung(time, time + length, pitch, joined));
        time += length + (last ? 0.3 + random.nextDouble() * 0.7 : 0);
        int move = random.nextInt(10);
        int step = move < 2 ? 0 : (move < 8 ? 1 + random.nextInt(2) : 3 + random.nextInt(5));
        int next = inKey(pitch + (random.nextBoolean() ? step : -step), tonic);
        pitch = next < low || next > high ? inKey(pitch + (next < low ? 3 : -3), tonic) : next;
      }
    }
    return line;
  }

  private static int inKey(int pitch, int tonic) {
    for (int up = 0; up < 2; up++) {
      for (int step : MAJOR) {
        if (Math.floorMod(pitch + up - tonic, 12) == step) {
          return pitch + up;
        }
      }
    }
    return pitch;
  }
}
