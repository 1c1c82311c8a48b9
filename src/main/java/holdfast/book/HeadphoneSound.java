package holdfast.book;

import holdfast.backing.Performance;
import holdfast.listening.alignment.BackingFinder;
import holdfast.listening.alignment.KnownBacking;
import holdfast.listening.alignment.RenderedBacking;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import holdfast.session.JudgedTake;
import java.util.Optional;

/**
 * A recording made with headphones, with the backing that its player heard put under it: a line
 * without its chords tells nobody how it sat in them.
 */
final class HeadphoneSound implements EarSound {

  /** Room for two sounds at once. */
  private static final float ROOM = 0.7f;

  /** The backing under the player, in loudness; by ear, no source. */
  private static final double UNDER = 0.6;

  /** A take whose tempo was moved has another backing than can be made here; in seconds. */
  private static final double SAME_TEMPO_SECONDS = 0.05;

  private final EarSound player;
  private final EarSound band;
  private final long bandLater;
  private final float bandGain;

  private HeadphoneSound(EarSound player, EarSound band, long bandLater, float bandGain) {
    this.player = player;
    this.band = band;
    this.bandLater = bandLater;
    this.bandGain = bandGain;
  }

  /**
   * The recording with its backing; empty where it is in the recording already, or cannot be made.
   *
   * @param zeroSeconds where in the recording the take's second 0 is
   */
  static Optional<HeadphoneSound> of(
      EarSound recording, double zeroSeconds, JudgedTake take, Performance backing) {
    if (take.phrases().isEmpty() || !keepsItsTempo(take, backing)) {
      return Optional.empty();
    }
    return RenderedSound.band(take, backing)
        .flatMap(
            band -> {
              double barOne = -backing.tempoMap().secondsAt(backing.firstBeat());
              if (holds(recording, zeroSeconds, band, barOne, backing)) {
                band.close();
                return Optional.empty();
              }
              double gain = UNDER * loudness(recording) / Math.max(1e-9, loudness(band));
              long later = Math.round((zeroSeconds - barOne) * Resampler.EAR_RATE);
              return Optional.of(new HeadphoneSound(recording, band, later, (float) gain));
            });
  }

  private static boolean keepsItsTempo(JudgedTake take, Performance backing) {
    double end = take.phrases().get(take.phrases().size() - 1).endBeat();
    double played = take.setting().beats().secondsAt(end) - take.setting().beats().secondsAt(0);
    double made = backing.tempoMap().secondsAt(end) - backing.tempoMap().secondsAt(0);
    return Math.abs(played - made) <= SAME_TEMPO_SECONDS;
  }

  /** Whether a microphone heard the backing, too. */
  private static boolean holds(
      EarSound recording, double zeroSeconds, EarSound band, double barOne, Performance backing) {
    double beat = 60 / backing.arrangement().tempo();
    double chorus =
        beat * backing.arrangement().bars().size() * backing.arrangement().metre().beats();
    RenderedBacking rendered = new RenderedBacking(band);
    KnownBacking known = new KnownBacking(ratio -> rendered, barOne, beat, chorus);
    return BackingFinder.near(recording, known, zeroSeconds).ourSound();
  }

  /** Root mean square of what sounds: rests do not count. */
  private static double loudness(EarSound sound) {
    float[] block = new float[Resampler.EAR_RATE];
    double loudest = 0;
    double sum = 0;
    long blocks = 0;
    for (long at = 0; at < sound.length(); at += block.length) {
      sound.read(at, block, 0, block.length);
      double power = 0;
      for (float value : block) {
        power += value * value / block.length;
      }
      loudest = Math.max(loudest, power);
      if (power > loudest / 100) {
        sum += power;
        blocks++;
      }
    }
    return blocks == 0 ? 0 : Math.sqrt(sum / blocks);
  }

  @Override
  public long length() {
    return player.length();
  }

  @Override
  public void read(long from, float[] to, int offset, int count) {
    player.read(from, to, offset, count);
    float[] under = new float[count];
    band.read(from - bandLater, under, 0, count);
    for (int i = 0; i < count; i++) {
      to[offset + i] = ROOM * (to[offset + i] + bandGain * under[i]);
    }
  }

  /** Lets go of the backing; the recording is its owner's. */
  @Override
  public void close() {
    band.close();
  }
}
