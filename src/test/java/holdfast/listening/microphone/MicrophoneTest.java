package holdfast.listening.microphone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayedNote;
import holdfast.listening.PlayedNotes;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The live microphone against everything that microphones do, through the JDK's own device list.
 */
class MicrophoneTest {

  private static final Microphone MICROPHONE = Microphone.named(TestMicrophone.NAME);

  private final List<Heard> heard = new ArrayList<>();

  @AfterEach
  void pullOut() {
    TestMicrophone.pullOut();
  }

  static Stream<AudioFormat> formats() {
    return Stream.of(
        TestMicrophone.USUAL,
        new AudioFormat(44_100, 16, 2, true, false),
        new AudioFormat(48_000, 24, 2, true, false),
        new AudioFormat(44_100, 24, 1, true, false),
        new AudioFormat(96_000, 24, 1, true, false),
        new AudioFormat(16_000, 16, 1, true, false),
        new AudioFormat(AudioFormat.Encoding.PCM_FLOAT, 48_000, 32, 1, 4, 48_000, false));
  }

  @ParameterizedTest
  @MethodSource("formats")
  void notes_are_heard_in_every_format_that_microphones_have(AudioFormat format)
      throws InterruptedException {
    TestMicrophone.plugIn(format);
    try (Capture ear = TestMicrophone.open(MICROPHONE)) {
      sing(ear, melody(format.getSampleRate()));
      heard.add(ear.rest());
    }
    assertMelody(notes(), 0);
  }

  @Test
  void before_anything_has_come_in_a_moment_is_promised_and_no_infinity()
      throws InterruptedException {
    TestMicrophone.plugIn(TestMicrophone.USUAL);
    try (Capture ear = TestMicrophone.open(MICROPHONE)) {
      Heard nothing = ear.await(Duration.ofMillis(1));
      assertEquals(List.of(), nothing.events());
      assertTrue(Double.isFinite(nothing.upToSeconds()), "up to " + nothing.upToSeconds());
    }
  }

  @Test
  void a_missing_microphone_is_told_and_those_that_are_there_are_named() {
    TestMicrophone.plugIn(TestMicrophone.USUAL);
    UserMistake missing =
        assertThrows(UserMistake.class, () -> Microphone.openLine("silver bullet"));
    assertTrue(missing.getMessage().startsWith("there is no microphone \"silver bullet\"; there"));
    assertTrue(missing.getMessage().contains(TestMicrophone.NAME));
    assertTrue(Microphone.names().contains(TestMicrophone.NAME), "without the port's number");
  }

  @Test
  void a_busy_microphone_is_told() {
    TestMicrophone.plugIn(TestMicrophone.USUAL);
    TestMicrophone.takenByAnother(true);
    UserMistake busy =
        assertThrows(UserMistake.class, () -> Microphone.openLine(TestMicrophone.NAME));
    assertEquals(
        "the microphone \"Test Microphone\" is busy; close the program that uses it, or allow this"
            + " one to listen in the system's settings",
        busy.getMessage());
  }

  @Test
  void a_microphone_of_the_wrong_kind_is_told() {
    TestMicrophone.plugIn(new AudioFormat(8_000, 8, 1, true, false));
    UserMistake wrong =
        assertThrows(UserMistake.class, () -> Microphone.openLine(TestMicrophone.NAME));
    assertEquals(
        "the microphone \"Test Microphone\" gives sound in a form that I cannot take; set it to 48"
            + " or 44.1 kHz and 16 bits in the system's sound settings, or choose another"
            + " microphone",
        wrong.getMessage());
  }

  @Test
  void a_microphone_that_is_pulled_out_and_comes_back_in_another_format_is_heard_again(
      @TempDir Path folder) throws Exception {
    Path file = folder.resolve("take.wav");
    TestMicrophone.plugIn(TestMicrophone.USUAL);
    try (Capture ear = TestMicrophone.open(MICROPHONE.keepingSoundIn(file))) {
      sing(ear, melody(48_000));
      sing(ear, TestMicrophone.tone(72, 0.5, 48_000, 0.3));
      assertTrue(ear.isListening());

      TestMicrophone.pullOut();
      awaitUntil(ear, false);
      TestMicrophone.let(3);
      heard.add(ear.await(Duration.ofMillis(5)));
      assertFalse(ear.isListening(), "it is not there");
      double away = heard.get(heard.size() - 1).upToSeconds();
      assertTrue(away > 5, "rests are measured on while it is away, to " + away);
      List<PlayedNote> before = notes();
      assertMelody(before.subList(0, 3), 0);
      assertEquals(72, before.get(3).pitch(), "the note that sounded is kept");

      TestMicrophone.plugIn(new AudioFormat(44_100, 24, 2, true, false));
      TestMicrophone.let(1.1);
      awaitUntil(ear, true);
      double back = TestMicrophone.nanoTime() * 1e-9 - startSeconds();
      sing(ear, melody(44_100));
      heard.add(ear.rest());
      assertMelody(notes().subList(4, 7), back);
    }
    assertEquals(48_000.0, (double) frames(file, 48_000), 2.7 * 48_000);
    assertTrue(frames(folder.resolve("take-2.wav"), 44_100) > 44_100);
  }

