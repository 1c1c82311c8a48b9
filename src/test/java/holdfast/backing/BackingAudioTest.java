package holdfast.backing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.sound.Capture;
import holdfast.backing.sound.SoundBank;
import holdfast.chart.ChartLibrary;
import holdfast.melody.Note;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackingAudioTest {

  private static final double RATE = 44_100;

  /** Over the two bars: two eighths, and a note that is held. */
  private static final List<Note> LINE =
      List.of(new Note(0, 0.5, 72), new Note(0.5, 0.5, 69), new Note(1, 7, 67));

  @TempDir Path folder;

  private static Performance performance(Feel feel, EnumSet<Part> muted) {
    Arrangement arrangement =
        Arrangement.of(
            ChartLibrary.open("paper-boats"),
            feel,
            120,
            Optional.of(new BarRange(1, 2)),
            Optional.empty());
    return new Performance(arrangement, OptionalInt.of(1), 1, muted).withLine(LINE);
  }

  @Test
  void the_same_performance_gives_the_same_file() throws Exception {
    Path one = folder.resolve("one.wav");
    Path two = folder.resolve("two.wav");
    BackingAudio.write(performance(Feel.BALLAD, EnumSet.noneOf(Part.class)), bank(), one);
    BackingAudio.write(performance(Feel.BALLAD, EnumSet.noneOf(Part.class)), bank(), two);
    assertArrayEquals(Files.readAllBytes(one), Files.readAllBytes(two));
  }

  private static SoundBank bank() {
    return SoundBank.builtIn();
  }

  @Test
  void a_wav_file_lasts_as_long_as_the_music_and_its_ringing() throws Exception {
    Path file = folder.resolve("boats.wav");
    BackingAudio.write(performance(Feel.PLAIN, EnumSet.noneOf(Part.class)), bank(), file);
    try (AudioInputStream in = AudioSystem.getAudioInputStream(file.toFile())) {
      assertEquals(RATE, in.getFormat().getSampleRate(), 0);
      assertEquals(2, in.getFormat().getChannels());
      // 4 beats of count and 8 of music at 120, and 2.5 s.
      assertEquals(Math.round(8.5 * RATE), in.getFrameLength());
    }
  }

  /** Each count is silence and then, on its sample, a stroke. */
  @Test
  void the_count_falls_on_its_beats_to_a_tenth_of_a_millisecond() {
    EnumSet<Part> timeOnly = EnumSet.of(Part.CHORDS, Part.BASS, Part.LINE);
    float[] samples = Capture.mono(BackingAudio.render(performance(Feel.DRONE, timeOnly), bank()));
    for (int count = 0; count < 4; count++) {
      int beat = (int) Math.round(count * 0.5 * RATE);
      float before = 0;
      for (int i = Math.max(0, beat - 200); i < beat; i++) {
        before = Math.max(before, Math.abs(samples[i]));
      }
      int onset = beat;
      while (Math.abs(samples[onset]) < 4 * before + 0.002f) {
        onset++;
      }
      assertEquals(0, (onset - beat) * 1000 / RATE, 0.2, "count " + count);
    }
  }

  @Test
  void a_line_begins_on_its_sample() {
    EnumSet<Part> lineOnly = EnumSet.of(Part.CHORDS, Part.BASS, Part.TIME);
    float[] samples = Capture.mono(BackingAudio.render(performance(Feel.PLAIN, lineOnly), bank()));
    // Four beats of count at 120, muted with the time.
    int onset = (int) Math.round(2 * RATE);
    for (int i = 0; i < onset; i++) {
      assertEquals(0, samples[i], 1e-4, "before the line, at sample " + i);
    }
    float loudest = 0;
    for (int i = onset; i < onset + RATE / 20; i++) {
      loudest = Math.max(loudest, Math.abs(samples[i]));
    }
    assertTrue(loudest > 0.01, "within 50 ms it reaches only " + loudest);
  }

  @Test
  void no_feel_clips_and_every_part_is_heard() {
    for (Feel feel : Feel.values()) {
      float loudest = loudest(performance(feel, EnumSet.noneOf(Part.class)));
      assertTrue(loudest > 0.05 && loudest < 0.95, feel + " reaches " + loudest);
      for (Part part : Part.values()) {
        float alone = loudest(performance(feel, EnumSet.complementOf(EnumSet.of(part))));
        assertTrue(alone > 0.01, feel + " " + part + " reaches only " + alone);
      }
    }
  }

  private static float loudest(Performance performance) {
    float loudest = 0;
    for (float sample : Capture.mono(BackingAudio.render(performance, bank()))) {
      loudest = Math.max(loudest, Math.abs(sample));
    }
    return loudest;
  }
}
