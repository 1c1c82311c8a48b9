package holdfast.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a hand played comes out as a line that another hand can type and read. */
class WrittenIdeaTest {

  /** How far a hand strays from the beat it means; in beats. */
  private static final double STRAY = 0.02;

  /** A hand that comes late throughout; in beats. */
  private static final double LATE = 0.08;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "D4/0.5 F4/0.5 A4 G4/0.5 F4/1.5",
        "C5/1.5 A4/0.25 B4/0.25 E4 A4",
        "G4/2/3 Bb4/1/3 Eb5 Bb4 G4",
        "-/0.5 E4/0.5 G4 A4/0.5 G4/1.5"
      })
  void a_played_idea_is_written_in_the_rhythm_that_was_meant(String meant) {
    Random random = new Random(20261125);
    for (int take = 0; take < 20; take++) {
      List<Note> played = new ArrayList<>();
      for (Note note : IdeaNotation.parse(meant)) {
        double stray = STRAY * (2 * random.nextDouble() - 1);
        played.add(
            new Note(
                16 + LATE + note.onsetBeats() + stray, 0.85 * note.durationBeats(), note.pitch()));
      }
      String line = IdeaNotation.print(WrittenIdea.ofPlayed(played, Metre.COMMON));
      assertEquals(onsets(IdeaNotation.parse(meant)), onsets(IdeaNotation.parse(line)), line);
    }
  }

  private static List<String> onsets(List<Note> notes) {
    return notes.stream()
        .map(note -> String.format("%.3f %d", note.onsetBeats(), note.pitch()))
        .toList();
  }
}
