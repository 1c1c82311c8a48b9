package holdfast.listening.alignment;

import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import java.lang.ref.SoftReference;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;

/**
 * The sound of a backing, with what was once worked out of it for finding it in a take: many takes
 * are laid over the same. It may be asked from several threads; what is kept makes way where memory
 * is short.
 */
public final class RenderedBacking implements EarSound {

  /** Lengths are rounded up to so many seconds, so that takes of nearly the same length share. */
  private static final int LENGTHS_SECONDS = 10;

  private final EarSound sound;
  private final Map<Integer, SoftReference<CoarseSearch>> searches = new HashMap<>();
  private final Map<Integer, SoftReference<float[][]>> onsets = new HashMap<>();
  private final Map<Integer, SoftReference<Optional<float[]>>> spectra = new HashMap<>();

  /** A sound of which nothing is worked out yet; closed with this. */
  public RenderedBacking(EarSound sound) {
    this.sound = sound;
  }

  private static <T> T kept(
      Map<Integer, SoftReference<T>> all, int number, IntFunction<T> workedOut) {
    synchronized (all) {
      SoftReference<T> there = all.get(number);
      T value = there == null ? null : there.get();
      if (value == null) {
        value = workedOut.apply(number);
        all.put(number, new SoftReference<>(value));
      }
      return value;
    }
  }

  private static int lengths(double seconds) {
    return (int) Math.ceil(seconds / LENGTHS_SECONDS);
  }

  /**
   * The search for takes of a length.
   *
   * @param headSeconds what of the backing may come before that of the take
   * @param takeFrames frames of the take's print
   */
  CoarseSearch search(double headSeconds, int takeFrames) {
    return kept(
        searches,
        lengths((double) takeFrames / SoundPrint.RATE),
        number -> {
          double longest = (double) number * LENGTHS_SECONDS;
          double reach = headSeconds + CoarseSearch.SLOWEST * longest;
          long count = Math.min(length(), (long) (reach * Resampler.EAR_RATE));
          return new CoarseSearch(
              SoundPrint.of(this, 0, count), (int) Math.ceil(longest * SoundPrint.RATE));
        });
  }

  /** Rows of onset strength, of so many seconds at least where it lasts as long. */
  float[][] onsets(double seconds) {
    return kept(
        onsets,
        lengths(seconds),
        number ->
            FineByOnsets.rows(
                this, Math.min((long) number * LENGTHS_SECONDS * Resampler.EAR_RATE, length())));
  }

  /** What {@link FineBySound} compares with a take, by the number of the stretch. */
  Optional<float[]> spectrum(int stretch) {
    return kept(spectra, stretch, number -> FineBySound.spectrum(this, FineBySound.start(number)));
  }

  @Override
  public long length() {
    return sound.length();
  }

  @Override
  public void read(long from, float[] to, int offset, int count) {
    sound.read(from, to, offset, count);
  }

  @Override
  public void close() {
    sound.close();
  }
}
