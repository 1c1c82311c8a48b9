package holdfast.listening.alignment;

import be.tarsos.dsp.util.fft.FloatFFT;
import holdfast.backing.Arrangement;
import holdfast.backing.BackingAudio;
import holdfast.backing.Performance;
import holdfast.backing.sound.SoundBank;
import holdfast.chart.ChartLibrary;
import holdfast.listening.PlayedNote;
import holdfast.listening.audio.DrawnSound;
import holdfast.listening.audio.EarSound;
import holdfast.session.DemoTake;
import java.util.List;
import java.util.Random;

/**
 * A take that was "recorded elsewhere", with known truth: a made-up singer, the rendered backing at
 * some level through some room, on a recorder whose clock runs at some speed.
 */
final class Mixture {

  private final float[] samples;
  private final double barOneSeconds;
  private final double stretch;

  private Mixture(float[] samples, double barOneSeconds, double stretch) {
    this.samples = samples;
    this.barOneSeconds = barOneSeconds;
    this.stretch = stretch;
  }

  /** At the ear's rate. */
  float[] samples() {
    return samples;
  }

  /** Where bar 1 is in them. */
  double barOneSeconds() {
    return barOneSeconds;
  }

  /** How much longer a second lasts in them. */
  double stretch() {
    return stretch;
  }

  static final int RATE = 16_000;

  /** The wish for a take. */
  record Wish(
      String chart,
      int choruses,
      double voiceDb,
      double backingDb,
      double noiseDb,
      double reverbSeconds,
      double stretch,
      double startSeconds,
      double seconds,
      double tempoRatio,
      long seed) {

    static Wish usual(String chart, long seed) {
      return new Wish(chart, 2, -20, -26, -60, 0.25, 1, -1.5, 60, 1, seed);
    }

    Wish choruses(int number) {
      return new Wish(
          chart,
          number,
          voiceDb,
          backingDb,
          noiseDb,
          reverbSeconds,
          stretch,
          startSeconds,
          seconds,
          tempoRatio,
          seed);
    }

    Wish backing(double db) {
      return new Wish(
          chart,
          choruses,
          voiceDb,
          db,
          noiseDb,
          reverbSeconds,
          stretch,
          startSeconds,
          seconds,
          tempoRatio,
          seed);
    }

    Wish noise(double db) {
      return new Wish(
          chart,
          choruses,
          voiceDb,
          backingDb,
          db,
          reverbSeconds,
          stretch,
          startSeconds,
          seconds,
          tempoRatio,
          seed);
    }

    Wish voice(double db) {
      return new Wish(
          chart,
          choruses,
          db,
          backingDb,
          noiseDb,
          reverbSeconds,
          stretch,
          startSeconds,
          seconds,
          tempoRatio,
          seed);
    }

    Wish room(double reverb) {
      return new Wish(
          chart,
          choruses,
          voiceDb,
          backingDb,
          noiseDb,
          reverb,
          stretch,
          startSeconds,
          seconds,
          tempoRatio,
          seed);
    }

    Wish clock(double times) {
      return new Wish(
          chart,
          choruses,
          voiceDb,
          backingDb,
          noiseDb,
          reverbSeconds,
          times,
          startSeconds,
          seconds,
          tempoRatio,
          seed);
    }

    /** Starts the recorder so many seconds after the backing; negative: before it. */
    Wish from(double start) {
      return new Wish(
          chart,
          choruses,
          voiceDb,
          backingDb,
          noiseDb,
          reverbSeconds,
          stretch,
          start,
          seconds,
          tempoRatio,
          seed);
    }

    Wish lasting(double length) {
      return new Wish(
          chart,
          choruses,
          voiceDb,
          backingDb,
          noiseDb,
          reverbSeconds,
          stretch,
          startSeconds,
          length,
          tempoRatio,
          seed);
    }

    Wish tempo(double ratio) {
      return new Wish(
          chart,
          choruses,
          voiceDb,
          backingDb,
          noiseDb,
          reverbSeconds,
          stretch,
          startSeconds,
          seconds,
          ratio,
          seed);
    }
  }

  static Performance performance(String chart, int choruses, double tempoRatio) {
    Arrangement arrangement = Arrangement.of(ChartLibrary.open(chart));
    return Performance.of(arrangement.at(arrangement.tempo() * tempoRatio), choruses);
  }

  private record Rendering(String chart, int rounds, double tempo) {}

  /** Rendering takes longest of all, and gives the same each time. */
  private static final java.util.Map<Rendering, float[]> RENDERED =
      new java.util.concurrent.ConcurrentHashMap<>();

  static float[] rendered(Performance performance) {
    Rendering key =
        new Rendering(
            performance.arrangement().chart().title(),
            performance.rounds().orElseThrow(),
            performance.arrangement().tempo());
    return RENDERED.computeIfAbsent(key, k -> render(performance)).clone();
  }

  private static float[] render(Performance performance) {
    try (EarSound sound =
        new DrawnSound(
            BackingAudio.stream(performance, SoundBank.builtIn()),
            BackingAudio.rate(),
            BackingAudio.seconds(performance))) {
      return sound.samples(0, (int) sound.length());
    }
  }

