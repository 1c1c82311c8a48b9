package holdfast.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.ChildProgram;
import holdfast.backing.Performance;
import holdfast.listening.Heard;
import holdfast.listening.PlayedNote;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.practice.invent.Invented;
import holdfast.practice.invent.Vamp;
import holdfast.session.LiveTake;
import holdfast.session.Setting;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A session of inventing is no take in which an idea was lost. */
class InventedBookTest {

  private static final List<String> IDEAS =
      List.of(
          "D4/0.5 F4/0.5 A4 G4/0.5 F4/1.5",
          "C5/1.5 A4/0.25 B4/0.25 E4 A4",
          "D5/0.5 F5/0.5 A5 G5/0.5 F5/1.5");

  @TempDir Path home;

  @Test
  void one_that_was_broken_off_is_finished_as_what_it_was() throws Exception {
    assertEquals(0, child().waitFor(), Files.readString(home.resolve("said.txt")));
    try (Book book = Book.open(home)) {
      assertEquals(1, book.said().size(), "it was broken off");
      Entry entry = book.find(Search.ALL).get(0);
      Entry.Fluency fluency = entry.fluency().orElseThrow();
      assertEquals(2, fluency.different(), "the third is the first, an octave up");
      assertEquals(3, fluency.said());
      assertEquals(0.35, fluency.minutes(), 0.1);
      assertEquals(List.of(), book.ideas(Optional.empty()), "nothing was carried");
      assertEquals(List.of(), book.charts(Optional.empty()), "two bars of a chord are no tune");
      book.readAgain();
      assertEquals(entry, book.find(Search.ALL).get(0));
    }
    Path folder = home.resolve(Book.TAKES).resolve("2026-09-01_17-30-00_inventing-over-dm7");
    Invented kept = Invented.read(folder.resolve(Invented.FILE));
    assertEquals(List.of("Dm7"), kept.chords());
    assertEquals(List.of(1, 2), List.copyOf(kept.ideas().keySet()));
    String report = Files.readString(folder.resolve(TakeFolder.REPORT));
    assertTrue(report.contains("You found 2 different ideas over Dm7."), report);
  }

  private Process child() throws IOException {
    return new ProcessBuilder(
            ChildProgram.java(),
            "-Dholdfast.data=" + home,
            "-cp",
            ChildProgram.classPath(),
            InventedBookTest.class.getName(),
            home.toString())
        .redirectErrorStream(true)
        .redirectOutput(home.resolve("said.txt").toFile())
        .start();
  }

  /** Plays three ideas, eight seconds apart, and never comes to the end. */
  public static void main(String[] args) throws IOException {
    Path home = Path.of(args[0]);
    Performance performance = new Vamp(List.of("Dm7"), 1, 60).performance(Optional.empty());
    Setting setting =
        Setting.of(
            performance.arrangement(), performance.tempoMap(), Player.KEYBOARD, Optional.empty());
    TakeSettings settings =
        TakeSettings.of(
                LocalDateTime.of(2026, 9, 1, 17, 30),
                setting,
                performance,
                "a keyboard",
                Optional.of("Mira"))
            .practisedBy(Optional.of(Invented.WAY));
    try (KeptTake take = KeptTake.begin(home.resolve(Book.TAKES), settings, performance)) {
      for (int i = 0; i < IDEAS.size(); i++) {
        double start = 8.0 * i;
        List<PlayedNote> notes =
            IdeaNotation.parse(IDEAS.get(i)).stream().map(note -> played(note, start)).toList();
        take.hear(Heard.recording(notes));
        take.phraseEnded(start + 6);
        take.mark(start + 6.1, LiveTake.NEW_IDEA_MARK);
      }
    }
  }

  private static PlayedNote played(Note note, double start) {
    return new PlayedNote(
        start + note.onsetBeats(), 0.9 * note.durationBeats(), note.pitch(), 0, 0.6, 1);
  }
}
