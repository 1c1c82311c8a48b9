package holdfast.bench.listening;

import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.audio.Resampler;
import holdfast.listening.pitch.RunningCanceller;
import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A backing that bleeds into a take is taken out while both run. */
class RunningCancellerTest {

  private static final long SEED = 77_000;

  @Test
  void a_running_backing_is_taken_out_by_more_than_it_hides() throws IOException {
    double with = 0;
    double without = 0;
    double offline = 0;
    int count = 0;
    for (Clip clip : Clips.singers(SEED)) {
      Clip bled = Room.withBleed(clip, SEED + count, Optional.empty());
      with += f1(clip, cleaned(bled));
      without += f1(clip, bled);
      offline +=
          NoteScore.withoutOffsets(clip.notes(), ListeningBench.hear(bled, true, true).notes).f1();
      System.out.printf("%s %.3f %.3f%n", clip.name(), f1(clip, bled), f1(clip, cleaned(bled)));
      count++;
    }
    System.out.printf(
        "without %.3f with %.3f offline %.3f%n", without / count, with / count, offline / count);
    assertTrue(with > without);
  }

  private static double f1(Clip truth, Clip heard) {
    return NoteScore.withoutOffsets(truth.notes(), ListeningBench.hear(heard, true).notes).f1();
  }

  private static Clip cleaned(Clip bled) {
    float[] take = bled.samples();
    float[] known = bled.backing().orElseThrow();
    float[] takeAtEar = atEar(take);
    float[] knownAtEar = atEar(known);
    RunningCanceller canceller = new RunningCanceller();
    float[] block = new float[80];
    float[] backing = new float[80];
    float[] out = new float[takeAtEar.length];
    int n = Math.min(takeAtEar.length, knownAtEar.length);
    for (int i = 0; i + 80 <= n; i += 80) {
      System.arraycopy(takeAtEar, i, block, 0, 80);
      System.arraycopy(knownAtEar, i, backing, 0, 80);
      canceller.clean(block, backing, 80);
      System.arraycopy(block, 0, out, i, 80);
    }
    // Back to the rate of the clips, so that the same chain hears it.
    float[] again = new float[take.length];
    for (int i = 0; i < again.length; i++) {
      double at = (double) i * Resampler.EAR_RATE / Clip.RATE;
      int j = (int) at;
      double part = at - j;
      again[i] = j + 1 < out.length ? (float) (out[j] * (1 - part) + out[j + 1] * part) : 0;
    }
    return bled.sounding(again, Optional.empty());
  }

  private static float[] atEar(float[] samples) {
    Resampler resampler = new Resampler(Clip.RATE);
    float[] ear = new float[resampler.mostOutput(samples.length)];
    return Arrays.copyOf(ear, resampler.push(samples, 0, samples.length, ear));
  }
}
