package holdfast.bench.listening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * A singer made of harmonics, formants and breath.
 *
 * <p>Formants of the five vowels are Peterson and Barney's means (1952, "Control methods used in a
 * study of the vowels") for men, women and children; a child or a woman is chosen by the scale of
 * the vocal tract. Vibrato 5 to 7 Hz up to ±100 cents, scoops, glides, jitter, breath noise and
 * consonants are drawn anew for each clip, so that no tracker can learn one voice.
 */
final class Singer {

  /** First three formants in hertz of a man's vowels, Peterson and Barney (1952). */
  private static final double[][] VOWELS = {
    {730, 1090, 2440}, {530, 1840, 2480}, {270, 2290, 3010}, {570, 840, 2410}, {300, 870, 2240}
  };

  /** Bandwidths in hertz of the formants; common practice in formant synthesis, no source. */
  private static final double[] BANDWIDTHS = {70, 90, 130, 250, 300};

  private static final int RATE = Clip.RATE;

  private final Random random;
  private final double tract;
  private final double tilt;
  private final double breath;
  private final double vibratoHz;
  private final double vibratoCents;
  private final double tuningCents;
  private final double consonants;
  private final boolean hums;

  /**
   * A singer.
   *
   * @param seed all that is drawn by chance follows from it
   * @param tract scale of the formants: 1 man, about 1.17 woman, about 1.35 child
   * @param vibratoCents depth of the vibrato, 0 for a straight voice
   * @param breathDb level of the breath under the voice, in decibels
   * @param tuningCents how far from A = 440 Hz the whole is sung
   * @param consonants how often a separate note begins with a consonant, 0 to 1
   * @param hums hums instead of singing vowels
   */
  Singer(
      long seed,
      double tract,
      double vibratoCents,
      double breathDb,
      double tuningCents,
      double consonants,
      boolean hums) {
    this.random = new Random(seed);
    this.tract = tract;
    this.tilt = 9 + random.nextDouble() * 6;
    this.breath = Math.pow(10, breathDb / 20);
    this.vibratoHz = 5 + random.nextDouble() * 2;
    this.vibratoCents = vibratoCents;
    this.tuningCents = tuningCents;
    this.consonants = consonants;
    this.hums = hums;
  }

  Clip sing(String name, List<Line.Sung> line) {
    double seconds = line.get(line.size() - 1).end() + 0.8;
    int n = (int) (seconds * RATE);
    double[] hz = new double[n];
    double[] amplitude = new double[n];
    double[][] formants = new double[3][n];
    float[] noise = new float[n];
    List<TrueNote> truth = new ArrayList<>();
    double vibratoPhase = random.nextDouble();
    double wander = 0;
    for (int k = 0; k < line.size(); k++) {
      Line.Sung note = line.get(k);
      boolean followed = k + 1 < line.size() && line.get(k + 1).joined();
      boolean attached = k + 1 < line.size() && line.get(k + 1).start() - note.end() < 0.01;
      double detune = tuningCents + random.nextGaussian() * 12;
      double level = Math.pow(10, (random.nextDouble() * 8 - 5) / 20);
      double[] vowel = hums ? new double[] {250, 1100, 2200} : VOWELS[random.nextInt(5)];
      double start = note.start();
      boolean samePitch = k > 0 && line.get(k - 1).midi() == note.midi();
      double voiceStart = start;
      boolean joined = note.joined() && !samePitch;
      if (!joined && random.nextDouble() < consonants) {
        voiceStart += consonant(noise, start, level);
      }
      double attack = joined ? 0.02 : 0.015 + random.nextDouble() * 0.05;
      // A separate note ends a little early, as lips and tongue need time.
      boolean sameNext = attached && line.get(k + 1).midi() == note.midi();
      double gap = followed && !sameNext ? 0 : (attached ? 0.03 + random.nextDouble() * 0.04 : 0.0);
      double end = note.end() - gap;
      double release = followed && !sameNext ? 0.0 : 0.03 + random.nextDouble() * 0.06;
      boolean scoops = !joined && random.nextDouble() < 0.25 && end - voiceStart > 0.3;
      double scoopCents = scoops ? -(80 + random.nextDouble() * 200) : 0;
      double scoopSeconds = 0.05 + random.nextDouble() * 0.07;
      double glide = joined ? 0.03 + random.nextDouble() * 0.05 : 0;
      double fromCents = joined ? 100.0 * (line.get(k - 1).midi() - note.midi()) : 0;
      double target = 440 * Math.pow(2, (note.midi() - 69 + detune / 100) / 12);
      double wait = 0.12 + random.nextDouble() * 0.15;
      int from = (int) ((voiceStart - glide / 2) * RATE);
      int to = Math.min(n - 1, (int) ((end + release) * RATE));
      for (int i = Math.max(0, from); i < to; i++) {
        double t = (double) i / RATE;
        double since = t - voiceStart;
        double cents = 0;
        if (scoops) {
          cents += scoopCents * Math.exp(-3 * since / scoopSeconds);
        }
        if (joined && since < glide / 2) {
          double x = (since + glide / 2) / glide;
          cents += fromCents * (1 - (3 * x * x - 2 * x * x * x));
        }
        double deep = Math.max(0, Math.min(1, (since - wait) / 0.2));
        vibratoPhase += vibratoHz / RATE;
        double shake = Math.sin(2 * Math.PI * vibratoPhase);
        cents += vibratoCents * deep * shake;
        wander += random.nextGaussian() * 0.25 - wander * 3.0 / RATE;
        hz[i] = target * Math.pow(2, (cents + wander * 0.25) / 1200);
        double envelope = level * (1 + 0.12 * deep * shake);
        if (!joined) {
          envelope *= Math.min(1, Math.max(0, since / attack));
        }
        if (t > end) {
          envelope *= Math.max(0, 1 - (t - end) / Math.max(release, 1e-3));
        }
        amplitude[i] = joined && since < 0 ? Math.max(amplitude[i], envelope) : envelope;
        for (int f = 0; f < 3; f++) {
          formants[f][i] = vowel[f] * tract;
        }
      }
      truth.add(new TrueNote(voiceStart, end + release / 2, target));
    }
    for (int i = 1; i < n; i++) {
      // The last breath of a note stays on its pitch.
      hz[i] = hz[i] == 0 ? hz[i - 1] : hz[i];
      for (double[] formant : formants) {
        formant[i] = formant[i] == 0 ? formant[i - 1] : formant[i];
      }
    }
    soften(amplitude, 0.006);
    for (double[] formant : formants) {
      soften(formant, 0.015);
    }
    float[] samples = voice(hz, amplitude, formants);
    for (int i = 0; i < n; i++) {
      samples[i] += noise[i];
    }
    return new Clip(name, "singers", samples, frames(hz, amplitude), truth, Optional.empty());
  }

