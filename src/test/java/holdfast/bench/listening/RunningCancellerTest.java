package holdfast.bench.listening;

import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.audio.Resampler;
import holdfast.listening.pitch.RunningCanceller;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A backing that bleeds into a take is taken out while both run. */
class RunningCancellerTest {

  private static final long SEED = 77_000;

  /**
   * The house's own goal for notes beside a known backing is an F1 of .75; without help the same
   * ear reaches about .6.
   */
  @Test
  void notes_beside_a_running_backing_are_heard_once_it_is_taken_out() throws IOException {
    double with = 0;
    double without = 0;
    List<Clip> singers = Clips.singers(SEED).subList(3, 7);
    for (Clip clip : singers) {
      Clip bled = Room.withBleed(clip, SEED, Optional.empty());
      with += f1(clip, cleaned(bled)) / singers.size();
      without += f1(clip, bled) / singers.size();
    }
    assertTrue(with >= 0.75, "F1 " + with);
    assertTrue(with > without + 0.05, "F1 " + with + " with, " + without + " without");
  }

  @Test
  void a_voice_alone_is_left_as_it_is() {
    Clip clip = Clips.singers(SEED).get(3);
    Clip silent = clip.sounding(clip.samples(), Optional.of(new float[clip.samples().length]));
    assertTrue(f1(clip, cleaned(silent)) >= f1(clip, clip) - 0.02);
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
