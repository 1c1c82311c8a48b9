package holdfast.session.input;

import holdfast.backing.BackingPlayer;
import holdfast.backing.sound.SoundTap;
import holdfast.listening.microphone.KnownSound;

/** The running backing, as a microphone in the same room must know it. */
record BackingSound(BackingPlayer band, SoundTap tap) implements KnownSound {

  @Override
  public int rate() {
    return tap.rate();
  }

  @Override
  public long sampleHeard(long nanoTime) {
    return band.sampleHeard(nanoTime);
  }

  @Override
  public void copy(long from, float[] to, int length) {
    tap.copy(from, to, length);
  }
}