  /** No mouth jumps: a first-order lag of the given seconds, running on through the rests. */
  private static void soften(double[] curve, double seconds) {
    double keep = Math.exp(-1 / (seconds * RATE));
    double state = curve[0];
    for (int i = 0; i < curve.length; i++) {
      state = curve[i] + (state - curve[i]) * keep;
      curve[i] = state;
    }
  }

  /** Puts an unvoiced consonant before a note and says how long it takes, in seconds. */
  private double consonant(float[] noise, double start, double level) {
    double[][] kinds = {{0.09, 0.25}, {0.03, 0.35}, {0.07, 0.06}};
    int kind = random.nextInt(3);
    double length = kinds[kind][0] * (0.7 + random.nextDouble() * 0.6);
    double loud = kinds[kind][1] * level * 0.35;
    double before = 0;
    int from = (int) (start * RATE);
    int count = (int) (length * RATE);
    for (int i = 0; i < count && from + i < noise.length; i++) {
      double white = random.nextGaussian();
      // An s is bright, an h is not: a first difference brightens.
      double shaped = kind == 2 ? 0.5 * (white + before) : white - before;
      before = white;
      noise[from + i] += (float) (loud * shaped * Math.sin(Math.PI * i / count));
    }
    return length;
  }

  private float[] voice(double[] hz, double[] amplitude, double[][] formants) {
    int n = hz.length;
    float[] out = new float[n];
    double phase = 0;
    double[] gains = new double[64];
    double breathState = 0;
    double power = tilt / 6.02;
    for (int i = 0; i < n; i++) {
      if (hz[i] <= 0 || amplitude[i] <= 1e-5) {
        continue;
      }
      phase += hz[i] / RATE;
      phase -= Math.floor(phase);
      int harmonics = (int) Math.min(gains.length, 9000 / hz[i]);
      if (i % 64 == 0 || gains[0] == 0) {
        for (int h = 0; h < harmonics; h++) {
          gains[h] =
              Math.pow(h + 1, -power)
                  * resonance((h + 1) * hz[i], formants, i)
                  * (hums && h > 2 ? 0.2 : 1);
        }
      }
      double sum = 0;
      // sin(k x) by the two-term recurrence: each harmonic from the two before it.
      double x = 2 * Math.PI * phase;
      double twoCos = 2 * Math.cos(x);
      double last = 0;
      double now = Math.sin(x);
      for (int h = 0; h < harmonics; h++) {
        sum += gains[h] * now;
        double next = twoCos * now - last;
        last = now;
        now = next;
      }
      double white = random.nextGaussian();
      breathState = 0.6 * breathState + 0.4 * white;
      double puff = 0.5 + 0.5 * Math.cos(x);
      out[i] = (float) (0.25 * amplitude[i] * (sum + breath * 2 * (white - breathState) * puff));
    }
    return out;
  }

  /** Gain of the vocal tract at a frequency: a product of resonances, 1 at 0 Hz. */
  private double resonance(double hz, double[][] formants, int i) {
    double gain = 1;
    double[] upper = {3500 * Math.sqrt(tract), 4500 * Math.sqrt(tract)};
    for (int f = 0; f < 5; f++) {
      double centre = f < 3 ? formants[f][i] : upper[f - 3];
      double width = BANDWIDTHS[f];
      double c2 = centre * centre;
      double real = c2 - hz * hz;
      double imaginary = width * hz;
      gain *= c2 / Math.sqrt(real * real + imaginary * imaginary);
    }
    return Math.min(gain, 30);
  }

  private static double[] frames(double[] hz, double[] amplitude) {
    int count = (int) (hz.length / (RATE * Clip.FRAME_SECONDS));
    double[] track = new double[count];
    for (int f = 0; f < count; f++) {
      int i = (int) Math.round(f * Clip.FRAME_SECONDS * RATE);
      // Below a tenth of full voice a note is dying away: nobody would call it sung.
      track[f] = amplitude[i] > 0.06 ? hz[i] : 0;
    }
    return track;
  }
}
