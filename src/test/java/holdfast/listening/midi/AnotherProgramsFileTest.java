package holdfast.listening.midi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.Metre;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A take written by another program: abc2midi makes the file from ABC notation (Debian package
 * abcmidi), midicsv (Debian package midicsv) is a second reader of it.
 */
class AnotherProgramsFileTest {

  private static final String TUNE =
      """
      X:1
      T:Three Steps Down
      M:4/4
      L:1/4
      Q:1/4=60
      K:F
      %%MIDI program 66
      "Dm7"D F A c | "G7"B2 D2 | z4 | "C"E G c2- | c4 |
      [M:3/4][Q:1/4=90] "F"F A c | F3 |
      """;

  /** As written above: onset and length in quarters, pitch with C4 = 60; B is flat in F. */
  private static final List<Note> WRITTEN =
      List.of(
          new Note(0, 1, 62),
          new Note(1, 1, 65),
          new Note(2, 1, 69),
          new Note(3, 1, 72),
          new Note(4, 2, 70),
          new Note(6, 2, 62),
          new Note(12, 1, 64),
          new Note(13, 1, 67),
          new Note(14, 6, 72),
          new Note(20, 1, 65),
          new Note(21, 1, 69),
          new Note(22, 1, 72),
          new Note(23, 3, 65));

  /** abc2midi starts each note one tick of 480 late. */
  private static final double TICK = 1.0 / 480;

  @TempDir Path folder;

  @Test
  void the_tune_comes_back_note_by_note_over_its_accompaniment() throws Exception {
    RecordedTake take = MidiTakeFile.read(OutsideProgram.abc2midi(folder, TUNE));
    LineChoice choice = LineChoice.byItself(take);
    assertEquals(Optional.of("Three Steps Down"), take.title());
    assertEquals(Optional.of(Metre.COMMON), take.openingMetre());
    assertEquals(new RecordedTake.KeyChange(0, -1, false), take.keys().get(0));
    assertTrue(take.parts().size() > 1, "abc2midi plays the chord symbols too");

    TakePlacement placement =
        new BarOne(Metre.COMMON, 60).of(take, choice.line(), OptionalDouble.empty());
    List<Note> heard = placement.notes(choice.line());
    assertEquals(WRITTEN.size(), heard.size());
    for (int i = 0; i < WRITTEN.size(); i++) {
      assertEquals(WRITTEN.get(i).pitch(), heard.get(i).pitch());
      assertEquals(WRITTEN.get(i).onsetBeats(), heard.get(i).onsetBeats(), 1.5 * TICK);
      assertEquals(WRITTEN.get(i).durationBeats(), heard.get(i).durationBeats(), 1.5 * TICK);
    }
  }

  @Test
  void seconds_follow_the_tempo_change() throws Exception {
    RecordedTake take = MidiTakeFile.read(OutsideProgram.abc2midi(folder, TUNE));
    List<PlayedNote> line = LineChoice.byItself(take).line();
    // 20 quarters at 60 are 20 s; from there a quarter at 90 lasts 2/3 s.
    assertEquals(20 + 3 * 2.0 / 3, line.get(12).onsetSeconds(), 2e-3);
  }

  @Test
  void a_second_reader_finds_the_same_notes() throws Exception {
    Path midi = OutsideProgram.abc2midi(folder, TUNE);
    RecordedTake take = MidiTakeFile.read(midi);
    List<String> ours =
        take.parts().stream()
            .flatMap(part -> part.notes().stream().map(note -> told(take, part, note)))
            .sorted()
            .toList();
    assertEquals(notesOf(OutsideProgram.midicsv(folder, midi)), ours);
  }

  private static String told(RecordedTake take, TakePart part, PlayedNote note) {
    return String.join(
        " ",
        "" + part.track(),
        "" + Math.round(take.tempo().beatAt(note.onsetSeconds()) / TICK),
        "" + part.channel(),
        "" + note.pitch(),
        "" + Math.round(note.loudness() * 127));
  }

  /** Each note-on of midicsv's records: track, tick, Note_on_c, channel from 0, key, velocity. */
  private static List<String> notesOf(List<String> records) {
    List<String> notes =
        records.stream()
            .map(record -> record.split(", *", -1))
            .filter(f -> f[2].equals("Note_on_c") && !f[5].equals("0"))
            .map(f -> String.join(" ", f[0], f[1], "" + (Integer.parseInt(f[3]) + 1), f[4], f[5]))
            .sorted()
            .toList();
    assertTrue(notes.size() > WRITTEN.size());
    return notes;
  }
}
