package holdfast.listening.alignment;

import be.tarsos.dsp.util.fft.FloatFFT;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Every start and every speed at once: the take's print, stretched, cross-correlated with the
 * backing's. Twice for each speed, since a clock that runs slow lowers the pitch along, and another
 * tempo does not.
 */
final class CoarseSearch {

  /** Step of the speeds: over 90 s the ends are then no more than 60 ms out. */
  private static final double SPEED_STEP = 0.0025;

  /** No take is slower than this. */
  static final double SLOWEST = 1.06;

  /** Two places nearer than this, in frames, are one. */
  private static final int APART = 8;

  /** So many places are kept. */
  private static final int KEPT = 24;

  private final int frames;
  private final int size;
  private final FloatFFT fft;
  private final float[][] backingSpectra;
  private final double[] backingEnergy;

  /**
   * One place where the take may lie.
   *
   * @param line the times
   * @param pitchMoved whether the pitch is taken to have moved with the speed
   * @param score likeness, 1 at most
   */
  record Place(TimeLine line, boolean pitchMoved, double score) {}

  /**
   * A search.
   *
   * @param takeFrames the most frames that a take's print will have
   */
  CoarseSearch(SoundPrint backing, int takeFrames) {
    this.frames = backing.frames();
    this.size = 2 * Integer.highestOneBit(frames + (int) (SLOWEST * takeFrames) + 2);
    this.fft = new FloatFFT(size);
    this.backingSpectra = new float[SoundPrint.rowCount()][];
    this.backingEnergy = new double[frames + 1];
    for (int r = 0; r < SoundPrint.rowCount(); r++) {
      float[] row = Arrays.copyOf(Arrays.copyOf(backing.row(r), frames), size);
      for (int i = 0; i < frames; i++) {
        backingEnergy[i + 1] += row[i] * row[i];
      }
      fft.realForward(row);
      backingSpectra[r] = row;
    }
    for (int i = 0; i < frames; i++) {
      backingEnergy[i + 1] += backingEnergy[i];
    }
  }

  /**
   * The best places, the best first.
   *
   * @param take the print of the take or of a part of it
   * @param takeFromSeconds the second of the take at which that part begins
   * @param farthestSpeed speeds that are tried, either side of 1
   */
  List<Place> places(SoundPrint take, double takeFromSeconds, double farthestSpeed) {
    List<Place> all = new ArrayList<>();
    int steps = (int) (farthestSpeed / SPEED_STEP);
    for (int step = -steps; step <= steps; step++) {
      double stretch = 1 + step * SPEED_STEP;
      all.addAll(places(take, takeFromSeconds, stretch, true));
      if (Math.abs(step) > 1) {
        all.addAll(places(take, takeFromSeconds, stretch, false));
      }
    }
    all.sort(Comparator.comparingDouble(Place::score).reversed());
    return apart(all, takeFromSeconds + 0.5 * take.frames() / SoundPrint.RATE);
  }

  /** Of places that say the same of the middle of the take, only the best. */
  private static List<Place> apart(List<Place> sorted, double middle) {
    List<Place> kept = new ArrayList<>();
    for (Place place : sorted) {
      double here = place.line().backing(middle);
      boolean isNew =
          kept.stream()
              .noneMatch(
                  k ->
                      Math.abs(k.line().backing(middle) - here) * SoundPrint.RATE < APART
                          && k.pitchMoved() == place.pitchMoved());
      if (isNew) {
        kept.add(place);
        if (kept.size() == KEPT) {
          break;
        }
      }
    }
    return kept;
  }

  private List<Place> places(SoundPrint take, double from, double stretch, boolean pitchMoved) {
    int length = (int) (take.frames() / stretch);
    float[] product = new float[size];
    double energy = 0;
    double turn = pitchMoved ? SoundPrint.CHROMA * Math.log(stretch) / Math.log(2) : 0;
    for (int r = 0; r < SoundPrint.rowCount(); r++) {
      float[] row = stretched(take, r, turn, stretch, length);
      for (int i = 0; i < length; i++) {
        energy += row[i] * row[i];
      }
      fft.realForward(row);
      float[] known = backingSpectra[r];
      product[0] += row[0] * known[0];
      product[1] += row[1] * known[1];
      for (int k = 2; k < size; k += 2) {
        product[k] += known[k] * row[k] + known[k + 1] * row[k + 1];
        product[k + 1] += known[k + 1] * row[k] - known[k] * row[k + 1];
      }
    }
    fft.realInverse(product, true);
    List<Place> places = new ArrayList<>();
    double[] scores = new double[length + frames];
    for (int lag = -length + 1; lag < frames; lag++) {
      int first = Math.max(0, lag);
      int last = Math.min(frames, lag + length);
      // Full energy of the take: what lies outside of the backing speaks against a place.
      double other = Math.max(backingEnergy[last] - backingEnergy[first], 0.1 * energy);
      scores[lag + length] = product[Math.floorMod(lag, size)] / Math.sqrt(energy * other + 1e-9);
    }
    for (int i = 1; i < scores.length - 1; i++) {
      if (scores[i] > 0.02 && scores[i] >= scores[i - 1] && scores[i] > scores[i + 1]) {
        double backingSeconds = (double) (i - length) / SoundPrint.RATE;
        TimeLine line = new TimeLine(from - stretch * backingSeconds, stretch);
        places.add(new Place(line, pitchMoved, scores[i]));
      }
    }
    places.sort(Comparator.comparingDouble(Place::score).reversed());
    return places.subList(0, Math.min(KEPT, places.size()));
  }

  /** A row of the take on the backing's time, its pitch moved back. */
  private float[] stretched(SoundPrint take, int r, double turn, double stretch, int length) {
    float[] out = new float[size];
    if (r < SoundPrint.CHROMA) {
      double from = r - turn;
      int low = (int) Math.floor(from);
      float share = (float) (from - low);
      float[] a = take.row(Math.floorMod(low, SoundPrint.CHROMA));
      float[] b = take.row(Math.floorMod(low + 1, SoundPrint.CHROMA));
      for (int i = 0; i < length; i++) {
        out[i] = (1 - share) * at(a, i * stretch) + share * at(b, i * stretch);
      }
    } else {
      for (int i = 0; i < length; i++) {
        out[i] = at(take.row(r), i * stretch);
      }
    }
    return out;
  }

  private static float at(float[] row, double place) {
    int low = (int) place;
    if (low + 1 >= row.length) {
      return low < row.length ? row[low] : 0;
    }
    float share = (float) (place - low);
    return (1 - share) * row[low] + share * row[low + 1];
  }
}
