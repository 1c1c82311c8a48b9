package holdfast.listening.alignment;

import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;

/**
 * A take as it would be had the recorder kept the backing's time: what a slow or fast clock did to
 * length and pitch is undone, so that the backing in it is the one that was rendered, sample for
 * sample.
 */
public final class OnBackingTime implements EarSound {

  private final Stretched stretched;
  private final double clockStretch;

  private OnBackingTime(Stretched stretched, double clockStretch) {
    this.stretched = stretched;
    this.clockStretch = clockStretch;
  }

  /** A take whose place is known; closing this leaves the take open. */
  public static OnBackingTime of(EarSound take, BackingPlace place) {
    double clock = place.clockStretch();
    long length = (long) (take.length() / clock);
    return new OnBackingTime(new Stretched(take, 0, clock, length), clock);
  }

  /** The second of the take that is heard at a second of this. */
  public double takeSeconds(double seconds) {
    return seconds * clockStretch;
  }

  /** How many samples later than in the rendered backing the backing is heard in this. */
  public long delaySamples(KnownBacking backing, BackingPlace place) {
    double barOneHere = place.barOneSeconds() / clockStretch;
    double barOneThere = backing.barOneSeconds() / place.tempoRatio();
    return Math.round((barOneHere - barOneThere) * Resampler.EAR_RATE);
  }

  @Override
  public long length() {
    return stretched.length();
  }

  @Override
  public void read(long from, float[] to, int offset, int count) {
    stretched.read(from, to, offset, count);
  }

  @Override
  public void close() {
    stretched.close();
  }
}
