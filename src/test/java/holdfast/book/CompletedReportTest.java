package holdfast.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.BackingAudio;
import holdfast.backing.sound.SoundBank;
import holdfast.listening.Heard;
import holdfast.listening.PlayedNote;
import holdfast.listening.audio.EarTape;
import holdfast.listening.audio.SoundFile;
import holdfast.motif.Family;
import holdfast.motif.Player;
import holdfast.practice.Plan;
import holdfast.practice.Step;
import holdfast.report.PlanText;
import holdfast.report.Progress;
import holdfast.session.Coach;
import holdfast.session.JudgedTake;
import holdfast.session.Overruling;
import holdfast.session.Setting;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What is added to a report when everything has been said. WAV files are read by the JDK's own
 * reader, PDF by PDFBox 3.
 */
class CompletedReportTest {

  /** Where the made recordings begin before the take does, in seconds. */
  private static final double LEAD = 1.37;

  private static final int RATE = 16_000;

  @TempDir Path home;

  private static String page(TakeFolder folder) throws IOException {
    return Files.readString(folder.report(), StandardCharsets.UTF_8);
  }

  private static List<String> sounds(String page) {
    return Pattern.compile("<audio[^>]* src=\"([^\"]*)\"")
        .matcher(page)
        .results()
        .map((MatchResult found) -> found.group(1))
        .toList();
  }

  private TakeFolder planned(Optional<Plan> plan) throws IOException {
    try (KeptTake take =
        KeptTake.begin(
            home.resolve(Book.TAKES), MadeTakes.settings("Mira", 0), MadeTakes.PERFORMANCE)) {
      take.hear(Heard.recording(MadeTakes.notes()));
      JudgedTake judged =
          Coach.judge(MadeTakes.SETTING, MadeTakes.notes(), phrase -> take.phraseEnded(0));
      take.finish(judged, MadeTakes.PERFORMANCE, Optional.empty(), plan);
      return take.folder();
    }
  }

  @Test
  void a_take_of_notes_gets_its_sound_its_paper_and_a_page_that_can_be_heard() throws Exception {
    JudgedTake judged = Coach.judge(MadeTakes.SETTING, MadeTakes.notes(), phrase -> {});
    // As the student typed it, with the key it was moved to.
    Plan plan = Plan.after(judged, "tunes/boats.chart", Optional.of("Eb"));
    TakeFolder folder = planned(Optional.of(plan));
    assertEquals(List.of(), sounds(page(folder)), "the page comes first, without sound");
    assertFalse(Files.exists(folder.path().resolve(TakeFolder.PAPER)));

    folder.complete(Progress.NONE);

    String page = page(folder);
    assertEquals(judged.phrases().size(), sounds(page).size());
    assertTrue(sounds(page).stream().allMatch(s -> s.startsWith("data:audio/mpeg;base64,")));
    assertTrue(page.length() < 8_000_000, page.length() + " characters");
    assertTrue(page.contains("href=\"report.pdf\"") && page.contains("href=\"sound.wav\""));
    File wave = folder.path().resolve(TakeFolder.SOUND).toFile();
    AudioFileFormat format = AudioSystem.getAudioFileFormat(wave);
    double seconds = format.getFrameLength() / (double) format.getFormat().getFrameRate();
    double choruses = 2 * MadeTakes.SETTING.form().lengthBeats();
    double played = MadeTakes.SETTING.beats().secondsAt(choruses);
    // What rings on after the last beat is 2.5 s.
    assertEquals(played + 2.5, seconds, 0.1);
    try (PDDocument pdf = Loader.loadPDF(folder.path().resolve(TakeFolder.PAPER).toFile())) {
      String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
      for (Step step : plan.steps()) {
        assertTrue(page.contains(step.command().replace("\"", "&quot;")), step.command());
        assertTrue(PlanText.of(plan).stream().anyMatch(l -> l.endsWith(step.command())));
        assertTrue(text.contains(step.what()), step.what());
      }
    }
    try (Stream<Path> files = Files.list(folder.path())) {
      assertTrue(files.noneMatch(f -> f.toString().endsWith(".part")));
    }
  }

  @Test
  void paper_that_tells_something_else_than_the_page_goes_until_it_is_made_anew() throws Exception {
    TakeFolder folder = planned(Optional.empty());
    Files.writeString(folder.path().resolve(TakeFolder.PAPER), "old");
    try (Book book = Book.open(home)) {
      book.overrule(
          folder.name(),
          Overruling.of(
              folder.judged().counts().lost().get(0), Family.VARIED, Optional.of("I hear it.")));
    }
    assertFalse(Files.exists(folder.path().resolve(TakeFolder.PAPER)));
    assertTrue(page(folder).contains("I hear it."));
  }

  /** Tones of four harmonics where the notes are, after a lead: what a microphone keeps. */
  private static byte[] recording(List<PlayedNote> notes) {
    double end = notes.stream().mapToDouble(PlayedNote::endSeconds).max().orElseThrow();
    byte[] pcm = new byte[2 * (int) Math.round((LEAD + end + 1) * RATE)];
    for (PlayedNote note : notes) {
      int from = (int) Math.round((LEAD + note.onsetSeconds()) * RATE);
      int count = (int) Math.round((note.endSeconds() - note.onsetSeconds() - 0.03) * RATE);
      double hertz = 440 * Math.pow(2, (note.pitch() - 69) / 12.0);
      for (int i = 0; i < count; i++) {
        double value = 0;
        for (int k = 1; k <= 4; k++) {
          value += Math.sin(2 * Math.PI * k * hertz * i / RATE) / k;
        }
        double fade = Math.min(1, Math.min(i, count - i) / (0.015 * RATE));
        int sample = (int) Math.round(9000 * fade * value);
        pcm[2 * (from + i)] = (byte) sample;
        pcm[2 * (from + i) + 1] = (byte) (sample >> 8);
      }
    }
    return pcm;
  }

