package holdfast.bench.listening;

import be.tarsos.dsp.pitch.FastYin;
import be.tarsos.dsp.pitch.PitchDetectionResult;

/**
 * A baseline: TarsosDSP's YIN by Fourier transform (de Cheveigné and Kawahara 2002) with its own
 * threshold, on 46 ms, nothing before and nothing after. It gives frames, no notes.
 */
record RawYin() implements Listener {

  private static final int SIZE = 2048;

  @Override
  public String name() {
    return "FFT_YIN";
  }

  @Override
  public Hearing hear(Clip clip, boolean known) {
    Hearing hearing = new Hearing(clip.hz().length);
    FastYin yin = new FastYin(Clip.RATE, SIZE);
    float[] window = new float[SIZE];
    int hop = (int) (Clip.FRAME_SECONDS * Clip.RATE);
    for (int f = 0; f < hearing.hz.length; f++) {
      for (int i = 0; i < SIZE; i++) {
        int at = f * hop - SIZE / 2 + i;
        window[i] = at >= 0 && at < clip.samples().length ? clip.samples()[at] : 0;
      }
      PitchDetectionResult result = yin.getPitch(window);
      float hz = result.getPitch();
      hearing.hz[f] = hz <= 0 ? 0 : result.isPitched() ? hz : -hz;
    }
    return hearing;
  }
}
