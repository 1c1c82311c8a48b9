package holdfast.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayedNote;
import holdfast.listening.midi.OutsideProgram;
import holdfast.melody.Note;
import holdfast.session.JudgedPhrase;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The MIDI file of a whole take, read by programs that know nothing of us: midicsv 1.1 and abcmidi
 * (Debian). midi2abc writes a tune as it understands it, to the sixteenth; abc2midi plays that tune
 * back. Skipped where they are missing.
 */
class TakeMidiReadByOthersTest {

  @TempDir Path folder;

  private Path take() {
    return MadeTakes.play(folder, "Mira", 0).path().resolve(TakeFolder.MIDI);
  }

  /** The records of one kind, each with its fields. */
  private List<String[]> records(Path midi, String kind) throws Exception {
    return OutsideProgram.midicsv(folder, midi).stream()
        .map(line -> line.split(", "))
        .filter(fields -> fields[2].equals(kind))
        .toList();
  }

  private List<String[]> struck(Path midi, String track) throws Exception {
    return records(midi, "Note_on_c").stream()
        .filter(fields -> fields[0].equals(track) && !fields[5].equals("0"))
        .toList();
  }

  private String playersTrack(Path midi) throws Exception {
    return records(midi, "Title_t").stream()
        .filter(fields -> fields[3].equals("\"" + TakeMidi.PLAYER_TRACK + "\""))
        .findFirst()
        .orElseThrow()[0];
  }

  @Test
  void midicsv_reads_each_note_at_its_beat() throws Exception {
    Path midi = take();
    int ticks = Integer.parseInt(records(midi, "Header").get(0)[5]);
    List<String[]> struck = struck(midi, playersTrack(midi));
    List<PlayedNote> played = MadeTakes.notes();
    assertEquals(played.size(), struck.size());
    double countIn = -MadeTakes.PERFORMANCE.firstBeat();
    for (int i = 0; i < played.size(); i++) {
      assertEquals(played.get(i).pitch(), Integer.parseInt(struck.get(i)[4]));
      double beat = Double.parseDouble(struck.get(i)[1]) / ticks - countIn;
      double wanted = MadeTakes.SETTING.beats().beatAt(played.get(i).onsetSeconds());
      // A tick either way.
      assertEquals(wanted, beat, 1.5 / ticks);
    }
    assertTrue(
        records(midi, "Marker_t").stream().anyMatch(m -> m[3].equals("\"Bar 1\"")),
        "the file says where bar 1 is");
  }

  @Test
  void abcmidi_plays_back_the_same_notes_in_order() throws Exception {
    Path midi = take();
    String tune = OutsideProgram.midi2abc(folder, midi);
    assertTrue(tune.contains("M: 4/4") && tune.contains("K:F"), tune);
    Path again = OutsideProgram.abc2midi(folder, tune);
    List<Integer> meant =
        new TakeFolder(midi.getParent())
            .judged().phrases().stream()
                .map(JudgedPhrase::notes)
                .flatMap(List::stream)
                .map(Note::pitch)
                .toList();
    // abc2midi keeps the order of voices behind a track of its own; the player's is the first.
    List<Integer> heard =
        struck(again, "2").stream().map(fields -> Integer.valueOf(fields[4])).toList();
    assertEquals(meant, heard);
  }
}
