package holdfast.listening.pitch;

import be.tarsos.dsp.util.fft.FloatFFT;

/**
 * The cosine transforms of two rows at once, each seen as one side of an even row: one complex
 * transform of half the length does both (Cooley, Lewis and Welch 1970, "The fast Fourier transform
 * algorithm: programming considerations in the calculation of sine, cosine and Laplace
 * transforms"). Two power spectra become two autocorrelations.
 */
final class CosinePair {

  private final int size;
  private final FloatFFT fft;
  private final float[] work;
  private final float[] sine;
  private final float[] cosine;

  /**
   * A transform.
   *
   * @param size steps of a row from its first value to its last, a power of two
   */
  CosinePair(int size) {
    this.size = size;
    this.fft = new FloatFFT(size);
    this.work = new float[2 * size];
    this.sine = new float[size / 2 + 1];
    this.cosine = new float[size / 2 + 1];
    for (int j = 0; j <= size / 2; j++) {
      sine[j] = (float) Math.sin(Math.PI * j / size);
      cosine[j] = (float) Math.cos(Math.PI * j / size);
    }
  }

  /**
   * Writes {@code to[n] = (from[0] ± from[size]) / 2 + Σ from[k] cos(πnk / size)} for both rows.
   *
   * @param a a row of one value more than the size; of about the same height as b, or the lower one
   *     drowns in the rounding of the higher
   * @param toA where the first values of its transform go, an even number of them
   */
  void transform(float[] a, float[] b, float[] toA, float[] toB) {
    int half = size / 2;
    double oddA = 0.5 * (a[0] - a[size]);
    double oddB = 0.5 * (b[0] - b[size]);
    work[0] = 0.5f * (a[0] + a[size]);
    work[1] = 0.5f * (b[0] + b[size]);
    for (int j = 1; j < half; j++) {
      float differenceA = a[j] - a[size - j];
      float differenceB = b[j] - b[size - j];
      float meanA = 0.5f * (a[j] + a[size - j]);
      float meanB = 0.5f * (b[j] + b[size - j]);
      oddA += cosine[j] * differenceA;
      oddB += cosine[j] * differenceB;
      work[2 * j] = meanA - sine[j] * differenceA;
      work[2 * j + 1] = meanB - sine[j] * differenceB;
      work[2 * (size - j)] = meanA + sine[j] * differenceA;
      work[2 * (size - j) + 1] = meanB + sine[j] * differenceB;
    }
    work[size] = a[half];
    work[size + 1] = b[half];
    fft.complexForward(work);
    toA[0] = work[0];
    toA[1] = (float) oddA;
    for (int n = 2; n < toA.length; n += 2) {
      int mirror = 2 * size - n;
      toA[n] = 0.5f * (work[n] + work[mirror]);
      oddA -= 0.5f * (work[n + 1] - work[mirror + 1]);
      toA[n + 1] = (float) oddA;
    }
    toB[0] = work[1];
    toB[1] = (float) oddB;
    for (int n = 2; n < toB.length; n += 2) {
      int mirror = 2 * size - n;
      toB[n] = 0.5f * (work[n + 1] + work[mirror + 1]);
      oddB += 0.5f * (work[n] - work[mirror]);
      toB[n + 1] = (float) oddB;
    }
  }
}
