package holdfast.listening.audio;

import holdfast.mistake.UserMistake;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.logging.Level;
import java.util.logging.Logger;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.UnsupportedAudioFileException;
import javax.sound.sampled.spi.AudioFileReader;
import javax.sound.sampled.spi.FormatConversionProvider;
import javazoom.spi.mpeg.sampled.convert.MpegFormatConversionProvider;
import javazoom.spi.mpeg.sampled.file.MpegAudioFileReader;
import net.sourceforge.jaad.spi.javasound.AACAudioFileReader;
import net.sourceforge.jaad.spi.javasound.AACFormatConversionProvider;
import org.jflac.sound.spi.FlacAudioFileReader;
import org.jflac.sound.spi.FlacFormatConversionProvider;

/**
 * Reads a take from whatever a phone or a recorder wrote: WAV by {@link WaveFile}; MP3, Ogg Vorbis,
 * FLAC and M4A (AAC) through the decoders that stand on the class path as Java Sound providers.
 */
public final class SoundFile {

  private static final int BLOCK_BYTES = 1 << 16;

  /** The same limit as for WAV: 2.5 hours at 48 kHz. */
  private static final int MOST_FRAMES = 480_000_000;

  /** A reader may look this far into a file before it goes back: covers and tags come first. */
  private static final int LOOK_AHEAD_BYTES = 1 << 20;

  /** The AAC decoder tells its doubts to the console unless it is asked not to. */
  private static final Logger AAC_TALK = Logger.getLogger("net.sourceforge.jaad");

  private SoundFile() {}

  /**
   * Reads a file to mono; of two channels the louder.
   *
   * @throws UserMistake in one sentence, when the file is missing or cannot be read
   */
  public static Sound read(Path file) {
    String name = String.valueOf(file.getFileName());
    try {
      if (Files.isDirectory(file)) {
        throw new UserMistake(file + " is a folder; name a sound file in it");
      }
      return readKnown(file, name);
    } catch (NoSuchFileException missing) {
      throw new UserMistake("there is no file " + file + "; check the name", missing);
    } catch (IOException broken) {
      throw new UserMistake(name + " cannot be read (" + broken.getMessage() + ")", broken);
    }
  }

