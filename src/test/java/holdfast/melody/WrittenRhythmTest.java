package holdfast.melody;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.time.Metre;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rhythms as they would be written; common practice, no source. */
class WrittenRhythmTest {

  private static String written(Metre metre, double... onsetsAndEnds) {
    List<Note> played = new java.util.ArrayList<>();
    for (int i = 0; i < onsetsAndEnds.length; i += 2) {
      played.add(new Note(onsetsAndEnds[i], onsetsAndEnds[i + 1] - onsetsAndEnds[i], 60));
    }
    return IdeaNotation.print(WrittenRhythm.of(played, metre));
  }

  @Test
  void a_player_s_spread_is_taken_off() {
    assertEquals("C4/0.5 C4/0.5 C4", written(Metre.COMMON, 0.02, 0.46, 0.53, 0.97, 1.04, 1.95));
    assertEquals("C4 C4", written(Metre.COMMON, -0.03, 0.93, 0.98, 2.08));
  }

  @Test
  void triplets_are_heard_as_triplets() {
    assertEquals(
        "C4/1/3 C4/1/3 C4/1/3 C4", written(Metre.COMMON, 0, 0.34, 0.33, 0.66, 0.67, 1, 1, 2));
  }

  @Test
  void a_written_line_stays_as_it_is() {
    for (String line :
        List.of(
            "C4/0.125 D4/0.875", "C4/1/3 D4/2/3", "E4/0.2 F4/0.8", "C4/0.5 | D4/1.5", "C4/2/7")) {
      assertEquals(
          line, IdeaNotation.print(WrittenRhythm.of(IdeaNotation.parse(line), Metre.COMMON)));
    }
  }

  @Test
  void sixteenths_are_counted_in_the_metre_s_own_beats() {
    // An eighth is the beat: 0.5 beats are a sixteenth.
    assertEquals("C4/0.5 C4/1.5", written(new Metre(6, 8), 0.03, 0.4, 0.52, 2.1));
  }

  @Test
  void no_note_becomes_nothing() {
    assertEquals("C4/0.25", written(Metre.COMMON, 0.03, 0.07));
  }

  @Test
  void a_grace_note_and_its_main_note_follow_one_another() {
    List<Note> played =
        List.of(new Note(4.71, 0.3, 70), new Note(4.76, 0.5, 71), new Note(4.8, 0.4, 72));
    List<Note> written = WrittenRhythm.of(played, new Metre(4, 4));
    assertEquals(
        List.of(70, 71, 72),
        IdeaNotation.parse(IdeaNotation.print(written)).stream().map(Note::pitch).toList());
  }
}
