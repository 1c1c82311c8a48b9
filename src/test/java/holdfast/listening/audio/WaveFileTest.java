package holdfast.listening.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.mistake.UserMistake;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** WAV files of every kind against what the JDK itself writes, and against hand-laid bytes. */
class WaveFileTest {

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "8, 8000, 1",
    "16, 11025, 1",
    "16, 44100, 2",
    "24, 48000, 2",
    "32, 96000, 1",
    "24, 192000, 1"
  })
  void reads_what_the_jdk_writes(int bits, int rate, int channels) throws IOException {
    Path file = folder.resolve("jdk.wav");
    int frames = rate / 2;
    int bytes = bits / 8;
    ByteBuffer data = ByteBuffer.allocate(frames * bytes * channels).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < frames; i++) {
      for (int c = 0; c < channels; c++) {
        // The second channel is the better one: twice as loud.
        double value = 0.25 * (c + 1) * Math.sin(2 * Math.PI * 440 * i / rate);
        long whole = Math.round(value * ((1L << (bits - 1)) - 1)) + (bits == 8 ? 128 : 0);
        for (int b = 0; b < bytes; b++) {
          data.put((byte) (whole >> (8 * b)));
        }
      }
    }
    AudioFormat format = new AudioFormat(rate, bits, channels, bits > 8, false);
    AudioSystem.write(
        new AudioInputStream(new ByteArrayInputStream(data.array()), format, frames),
        AudioFileFormat.Type.WAVE,
        file.toFile());
    Sound sound = WaveFile.read(file);
    assertEquals(rate, sound.rate());
    assertEquals(frames, sound.samples().length);
    int quarter = (int) Math.round(rate / 440.0 * 10.25);
    assertEquals(
        0.25 * channels * Math.sin(2 * Math.PI * 440 * quarter / rate),
        sound.samples()[quarter],
        bits == 8 ? 0.01 : 1e-4);
  }

  @Test
  void reads_floats_in_an_extensible_header_between_odd_chunks() throws IOException {
    float[] samples = {0.5f, -0.25f, Float.NaN, Float.POSITIVE_INFINITY, 1.0f};
    ByteBuffer wave = ByteBuffer.allocate(200).order(ByteOrder.LITTLE_ENDIAN);
    tag(wave, "RIFF").putInt(0);
    tag(wave, "WAVE");
    // A chunk of odd length is padded to an even one.
    tag(wave, "note").putInt(3).put(new byte[] {1, 2, 3, 0});
    tag(wave, "fmt ").putInt(40);
    wave.putShort((short) 0xfffe).putShort((short) 1).putInt(48000).putInt(48000 * 4);
    wave.putShort((short) 4).putShort((short) 32).putShort((short) 22).putShort((short) 32);
    wave.putInt(4).putShort((short) 3).put(new byte[14]);
    tag(wave, "data").putInt(samples.length * 4);
    for (float sample : samples) {
      wave.putFloat(sample);
    }
    Sound sound = WaveFile.read(write("float.wav", wave));
    assertEquals(48000, sound.rate());
    assertEquals("[0.5, -0.25, 0.0, 0.0, 1.0]", Arrays.toString(sound.samples()));
    assertEquals(1, sound.clipped());
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 0xffffffff, 1_000_000})
  void a_file_cut_off_or_never_finished_gives_what_is_there(int claimed) throws IOException {
    ByteBuffer wave = pcm16(44100, 1, claimed == 0 ? 8 : claimed);
    for (int i = 0; i < 4; i++) {
      wave.putShort((short) (1000 * i));
    }
    assertEquals(4, WaveFile.read(write("cut.wav", wave)).samples().length);
  }

  @Test
  void what_cannot_be_read_is_told_in_one_sentence() throws IOException {
    ByteBuffer text = ByteBuffer.wrap("not a sound at all".getBytes(StandardCharsets.UTF_8));
    text.position(text.limit());
    assertTold(
        "a.wav is not a WAV file (it does not begin with RIFF and WAVE); export it as WAV",
        write("a.wav", text));
    assertTold(
        "b.wav says it has 4000000 samples a second; 8000 to 192000 are read: export it at 44100",
        write("b.wav", pcm16(4_000_000, 1, 8)));
    assertTold(
        "c.wav says it has 0 channels; 1 or 2 are read: export it as mono",
        write("c.wav", pcm16(44100, 0, 8)));
    assertTold(
        "d.wav has no sound in it (its \"data\" chunk is empty)",
        write("d.wav", pcm16(44100, 1, 0)));
    assertTold(
        "there is no file " + folder.resolve("e.wav") + "; check the name",
        folder.resolve("e.wav"));
  }

  private static void assertTold(String sentence, Path file) {
    UserMistake told = assertThrows(UserMistake.class, () -> SoundFile.read(file));
    assertEquals(sentence, told.getMessage());
  }

  /** Files by other people's encoders; see takes/README.txt. */
  @ParameterizedTest
  @ValueSource(strings = {"mp3", "ogg", "flac", "m4a"})
  void reads_what_phones_write(String kind) throws IOException {
    Path file = folder.resolve("a440." + kind);
    try (var in = WaveFileTest.class.getResourceAsStream("/takes/a440." + kind)) {
      Files.copy(in, file);
    }
    Sound sound = SoundFile.read(file);
    float[] ear = sound.atEarRate();
    // From one rising zero to another, 200 periods on; level over the same stretch.
    int from = rise(ear, 3000);
    int to = from;
    for (int i = 0; i < 200; i++) {
      to = rise(ear, to + 1);
    }
    double hz = 200.0 * Resampler.EAR_RATE / (crossing(ear, to) - crossing(ear, from));
    assertEquals(0, 1200 * Math.log(hz / 440) / Math.log(2), 1);
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += ear[i] * ear[i];
    }
    assertEquals(-6.0 - 3.01, 10 * Math.log10(sum / (to - from)), 1);
    assertTrue(sound.seconds() > 0.55, "seconds " + sound.seconds());
  }

  @Test
  void an_m4a_with_a_broken_frame_keeps_its_time() throws IOException {
    byte[] whole;
    try (var in = WaveFileTest.class.getResourceAsStream("/takes/a440.m4a")) {
      whole = in.readAllBytes();
    }
    double seconds = SoundFile.read(Files.write(folder.resolve("whole.m4a"), whole)).seconds();
    // Within the sound, from byte 44 on.
    Arrays.fill(whole, 3_000, 3_200, (byte) 0xff);
    Sound broken = SoundFile.read(Files.write(folder.resolve("broken.m4a"), whole));
    assertEquals(seconds, broken.seconds(), 1e-9);
  }

  private static int rise(float[] samples, int from) {
    int i = from;
    while (samples[i] >= 0 || samples[i + 1] < 0) {
      i++;
    }
    return i;
  }

  private static double crossing(float[] samples, int i) {
    return i + samples[i] / (samples[i] - samples[i + 1]);
  }

  private static ByteBuffer pcm16(int rate, int channels, int dataBytes) {
    ByteBuffer wave = ByteBuffer.allocate(100).order(ByteOrder.LITTLE_ENDIAN);
    tag(wave, "RIFF").putInt(0);
    tag(wave, "WAVE");
    tag(wave, "fmt ").putInt(16);
    wave.putShort((short) 1).putShort((short) channels).putInt(rate).putInt(rate * 2);
    wave.putShort((short) 2).putShort((short) 16);
    tag(wave, "data").putInt(dataBytes);
    return wave;
  }

  private static ByteBuffer tag(ByteBuffer buffer, String tag) {
    return buffer.put(tag.getBytes(StandardCharsets.US_ASCII));
  }

  private Path write(String name, ByteBuffer bytes) throws IOException {
    Path file = folder.resolve(name);
    byte[] written = new byte[bytes.position()];
    bytes.flip().get(written);
    Files.write(file, written);
    return file;
  }
}
