package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.ChartLibrary;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.report.picture.TimelineRow;
import holdfast.session.Coach;
import holdfast.session.DemoStudent;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Which notes stand in which row of the picture of one chorus. */
class TimelineSectionTest {

  private static int begun(TimelineRow row) {
    return (int) row.notes().stream().filter(row::begins).count();
  }

  private static int notes(JudgedTake take, int chorus) {
    return take.phrases().stream()
        .filter(phrase -> phrase.place().chorus() == chorus)
        .mapToInt(phrase -> phrase.notes().size())
        .sum();
  }

  /** The demo student comes in some hundredths of a beat before a bar line now and then. */
  @Test
  void every_note_begins_in_one_row_and_in_no_other_however_early_it_came() {
    for (int bars : List.of(2, 4)) {
      for (int chorus : List.of(1, 2)) {
        List<TimelineRow> rows = TimelineSection.rows(Takes.demo(), chorus, Optional.empty(), bars);
        assertEquals(8 / bars, rows.size());
        assertEquals(
            notes(Takes.demo(), chorus),
            rows.stream().mapToInt(TimelineSectionTest::begun).sum(),
            "chorus " + chorus + " in rows of " + bars);
      }
    }
  }

  @Test
  void a_pick_up_before_the_first_bar_is_shown() {
    Setting setting =
        Setting.of(
            ChartLibrary.open("paper-boats"),
            TempoMap.steady(60),
            Player.KEYBOARD,
            Optional.empty());
    List<Note> line = new ArrayList<>();
    for (int bar = 0; bar < 8; bar += 2) {
      for (Note note : IdeaNotation.parse("F4/0.5 G4/0.5 A4/1 C5/0.5 A4/1.5")) {
        double beat = 4.0 * bar - 1 + note.onsetBeats();
        line.add(new Note(beat, note.durationBeats(), note.pitch()));
      }
    }
    JudgedTake take =
        Coach.judge(setting, new DemoStudent(2).play(line, setting.beats()), phrase -> {});
    List<TimelineRow> rows = TimelineSection.rows(take, 1, Optional.empty(), 4);
    assertEquals(1, rows.get(0).leadBeats());
    assertEquals(0, rows.get(1).leadBeats());
    assertTrue(rows.get(0).notes().get(0).onset() < -0.5, "the pick-up is there");
    assertEquals(notes(take, 1), rows.stream().mapToInt(TimelineSectionTest::begun).sum());
  }
}
