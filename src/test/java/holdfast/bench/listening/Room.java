package holdfast.bench.listening;

import be.tarsos.dsp.util.fft.FloatFFT;
import java.io.File;
import java.io.IOException;
import java.util.Optional;
import java.util.Random;

/** What stands between a singer and the microphone: noise, walls, a loudspeaker. */
final class Room {

  private Room() {}

  /** A quiet microphone: its own noise 60 dB under the voice. */
  static Clip quiet(Clip clip, long seed) {
    return noisy(clip, 60, seed);
  }

  /** White noise on even seeds, pink on odd ones, {@code decibels} under the voice. */
  static Clip noisy(Clip clip, double decibels, long seed) {
    Random random = new Random(seed);
    float[] noise = new float[clip.samples().length];
    double[] pink = new double[3];
    for (int i = 0; i < noise.length; i++) {
      double white = random.nextGaussian();
      // Paul Kellet's economy filter for pink noise (public domain, 1999).
      pink[0] = 0.99765 * pink[0] + white * 0.0990460;
      pink[1] = 0.96300 * pink[1] + white * 0.2965164;
      pink[2] = 0.57000 * pink[2] + white * 1.0526913;
      noise[i] = (float) (seed % 2 == 0 ? white : pink[0] + pink[1] + pink[2] + white * 0.1848);
    }
    return clip.sounding(mix(clip, noise, decibels), clip.backing());
  }

  /** Walls: a tail of decaying noise, 60 dB down after {@code seconds}, in a share of the voice. */
  static Clip reverberant(Clip clip, double seconds, double share, long seed) {
    float[] wet = convolve(clip.samples(), tail(seconds, 1.0, share, seed));
    return quiet(clip.sounding(wet, clip.backing()), seed + 1);
  }

  /** A trio's backing from a loudspeaker in a small room. */
  static Clip withBleed(Clip clip, long seed, Optional<File> sounds) throws IOException {
    return withBleed(clip, Instruments.Band.TRIO, 0.25, seed, sounds);
  }

  /** The backing from a loudspeaker, 12 dB under the voice, late and coloured by a room. */
  static Clip withBleed(
      Clip clip, Instruments.Band band, double roomSeconds, long seed, Optional<File> sounds)
      throws IOException {
    double seconds = (double) clip.samples().length / Clip.RATE;
    float[] backing = Instruments.backing(seed, seconds, band, sounds);
    float[] heard = convolve(backing, tail(roomSeconds, 1.0, 0.4, seed + 7));
    int late = (int) (0.037 * Clip.RATE);
    float[] delayed = new float[heard.length];
    System.arraycopy(heard, 0, delayed, late, heard.length - late);
    return quiet(clip.sounding(mix(clip, delayed, 12), Optional.of(backing)), seed + 2);
  }

  private static float[] mix(Clip clip, float[] other, double decibels) {
    double sum = 0;
    for (float value : other) {
      sum += value * value;
    }
    double level = Math.sqrt(sum / other.length);
    double gain = clip.activeLevel() / level * Math.pow(10, -decibels / 20);
    float[] mixed = new float[other.length];
    for (int i = 0; i < mixed.length; i++) {
      mixed[i] = (float) (clip.samples()[i] + gain * other[i]);
    }
    return mixed;
  }

  private static float[] tail(double seconds, double direct, double share, long seed) {
    Random random = new Random(seed);
    float[] response = new float[(int) (seconds * Clip.RATE)];
    double energy = 0;
    int before = (int) (0.004 * Clip.RATE);
    for (int i = before; i < response.length; i++) {
      double decay = Math.pow(10, -3.0 * i / response.length);
      response[i] = (float) (random.nextGaussian() * decay);
      energy += response[i] * response[i];
    }
    double scale = share / Math.sqrt(energy);
    for (int i = 0; i < response.length; i++) {
      response[i] *= (float) scale;
    }
    response[0] = (float) direct;
    return response;
  }

  /** Convolution through one long transform, cut to the length of the signal. */
  private static float[] convolve(float[] signal, float[] response) {
    int size = Integer.highestOneBit(signal.length + response.length) * 2;
    float[] a = new float[size];
    float[] b = new float[size];
    System.arraycopy(signal, 0, a, 0, signal.length);
    System.arraycopy(response, 0, b, 0, response.length);
    FloatFFT fft = new FloatFFT(size);
    fft.realForward(a);
    fft.realForward(b);
    a[0] *= b[0];
    a[1] *= b[1];
    for (int k = 2; k < size; k += 2) {
      float real = a[k] * b[k] - a[k + 1] * b[k + 1];
      a[k + 1] = a[k] * b[k + 1] + a[k + 1] * b[k];
      a[k] = real;
    }
    fft.realInverse(a, true);
    float[] out = new float[signal.length];
    System.arraycopy(a, 0, out, 0, out.length);
    return out;
  }
}
