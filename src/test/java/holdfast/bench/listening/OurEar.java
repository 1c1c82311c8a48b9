package holdfast.bench.listening;

import holdfast.listening.audio.Resampler;
import holdfast.listening.pitch.BleedCanceller;
import holdfast.listening.pitch.Ear;
import holdfast.listening.pitch.FrameListener;
import holdfast.listening.pitch.Frames;
import holdfast.listening.pitch.Levels;
import holdfast.listening.pitch.NoteListener;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleSupplier;

/**
 * The project's ear, on a file or live. Live it gets 5 ms at a time and knows nothing of the clip
 * before; only the known backing is taken out of the whole clip first.
 */
record OurEar(boolean live) implements Listener {

  /** Samples at the ear's rate that come in at once: 5 ms. */
  private static final int BLOCK = 80;

  @Override
  public String name() {
    return live ? "live" : "file";
  }

  @Override
  public Hearing hear(Clip clip, boolean known) {
    Hearing hearing = new Hearing(clip.hz().length);
    float[] samples = atEarRate(clip.samples());
    if (known && clip.backing().isPresent()) {
      samples = BleedCanceller.clean(samples, atEarRate(clip.backing().get()));
    }
    double[] heardSeconds = {0};
    FrameListener frames =
        (frame, cents, sung, sure, level, flux) -> {
          if (frame % 2 == 0 && frame / 2 < hearing.hz.length) {
            hearing.hz[(int) (frame / 2)] = sung ? Frames.hertz(cents) : -Frames.hertz(cents);
          }
        };
    NoteListener settled = new Notes(hearing.notes, new ArrayList<>(), () -> heardSeconds[0]);
    NoteListener early = new Notes(hearing.early, hearing.told, () -> heardSeconds[0]);
    Ear ear =
        live
            ? Ear.early(
                Resampler.EAR_RATE,
                Ear.LOWEST_HZ,
                Ear.HIGHEST_HZ,
                Levels.UNKNOWN,
                frames,
                early,
                settled)
            : new Ear(
                Resampler.EAR_RATE,
                false,
                Ear.LOWEST_HZ,
                Ear.HIGHEST_HZ,
                Levels.of(samples, samples.length),
                frames,
                settled);
    for (int i = 0; i < samples.length; i += BLOCK) {
      int count = Math.min(BLOCK, samples.length - i);
      heardSeconds[0] = (double) (i + count) / Resampler.EAR_RATE;
      ear.push(samples, i, count);
    }
    ear.end();
    return hearing;
  }

  static float[] atEarRate(float[] samples) {
    Resampler resampler = new Resampler(Clip.RATE);
    float[] out = new float[resampler.mostOutput(samples.length)];
    return Arrays.copyOf(out, resampler.push(samples, 0, samples.length, out));
  }

  /** Collects notes, and when they were told. */
  private record Notes(List<TrueNote> notes, List<double[]> told, DoubleSupplier clock)
      implements NoteListener {

    @Override
    public void began(double onsetSeconds, double cents, double levelDb) {
      told.add(new double[] {clock.getAsDouble(), onsetSeconds, Frames.hertz(cents)});
    }

    @Override
    public void ended(
        double onsetSeconds, double endSeconds, double cents, double levelDb, double confidence) {
      notes.add(new TrueNote(onsetSeconds, endSeconds, Frames.hertz(cents)));
    }

    @Override
    public void takenBack() {
      // Only whole notes count.
    }
  }
}
