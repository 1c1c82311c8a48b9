package holdfast.listening.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import holdfast.mistake.UserMistake;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EarTapeTest {

  @TempDir Path folder;

  private Path noise(int rate, int channels, double seconds) throws IOException {
    AudioFormat format = new AudioFormat(rate, 16, channels, true, false);
    int frames = (int) (seconds * rate);
    byte[] bytes = new byte[frames * channels * 2];
    Random random = new Random(rate);
    for (int i = 0; i < frames * channels; i++) {
      // The right channel is the louder.
      short value = (short) ((i % channels + 1) * 2000 * random.nextGaussian());
      bytes[2 * i] = (byte) value;
      bytes[2 * i + 1] = (byte) (value >> 8);
    }
    Path file = folder.resolve(rate + "-" + channels + ".wav");
    AudioInputStream stream = new AudioInputStream(new ByteArrayInputStream(bytes), format, frames);
    AudioSystem.write(stream, AudioFileFormat.Type.WAVE, file.toFile());
    return file;
  }

  @ParameterizedTest
  @CsvSource({"8000, 1", "16000, 1", "44100, 2", "48000, 2", "96000, 1"})
  void a_tape_holds_what_the_whole_sound_holds(int rate, int channels) throws IOException {
    Path file = noise(rate, channels, 2.3);
    float[] whole = SoundFile.read(file).atEarRate();
    try (EarTape tape = SoundFile.tape(file)) {
      assertEquals(whole.length, tape.length());
      assertArrayEquals(whole, tape.samples(0, whole.length), 1e-6f);
    }
  }

  @Test
  void outside_of_its_ends_a_tape_is_silent() throws IOException {
    try (EarTape tape = SoundFile.tape(noise(16_000, 1, 0.1))) {
      float[] around = tape.samples(-10, 1620);
      float[] inside = tape.samples(0, 1600);
      for (int i = 0; i < around.length; i++) {
        assertEquals(i < 10 || i >= 1610 ? 0f : inside[i - 10], around[i]);
      }
    }
  }

  @Test
  void a_missing_file_is_named() {
    Path missing = folder.resolve("no.wav");
    UserMistake told = assertThrows(UserMistake.class, () -> SoundFile.tape(missing));
    assertEquals("there is no file " + missing + "; check the name", told.getMessage());
  }
}