  static KnownBacking known(String chart, int choruses) {
    Performance one = performance(chart, choruses, 1);
    double beat = 60 / one.arrangement().tempo();
    return new KnownBacking(
        ratio -> new RenderedBacking(EarSound.of(rendered(performance(chart, choruses, ratio)))),
        -one.firstBeat() * beat,
        beat,
        one.arrangement().bars().size() * one.arrangement().metre().beats() * beat);
  }

  static Mixture of(Wish wish) {
    Performance performance = performance(wish.chart, wish.choruses, wish.tempoRatio);
    float[] backing = rendered(performance);
    double barOne = -performance.tempoMap().secondsAt(performance.firstBeat());
    float[] voice = new float[backing.length];
    List<PlayedNote> notes =
        DemoTake.over(performance.arrangement()).played(performance.tempoMap());
    sing(voice, notes, barOne, wish.seed);
    level(voice, wish.voiceDb);
    level(backing, wish.backingDb);
    backing = convolve(backing, tail(wish.reverbSeconds, wish.seed + 1));
    float[] mixed = new float[voice.length];
    for (int i = 0; i < mixed.length; i++) {
      mixed[i] = voice[i] + backing[i];
    }
    // The recorder's clock: its second lasts longer or shorter than ours.
    int length = (int) (wish.seconds * RATE);
    float[] recorded = new float[length];
    Random random = new Random(wish.seed + 2);
    double noise = Math.pow(10, wish.noiseDb / 20);
    for (int i = 0; i < length; i++) {
      double at = wish.startSeconds * RATE + i / wish.stretch;
      recorded[i] = (float) (sinc(mixed, at) + noise * random.nextGaussian());
    }
    return new Mixture(
        recorded, (barOne - wish.startSeconds) * wish.stretch, wish.stretch / wish.tempoRatio);
  }

  private static void level(float[] sound, double db) {
    double sum = 0;
    for (float value : sound) {
      sum += value * value;
    }
    double gain = Math.pow(10, db / 20) / Math.sqrt(sum / sound.length + 1e-20);
    for (int i = 0; i < sound.length; i++) {
      sound[i] *= (float) gain;
    }
  }

  /** Harmonics with vibrato, a soft attack and a spread of tuning. */
  private static void sing(float[] to, List<PlayedNote> notes, double barOne, long seed) {
    Random random = new Random(seed);
    for (PlayedNote note : notes) {
      double detune = random.nextGaussian() * 15;
      double hz = 440 * Math.pow(2, (note.pitch() - 69 + detune / 100) / 12);
      int from = (int) ((barOne + note.onsetSeconds()) * RATE);
      int length = (int) (note.durationSeconds() * RATE);
      double phase = 0;
      for (int i = 0; i < length && from + i < to.length; i++) {
        double t = (double) i / RATE;
        double shake = Math.min(1, t / 0.4) * 30 * Math.sin(2 * Math.PI * 5.5 * t);
        phase += 2 * Math.PI * hz * Math.pow(2, shake / 1200) / RATE;
        double shape = Math.min(1, t / 0.03) * Math.min(1, (length - i) / (0.05 * RATE));
        double sum = 0;
        for (int h = 1; h <= 12 && h * hz < 7000; h++) {
          sum += Math.sin(h * phase) / Math.pow(h, 1.3);
        }
        if (from + i >= 0) {
          to[from + i] += (float) (shape * sum);
        }
      }
    }
  }

  private static float[] tail(double seconds, long seed) {
    Random random = new Random(seed);
    float[] response = new float[Math.max(1, (int) (seconds * RATE))];
    double energy = 1e-9;
    for (int i = (int) (0.004 * RATE); i < response.length; i++) {
      response[i] = (float) (random.nextGaussian() * Math.pow(10, -3.0 * i / response.length));
      energy += response[i] * response[i];
    }
    for (int i = 0; i < response.length; i++) {
      response[i] *= (float) (0.7 / Math.sqrt(energy));
    }
    response[0] = 1;
    return response;
  }

  private static float[] convolve(float[] signal, float[] response) {
    if (response.length == 1) {
      return signal;
    }
    int size = Integer.highestOneBit(signal.length + response.length) * 2;
    float[] a = java.util.Arrays.copyOf(signal, size);
    float[] b = java.util.Arrays.copyOf(response, size);
    FloatFFT fft = new FloatFFT(size);
    fft.realForward(a);
    fft.realForward(b);
    a[0] *= b[0];
    a[1] *= b[1];
    for (int k = 2; k < size; k += 2) {
      float re = a[k] * b[k] - a[k + 1] * b[k + 1];
      a[k + 1] = a[k] * b[k + 1] + a[k + 1] * b[k];
      a[k] = re;
    }
    fft.realInverse(a, true);
    return java.util.Arrays.copyOf(a, signal.length);
  }

  /** Windowed sinc, 16 crossings a side: another way than the one that is tested. */
  private static double sinc(float[] x, double at) {
    int low = (int) Math.floor(at);
    if (low < -20 || low > x.length + 20) {
      return 0;
    }
    double sum = 0;
    for (int k = low - 15; k <= low + 16; k++) {
      if (k >= 0 && k < x.length) {
        double d = at - k;
        double s = Math.abs(d) < 1e-9 ? 1 : Math.sin(Math.PI * d) / (Math.PI * d);
        sum += x[k] * s * (0.5 + 0.5 * Math.cos(Math.PI * d / 17));
      }
    }
    return sum;
  }
}
