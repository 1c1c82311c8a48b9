package holdfast.listening.pitch;

import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;

/**
 * A take with its backing taken out, piece by piece as it is read: each minute learns the way from
 * loudspeaker to microphone anew, so that a phone may be moved on the table.
 */
public final class CleanedSound implements EarSound {

  /** Samples that are cleaned at once: a minute. */
  private static final int PIECE = 60 * Resampler.EAR_RATE;

  /** Samples heard before and after each piece as well, so that pieces fit together: 2 s. */
  private static final int MARGIN = 2 * Resampler.EAR_RATE;

  /** Where a delay is not known, it is looked for in so many samples from the start: 65 s. */
  private static final int LOOK = 1 << 20;

  private final EarSound take;
  private final EarSound backing;
  private final long delay;
  private long pieceFrom = Long.MIN_VALUE;
  private float[] piece = new float[0];
  private float[] known = new float[0];

  /**
   * A take less its backing.
   *
   * @param take what the microphone heard; not closed by this
   * @param backing what the loudspeaker played; not closed by this
   * @param delay how many samples later than in the backing the backing is heard in the take
   */
  public CleanedSound(EarSound take, EarSound backing, long delay) {
    this.take = take;
    this.backing = backing;
    this.delay = delay;
  }

  /** The same with the delay found from the first minute. */
  public static CleanedSound of(EarSound take, EarSound backing) {
    float[] heard = take.samples(0, (int) Math.min(LOOK, take.length()));
    float[] known = backing.samples(0, (int) Math.min(LOOK, backing.length()));
    return new CleanedSound(take, backing, BleedCanceller.delay(heard, known));
  }

  @Override
  public long length() {
    return take.length();
  }

  @Override
  public void read(long from, float[] to, int offset, int count) {
    for (int done = 0; done < count; ) {
      long at = from + done;
      if (at < 0 || at >= length()) {
        to[offset + done] = 0;
        done++;
        continue;
      }
      long start = at - at % PIECE;
      if (start != pieceFrom) {
        clean(start);
      }
      int within = (int) (at - start);
      int now = (int) Math.min(Math.min(count - done, PIECE - within), length() - at);
      System.arraycopy(piece, within + MARGIN, to, offset + done, now);
      done += now;
    }
  }

  private void clean(long start) {
    int size = (int) Math.min(PIECE, length() - start) + 2 * MARGIN;
    // Pieces are megabytes: the same arrays serve for all but the last.
    if (piece.length != size) {
      piece = new float[size];
      known = new float[size];
    }
    take.read(start - MARGIN, piece, 0, size);
    backing.read(start - MARGIN - delay + BleedCanceller.BEFORE, known, 0, size);
    BleedCanceller.takeOut(piece, known);
    pieceFrom = start;
  }

  @Override
  public void close() {
    // Whoever opened the take and the backing closes them.
  }
}
