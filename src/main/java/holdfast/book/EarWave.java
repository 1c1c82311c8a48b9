package holdfast.book;

import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/** A take's sound as a WAV file, mono, 16 kHz, 16 bit: 2 MB a minute. */
final class EarWave {

  /** Samples that are turned at once: a second. */
  private static final int PIECE = Resampler.EAR_RATE;

  private static final int FULL_SCALE = 32767;

  private EarWave() {}

  static void write(EarSound sound, Path file) throws IOException {
    AudioFormat format = new AudioFormat(Resampler.EAR_RATE, 16, 1, true, false);
    try (AudioInputStream samples =
        new AudioInputStream(new Samples(sound), format, sound.length())) {
      AudioSystem.write(samples, AudioFileFormat.Type.WAVE, file.toFile());
    }
  }

  /** Turns piece by piece, so that an hour needs no more memory than a second. */
  private static final class Samples extends InputStream {
    private final EarSound sound;
    private final byte[] piece = new byte[2 * PIECE];
    private long next;
    private int at;
    private int end;

    Samples(EarSound sound) {
      this.sound = sound;
    }

    @Override
    public int read() {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) {
      if (at == end && !turn()) {
        return -1;
      }
      int count = Math.min(length, end - at);
      System.arraycopy(piece, at, bytes, offset, count);
      at += count;
      return count;
    }

    private boolean turn() {
      int count = (int) Math.min(PIECE, sound.length() - next);
      if (count <= 0) {
        return false;
      }
      float[] samples = sound.samples(next, count);
      for (int i = 0; i < count; i++) {
        int value = Math.round(Math.max(-1, Math.min(1, samples[i])) * FULL_SCALE);
        piece[2 * i] = (byte) value;
        piece[2 * i + 1] = (byte) (value >> 8);
      }
      next += count;
      at = 0;
      end = 2 * count;
      return true;
    }
  }
}