  private TakeFolder sung(byte[] pcm) throws IOException {
    Setting sung =
        Setting.of(
            MadeTakes.PERFORMANCE.arrangement(),
            MadeTakes.PERFORMANCE.tempoMap(),
            Player.VOICE,
            Optional.empty());
    TakeSettings settings =
        TakeSettings.of(
            MadeTakes.settings("Mira", 0).started(),
            sung,
            MadeTakes.PERFORMANCE,
            "a microphone",
            Optional.of("Mira"));
    TakeFolder folder = MadeTakes.play(home, settings);
    AudioSystem.write(
        new AudioInputStream(
            new ByteArrayInputStream(pcm),
            new AudioFormat(RATE, 16, 1, true, false),
            pcm.length / 2),
        AudioFileFormat.Type.WAVE,
        folder.recording().toFile());
    return folder;
  }

  /** The backing as the device would have sounded it, from the count-in on. */
  private static float[] backing() throws IOException {
    try (InputStream stereo = BackingAudio.stream(MadeTakes.PERFORMANCE, SoundBank.builtIn());
        EarTape tape = SoundFile.tape(stereo, BackingAudio.rate(), 2)) {
      return tape.samples(0, (int) tape.length());
    }
  }

  /** Where second 0 of the take is in {@link #backing}. */
  private static double countIn() {
    return -MadeTakes.PERFORMANCE.tempoMap().secondsAt(MadeTakes.PERFORMANCE.firstBeat());
  }

  @Test
  void a_recorded_take_is_heard_over_its_backing_and_the_voice_is_drawn() throws Exception {
    TakeFolder folder = sung(recording(MadeTakes.notes()));
    JudgedTake judged = folder.judged();
    try (TakeSound sound = TakeSound.of(folder.recording(), judged)) {
      // The ear tells onsets to a few hundredths of a second.
      assertEquals(LEAD, sound.zeroSeconds().orElseThrow(), 0.05);
      PlayedNote first = MadeTakes.notes().get(0);
      double middle = (first.onsetSeconds() + first.endSeconds()) / 2;
      assertEquals(first.pitch(), sound.trace().orElseThrow().at(middle), 0.2);
      assertTrue(Double.isNaN(sound.trace().orElseThrow().at(-0.9)), "nobody sings before it");
    }
    folder.complete(Progress.NONE);

    String page = page(folder);
    assertEquals(judged.phrases().size(), sounds(page).size());
    assertTrue(page.contains("The thin curve is your voice"), "the voice is told of");
    assertTrue(Files.size(folder.path().resolve(TakeFolder.PAPER)) > 10_000);

    // The microphone heard no backing, so it is put under the voice where the player heard it.
    float[] mixed = SoundFile.read(folder.path().resolve(TakeFolder.SOUND)).atEarRate();
    float[] band = backing();
    PlayedNote last = MadeTakes.notes().get(MadeTakes.notes().size() - 1);
    double rest = last.endSeconds() + 0.1;
    double best = 0;
    for (double off = -0.06; off <= 0.06; off += 1.0 / RATE) {
      best = Math.max(best, likeness(mixed, LEAD + rest + off, band, countIn() + rest));
    }
    assertTrue(best > 0.95, "in a rest of the player the backing sounds alone: " + best);
  }

  /** The correlation of two sounds over four tenths of a second, from these seconds on. */
  private static double likeness(float[] one, double from, float[] other, double otherFrom) {
    int a = (int) Math.round(from * RATE);
    int b = (int) Math.round(otherFrom * RATE);
    double both = 0;
    double first = 1e-12;
    double second = 1e-12;
    for (int i = 0; i < 0.4 * RATE; i++) {
      both += one[a + i] * other[b + i];
      first += one[a + i] * one[a + i];
      second += other[b + i] * other[b + i];
    }
    return both / Math.sqrt(first * second);
  }

  @Test
  void a_recording_that_heard_the_backing_is_left_as_it_is() throws Exception {
    byte[] pcm = recording(MadeTakes.notes());
    float[] band = backing();
    int later = (int) Math.round((LEAD - countIn()) * RATE);
    for (int i = 0; i < pcm.length / 2; i++) {
      int at = i - later;
      double added = at >= 0 && at < band.length ? 0.5 * band[at] : 0;
      int voice = (short) ((pcm[2 * i] & 0xFF) | pcm[2 * i + 1] << 8);
      int sample = (int) Math.max(-32767, Math.min(32767, voice + 32767 * added));
      pcm[2 * i] = (byte) sample;
      pcm[2 * i + 1] = (byte) (sample >> 8);
    }
    TakeFolder folder = sung(pcm);
    folder.complete(Progress.NONE);
    assertFalse(Files.exists(folder.path().resolve(TakeFolder.SOUND)), "it has a recording");
    assertEquals(folder.judged().phrases().size(), sounds(page(folder)).size());
  }

  @Test
  void a_recording_of_something_else_is_not_taken_for_the_take() {
    List<PlayedNote> one = List.of(new PlayedNote(1, 0.5, 60, 0, 0.7, 1));
    List<PlayedNote> other =
        Stream.iterate(0, i -> i + 1)
            .limit(12)
            .map(i -> new PlayedNote(i * 1.37 * (1 + i % 3), 0.5, 60 + i % 5, 0, 0.7, 1))
            .toList();
    assertEquals(Optional.empty(), TakeSound.lead(one, other));
    assertEquals(Optional.empty(), TakeSound.lead(List.of(), other));
    assertEquals(0.0, TakeSound.lead(other, other).orElseThrow(), 1e-9);
  }
}
