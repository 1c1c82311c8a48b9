package holdfast.report;

import de.sciss.jump3r.lowlevel.LameEncoder;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import java.io.ByteArrayOutputStream;
import java.util.Base64;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;

/**
 * Stretches of a take's sound inside the page, as MP3, mono, 16 kHz, 32 kbit/s: every browser and
 * phone plays it, and a phrase of five seconds takes some 27 kB. The encoder is LAME in plain Java
 * (an Opus encoder exists, but phones that are a few years old do not play Opus in a page).
 */
public final class PhraseSounds implements Listening {

  private static final int KBITS_A_SECOND = 32;
  private static final int FULL_SCALE = 32767;

  /** A page with all its sounds, in characters: more than this is no page for a phone. */
  private static final long LARGEST_PAGE = 8_000_000;

  /** What a page without its sounds takes, in characters, where nobody measured it. */
  private static final long USUAL_PAGE = 2_000_000;

  /** One stretch, in seconds: longer ones are cut off. */
  private static final double LONGEST_SECONDS = 20;

  private final EarSound sound;
  private final double zeroSeconds;
  private long roomLeft;

  /**
   * The sounds of a take.
   *
   * @param sound the take, with its backing where there was one
   * @param zeroSeconds where in the sound the take's second 0 is
   */
  public PhraseSounds(EarSound sound, double zeroSeconds) {
    this(sound, zeroSeconds, USUAL_PAGE);
  }

  /**
   * The sounds of a take, as many of them as the page has room for.
   *
   * @param silentPage how long the page is without them, in characters
   */
  public PhraseSounds(EarSound sound, double zeroSeconds, long silentPage) {
    this.sound = sound;
    this.zeroSeconds = zeroSeconds;
    this.roomLeft = LARGEST_PAGE - silentPage;
  }

  @Override
  public Optional<String> address(double fromSeconds, double toSeconds) {
    double seconds = Math.min(LONGEST_SECONDS, toSeconds - fromSeconds);
    long from = Math.round((fromSeconds + zeroSeconds) * Resampler.EAR_RATE);
    int count = (int) Math.round(seconds * Resampler.EAR_RATE);
    if (count <= 0 || from >= sound.length() || charactersOf(seconds) > roomLeft) {
      return Optional.empty();
    }
    String encoded = Base64.getEncoder().encodeToString(mp3(sound.samples(from, count)));
    roomLeft -= encoded.length();
    return Optional.of("data:audio/mpeg;base64," + encoded);
  }

  /** A stretch as Base64, with a frame or two that are padding. */
  private static long charactersOf(double seconds) {
    return Math.round((seconds + 0.2) * KBITS_A_SECOND * 1000 / 8 * 4 / 3);
  }

  /** Sound at the ear's rate as an MP3 stream. */
  static byte[] mp3(float[] samples) {
    byte[] pcm = new byte[2 * samples.length];
    for (int i = 0; i < samples.length; i++) {
      int value = Math.round(Math.max(-1, Math.min(1, samples[i])) * FULL_SCALE);
      pcm[2 * i] = (byte) value;
      pcm[2 * i + 1] = (byte) (value >> 8);
    }
    AudioFormat format = new AudioFormat(Resampler.EAR_RATE, 16, 1, true, false);
    LameEncoder encoder =
        new LameEncoder(
            format,
            KBITS_A_SECOND,
            LameEncoder.CHANNEL_MODE_MONO,
            LameEncoder.QUALITY_MIDDLE,
            false);
    try {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] piece = new byte[encoder.getMP3BufferSize()];
      int step = encoder.getPCMBufferSize();
      for (int at = 0; at < pcm.length; at += step) {
        int written = encoder.encodeBuffer(pcm, at, Math.min(step, pcm.length - at), piece);
        out.write(piece, 0, written);
      }
      out.write(piece, 0, encoder.encodeFinish(piece));
      return out.toByteArray();
    } finally {
      encoder.close();
    }
  }
}
