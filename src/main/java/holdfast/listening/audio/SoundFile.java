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
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.UnsupportedAudioFileException;
import javax.sound.sampled.spi.AudioFileReader;
import javax.sound.sampled.spi.FormatConversionProvider;
import javazoom.spi.mpeg.sampled.convert.MpegFormatConversionProvider;
import javazoom.spi.mpeg.sampled.file.MpegAudioFileReader;
import org.jflac.sound.spi.FlacAudioFileReader;
import org.jflac.sound.spi.FlacFormatConversionProvider;

/**
 * Reads a take from whatever a phone or a recorder wrote: WAV by {@link WaveFile}, M4A by {@link
 * Mp4Sound}, Ogg Vorbis by {@link VorbisFile}; MP3 and FLAC through the decoders that stand on the
 * class path as Java Sound providers.
 */
public final class SoundFile {

  private static final int BLOCK_BYTES = 1 << 16;

  /** The same limit as for WAV: 2.5 hours at 48 kHz. */
  private static final int MOST_FRAMES = 480_000_000;

  /** A reader may look this far into a file before it goes back: covers and tags come first. */
  private static final int LOOK_AHEAD_BYTES = 1 << 20;

  private SoundFile() {}

  /**
   * Reads a file to mono; of two channels the louder.
   *
   * @throws UserMistake in one sentence, when the file is missing or cannot be read
   */
  public static Sound read(Path file) {
    WholeSound whole = new WholeSound();
    read(file, whole);
    return whole.sound();
  }

  /**
   * The same at the ear's rate, out of memory: takes of hours are read so.
   *
   * @throws UserMistake in one sentence, when the file is missing or cannot be read
   */
  public static EarTape tape(Path file) {
    try (EarTape.Writer writer = new EarTape.Writer()) {
      read(file, writer);
      return writer.tape();
    } catch (IOException broken) {
      throw new UserMistake(
          "there is no room for temporary files (" + broken.getMessage() + "); free 500 MB",
          broken);
    }
  }

  /**
   * Sound that comes as a stream of 16 bit samples, little-endian, at the ear's rate on a tape.
   *
   * @param rate samples per second
   * @param channels 1 or more
   */
  public static EarTape tape(InputStream samples, int rate, int channels) throws IOException {
    try (EarTape.Writer writer = new EarTape.Writer()) {
      AudioFormat format = new AudioFormat(rate, 16, channels, true, false);
      collect(samples, format, "the backing", writer);
      return writer.tape();
    }
  }

  private static void read(Path file, SampleSink sink) {
    String name = String.valueOf(file.getFileName());
    try {
      if (Files.isDirectory(file)) {
        throw new UserMistake(file + " is a folder; name a sound file in it");
      }
      readKnown(file, name, sink);
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

  /** A decoder that fails has been given no sound. */
  private static void readKnown(Path file, String name, SampleSink sink) throws IOException {
    try {
      readByKind(file, name, new PlausibleRate(name, sink));
    } catch (UserMistake told) {
      throw told;
    } catch (RuntimeException broken) {
      throw unknown(name, broken);
    }
  }

  /** Nothing is made of sound whose rate cannot be. */
  private record PlausibleRate(String name, SampleSink sink) implements SampleSink {
    @Override
    public void begin(int rate, int channels) throws IOException {
      WaveFile.checkRate(name, rate);
      sink.begin(rate, channels);
    }

    @Override
    public void take(float[][] block, int frames) throws IOException {
      sink.take(block, frames);
    }
  }

  private static void readByKind(Path file, String name, SampleSink sink) throws IOException {
    byte[] head = head(file);
    boolean isWave = begins(head, 0, "RIFF") || begins(head, 0, "RF64");
    if (isWave) {
      WaveFile.read(file, sink);
    } else if (begins(head, 0, "OggS")) {
      try (InputStream in = new BufferedInputStream(new EndingStream(Files.newInputStream(file)))) {
        VorbisFile.read(in, MOST_FRAMES, sink);
      }
    } else if (begins(head, 0, "fLaC")) {
      decode(file, name, new FlacAudioFileReader(), new FlacFormatConversionProvider(), sink);
    } else if (begins(head, 4, "ftyp")) {
      Mp4Sound.read(file, MOST_FRAMES, sink);
    } else if (begins(head, 0, "ID3") || ((head[0] & 0xff) == 0xff && (head[1] & 0xe0) == 0xe0)) {
      decode(file, name, new MpegAudioFileReader(), new MpegFormatConversionProvider(), sink);
    } else if (name.toLowerCase(Locale.ROOT).endsWith(".wav")) {
      WaveFile.read(file, sink);
    } else {
      throw unknown(name, new UnsupportedAudioFileException());
    }
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
  private static void decode(
      Path file,
      String name,
      AudioFileReader reader,
      FormatConversionProvider decoder,
      SampleSink sink)
      throws IOException {
    boolean isFlac = reader instanceof FlacAudioFileReader;
    try (InputStream stream = buffered(new EndingStream(Files.newInputStream(file)));
        InputStream bare = isFlac ? buffered(FlacHead.bare(stream)) : stream;
        AudioInputStream coded = reader.getAudioInputStream(bare)) {
      AudioFormat from = coded.getFormat();
      AudioFormat[] offered = decoder.getTargetFormats(AudioFormat.Encoding.PCM_SIGNED, from);
      boolean bigEndian = offered.length > 0 && offered[0].isBigEndian();
      int bits = offered.length > 0 ? Math.max(16, offered[0].getSampleSizeInBits()) : 16;
      AudioFormat pcm =
          new AudioFormat(from.getSampleRate(), bits, from.getChannels(), true, bigEndian);
      try (AudioInputStream plain = decoder.getAudioInputStream(pcm, coded)) {
        collect(plain, pcm, name, sink);
      }
    } catch (UnsupportedAudioFileException broken) {
      throw unknown(name, broken);
    }
  }

  private static InputStream buffered(InputStream in) {
    return new BufferedInputStream(in, LOOK_AHEAD_BYTES);
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

  private static void collect(InputStream plain, AudioFormat pcm, String name, SampleSink sink)
      throws IOException {
    int rate = Math.round(pcm.getSampleRate());
    int channels = pcm.getChannels();
    SampleFormat format = sampleFormat(pcm.getSampleSizeInBits());
    int bytes = format.bytes();
    int used = Math.min(2, channels);
    sink.begin(rate, used);
    byte[] block = new byte[BLOCK_BYTES - BLOCK_BYTES % (bytes * channels)];
    float[][] sound = new float[used][block.length / (bytes * channels)];
    ByteBuffer view = ByteBuffer.wrap(block).order(ByteOrder.LITTLE_ENDIAN);
    long frames = 0;
    int held = 0;
    for (int got = 0; got >= 0; got = plain.read(block, held, block.length - held)) {
      held += got;
      int whole = held / (bytes * channels);
      frames += whole;
      if (frames > MOST_FRAMES) {
        throw new UserMistake(
            name + " is longer than can be read at once; cut it into shorter takes");
      }
      if (pcm.isBigEndian()) {
        reverse(block, whole * channels, bytes);
      }
      for (int c = 0; c < used; c++) {
        format.read(view, channels, c, sound[c], whole);
      }
      sink.take(sound, whole);
      int rest = held - whole * bytes * channels;
      System.arraycopy(block, held - rest, block, 0, rest);
      held = rest;
    }
    if (frames == 0) {
      throw new UserMistake(name + " has no sound in it; record or export it again");
    }
  }
}