  private static byte[] head(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.copyOf(in.readNBytes(12), 12);
    }
  }

  private static boolean begins(byte[] head, int at, String tag) {
    return new String(head, at, tag.length(), StandardCharsets.ISO_8859_1).equals(tag);
  }

  private static Sound readKnown(Path file, String name) throws IOException {
    byte[] head = head(file);
    if (begins(head, 0, "RIFF") || begins(head, 0, "RF64")) {
      return WaveFile.read(file);
    } else if (begins(head, 0, "OggS")) {
      try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
        return VorbisFile.read(in, MOST_FRAMES);
      }
    } else if (begins(head, 0, "fLaC")) {
      return decode(file, name, new FlacAudioFileReader(), new FlacFormatConversionProvider());
    } else if (begins(head, 4, "ftyp")) {
      return decode(file, name, new AACAudioFileReader(), new AACFormatConversionProvider());
    } else if (begins(head, 0, "ID3") || ((head[0] & 0xff) == 0xff && (head[1] & 0xe0) == 0xe0)) {
      return decode(file, name, new MpegAudioFileReader(), new MpegFormatConversionProvider());
    } else if (name.toLowerCase(Locale.ROOT).endsWith(".wav")) {
      return WaveFile.read(file);
    }
    throw unknown(name, new UnsupportedAudioFileException());
  }

  private static UserMistake unknown(String name, Exception cause) {
    return new UserMistake(
        name
            + " is not a sound that can be read (WAV, MP3, Ogg Vorbis, FLAC and M4A are);"
            + " convert it, for example: ffmpeg -i "
            + name
            + " take.wav",
        cause);
  }

  /**
   * The providers are called by name: asked through AudioSystem, the first that believes to know a
   * file takes it, and one of them believes that of all.
   */
  private static Sound decode(
      Path file, String name, AudioFileReader reader, FormatConversionProvider decoder)
      throws IOException {
    AAC_TALK.setLevel(Level.OFF);
    try (AudioInputStream coded =
        reader.getAudioInputStream(
            new BufferedInputStream(Files.newInputStream(file), LOOK_AHEAD_BYTES))) {
      AudioFormat from = coded.getFormat();
      AudioFormat[] offered = decoder.getTargetFormats(AudioFormat.Encoding.PCM_SIGNED, from);
      boolean bigEndian = offered.length > 0 && offered[0].isBigEndian();
      int bits = offered.length > 0 ? Math.max(16, offered[0].getSampleSizeInBits()) : 16;
      AudioFormat pcm =
          new AudioFormat(from.getSampleRate(), bits, from.getChannels(), true, bigEndian);
      try (AudioInputStream plain = decoder.getAudioInputStream(pcm, coded)) {
        return collect(plain, pcm, name);
      }
    } catch (UnsupportedAudioFileException | RuntimeException broken) {
      if (broken instanceof UserMistake mistake) {
        throw mistake;
      }
      throw unknown(name, broken);
    }
  }

  /** Turns big-endian samples round in place. */
  private static void reverse(byte[] block, int count, int bytes) {
    for (int i = 0; i < count; i++) {
      for (int low = i * bytes, high = low + bytes - 1; low < high; low++, high--) {
        byte swap = block[low];
        block[low] = block[high];
        block[high] = swap;
      }
    }
  }

  private static SampleFormat sampleFormat(int bits) {
    return switch (bits) {
      case 16 -> SampleFormat.SIGNED_16;
      case 24 -> SampleFormat.SIGNED_24;
      case 32 -> SampleFormat.SIGNED_32;
      default -> throw new IllegalArgumentException(bits + " bits");
    };
  }

  private static Sound collect(AudioInputStream plain, AudioFormat pcm, String name)
      throws IOException {
    int rate = Math.round(pcm.getSampleRate());
    int channels = pcm.getChannels();
    SampleFormat format = sampleFormat(pcm.getSampleSizeInBits());
    int bytes = format.bytes();
    int used = Math.min(2, channels);
    float[][] sound = new float[used][1 << 16];
    double[] energy = new double[used];
    int[] clipped = new int[used];
    int frames = 0;
    byte[] block = new byte[BLOCK_BYTES - BLOCK_BYTES % (bytes * channels)];
    ByteBuffer view = ByteBuffer.wrap(block).order(ByteOrder.LITTLE_ENDIAN);
    boolean swapped = pcm.isBigEndian();
    int held = 0;
    while (true) {
      int got = plain.read(block, held, block.length - held);
      if (got < 0) {
        break;
      }
      held += got;
      int whole = held / (bytes * channels);
      if (frames + whole > MOST_FRAMES) {
        throw new UserMistake(
            name + " is longer than can be read at once; cut it into shorter takes");
      }
      if (frames + whole > sound[0].length) {
        for (int c = 0; c < used; c++) {
          sound[c] = Arrays.copyOf(sound[c], Math.max(2 * sound[c].length, frames + whole));
        }
      }
      if (swapped) {
        reverse(block, whole * channels, bytes);
      }
      for (int i = 0; i < whole; i++) {
        for (int c = 0; c < used; c++) {
          float value = format.read(view, bytes * (i * channels + c));
          sound[c][frames + i] = value;
          energy[c] += value * value;
          clipped[c] += Math.abs(value) >= 0.9998f ? 1 : 0;
        }
      }
      frames += whole;
      int rest = held - whole * bytes * channels;
      System.arraycopy(block, held - rest, block, 0, rest);
      held = rest;
    }
    if (frames == 0) {
      throw new UserMistake(name + " has no sound in it; record or export it again");
    }
    int better = used == 2 && energy[1] > energy[0] ? 1 : 0;
    return new Sound(rate, Arrays.copyOf(sound[better], frames), clipped[better]);
  }
}