  @Test
  void a_driver_that_fails_is_a_microphone_that_went_away_and_comes_back()
      throws InterruptedException {
    TestMicrophone.plugIn(TestMicrophone.USUAL);
    try (Capture ear = TestMicrophone.open(MICROPHONE)) {
      sing(ear, melody(48_000));
      TestMicrophone.breakDown();
      awaitUntil(ear, false);
      TestMicrophone.let(1.1);
      awaitUntil(ear, true);
      double back = TestMicrophone.nanoTime() * 1e-9 - startSeconds();
      sing(ear, melody(48_000));
      heard.add(ear.rest());
      assertMelody(notes().subList(0, 3), 0);
      assertMelody(notes().subList(3, 6), back);
    }
  }

  @Test
  void a_muted_microphone_is_told_once() throws InterruptedException {
    TestMicrophone.plugIn(TestMicrophone.USUAL);
    List<String> news = new ArrayList<>();
    try (Capture ear = TestMicrophone.open(MICROPHONE)) {
      sing(ear, new float[48_000 * 7]);
      assertEquals(List.of(), ear.news(), "a long rest is no fault");
      sing(ear, new float[48_000 * 9]);
      news.addAll(ear.news());
      sing(ear, new float[48_000 * 9]);
      news.addAll(ear.news());
    }
    assertEquals(
        List.of(
            "I hear nothing at all on \"Test Microphone\"; see whether it is switched off or muted,"
                + " or choose another."),
        news);
  }

  @Test
  void a_voice_that_is_too_loud_for_the_microphone_is_told_once_and_heard_all_the_same()
      throws InterruptedException {
    TestMicrophone.plugIn(TestMicrophone.USUAL);
    List<String> news = new ArrayList<>();
    try (Capture ear = TestMicrophone.open(MICROPHONE)) {
      float[] loud = melody(48_000);
      for (int i = 0; i < loud.length; i++) {
        loud[i] *= 8;
      }
      sing(ear, loud);
      sing(ear, loud);
      news.addAll(ear.news());
      heard.add(ear.rest());
    }
    assertEquals(
        List.of(
            "You are too loud for \"Test Microphone\"; step back a little, or turn it down in the"
                + " system's settings."),
        news);
    assertMelody(notes().subList(0, 3), 0);
  }

  @Test
  void samples_that_are_no_numbers_count_as_silence() throws InterruptedException {
    AudioFormat floats =
        new AudioFormat(AudioFormat.Encoding.PCM_FLOAT, 48_000, 32, 1, 4, 48_000, false);
    TestMicrophone.plugIn(floats);
    float[] broken = new float[24_000];
    Arrays.fill(broken, 0, 12_000, Float.NaN);
    Arrays.fill(broken, 12_000, 24_000, Float.NEGATIVE_INFINITY);
    try (Capture ear = TestMicrophone.open(MICROPHONE)) {
      sing(ear, broken);
      sing(ear, melody(48_000));
      heard.add(ear.rest());
    }
    assertMelody(notes(), 0.5);
  }

  @Test
  void a_full_disk_is_told_and_the_take_goes_on() throws InterruptedException {
    Path full = Path.of("/dev/full");
    assumeTrue(Files.exists(full), "skipped: this system has no disk that is always full");
    TestMicrophone.plugIn(TestMicrophone.USUAL);
    List<String> news;
    try (Capture ear = TestMicrophone.open(MICROPHONE.keepingSoundIn(full))) {
      sing(ear, melody(48_000));
      news = ear.news();
      heard.add(ear.rest());
    }
    assertEquals(1, news.size(), news.toString());
    assertTrue(news.get(0).startsWith("The sound of this take cannot be kept any further in"));
    assertMelody(notes(), 0);
  }

  @Test
  void a_recording_whose_program_was_killed_is_whole_after_mending(@TempDir Path folder)
      throws Exception {
    Path file = folder.resolve("take.wav");
    float[] sung = melody(48_000);
    // Never closed: the program is gone.
    KeptSound killed = new KeptSound(file, 48_000);
    killed.append(sung, sung.length);
    killed.append(sung, sung.length);
    KeptSound.mend(file);
    long kept = frames(file, 48_000);
    assertTrue(kept > 2L * sung.length - 48_000, "less than a second is lost, not " + kept);
    long size = Files.size(file);
    KeptSound.mend(file);
    assertEquals(size, Files.size(file), "mending twice changes nothing");
    killed.close();
  }

  @Test
  void the_thread_that_reads_the_device_allocates_nothing_in_steady_state()
      throws InterruptedException {
    TestMicrophone.plugIn(new AudioFormat(48_000, 24, 2, true, false));
    try (Capture ear = TestMicrophone.open(MICROPHONE)) {
      long thread = ((MicrophoneCapture) ear).deviceThread().orElseThrow().getId();
      sing(ear, melody(48_000));
      long before = allocated(thread);
      for (int i = 0; i < 5; i++) {
        sing(ear, melody(48_000));
      }
      assertEquals(0, allocated(thread) - before, "bytes in ten seconds of sound");
    }
  }

  @Test
  void listening_takes_no_more_memory_the_longer_it_lasts() throws InterruptedException {
    TestMicrophone.plugIn(new AudioFormat(16_000, 16, 1, true, false));
    float[] minute = new float[16_000 * 20];
    float[] sung = melody(16_000);
    for (int at = 0; at + sung.length <= minute.length; at += sung.length) {
      System.arraycopy(sung, 0, minute, at, sung.length);
    }
    try (Capture ear = TestMicrophone.open(MICROPHONE)) {
      sing(ear, minute);
      heard.clear();
      long first = held();
      sing(ear, minute);
      sing(ear, minute);
      assertTrue(!notes().isEmpty());
      heard.clear();
      long later = held();
      assertTrue(later - first < 1 << 20, (later - first) + " bytes more are held");
    }
  }

  private static long held() {
    long least = Long.MAX_VALUE;
    for (int i = 0; i < 3; i++) {
      System.gc();
      least = Math.min(least, ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed());
    }
    return least;
  }

  private static long allocated(long thread) {
    return ((com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean())
        .getThreadAllocatedBytes(thread);
  }

  /** C4, E4, G4: half a second each, with rests between; two seconds together. */
  private static float[] melody(double rate) {
    float[] rest = new float[(int) (0.15 * rate)];
    return TestMicrophone.after(
        rest,
        TestMicrophone.tone(60, 0.5, rate, 0.3),
        rest,
        TestMicrophone.tone(64, 0.5, rate, 0.3),
        rest,
        TestMicrophone.tone(67, 0.5, rate, 0.3),
        rest,
        rest);
  }

  private static void assertMelody(List<PlayedNote> notes, double start) {
    assertEquals(List.of(60, 64, 67), notes.stream().map(PlayedNote::pitch).toList());
    for (int i = 0; i < 3; i++) {
      PlayedNote note = notes.get(i);
      // mir_eval's tolerance for the onset of a note: 50 ms.
      assertEquals(start + 0.15 + 0.65 * i, note.onsetSeconds(), 0.05, "onset of note " + i);
      assertEquals(0.5, note.durationSeconds(), 0.1, "length of note " + i);
      assertEquals(0, note.cents(), 10, "cents of note " + i);
    }
  }

  private double firstSecond = Double.NaN;

  private double startSeconds() {
    return firstSecond;
  }

  private void sing(Capture ear, float[] samples) throws InterruptedException {
    if (Double.isNaN(firstSecond)) {
      firstSecond = TestMicrophone.nanoTime() * 1e-9;
    }
    TestMicrophone.sing(samples, ear, heard::add);
    assertPromisesKept();
  }

  private void awaitUntil(Capture ear, boolean listening) throws InterruptedException {
    for (int i = 0; i < 1000 && ear.isListening() != listening; i++) {
      heard.add(ear.await(Duration.ofMillis(2)));
    }
    assertEquals(listening, ear.isListening());
  }

  /** Nothing comes after the promise that everything before is in. */
  private void assertPromisesKept() {
    double promised = Double.NEGATIVE_INFINITY;
    for (Heard piece : heard) {
      for (PlayEvent event : piece.events()) {
        assertTrue(event.seconds() >= promised, event + " after a promise up to " + promised);
      }
      assertTrue(piece.upToSeconds() >= promised, "a promise was taken back");
      promised = piece.upToSeconds();
    }
  }

  private List<PlayedNote> notes() {
    List<PlayEvent> events = heard.stream().flatMap(h -> h.events().stream()).toList();
    return PlayedNotes.of(events, 1e6);
  }

  /** As another reader of WAV files counts them: the JDK's. */
  private static long frames(Path file, int rate) throws Exception {
    try (AudioInputStream in = AudioSystem.getAudioInputStream(file.toFile())) {
      assertEquals(rate, in.getFormat().getSampleRate());
      assertEquals(1, in.getFormat().getChannels());
      assertEquals(16, in.getFormat().getSampleSizeInBits());
      return in.getFrameLength();
    } catch (IOException e) {
      throw new AssertionError(file + " is no WAV file", e);
    }
  }
}
