package holdfast.report;

import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.listening.PlayedNote;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.session.Coach;
import holdfast.session.DemoStudent;
import holdfast.session.DemoTake;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Takes and occasions that the tests of the report share. */
public final class Takes {

  static final LocalDate DAY = LocalDate.of(2026, 11, 25);

  private Takes() {}

  private static final JudgedTake DEMO = judgedDemo();

  /** The take that ships with the program. */
  static JudgedTake demo() {
    return DEMO;
  }

  private static JudgedTake judgedDemo() {
    DemoTake demo = DemoTake.shipped();
    return Coach.judge(
        Setting.of(demo.chart(), TempoMap.steady(demo.tempo()), Player.KEYBOARD, Optional.empty()),
        demo.played(),
        phrase -> {});
  }

  /** Four notes sung again and again, sinking by so many cents over the whole. */
  static JudgedTake sung(int choruses, double drift) {
    Chart chart = ChartLibrary.open("slow-ferry");
    double seconds = choruses * chart.form().lengthBeats();
    int[] idea = {52, 55, 57, 55};
    int[] steps = {0, 0, 2, -1, 0, 5, 0, 1};
    List<PlayedNote> notes = new ArrayList<>();
    for (int bar = 0; 4 * bar + 4 <= seconds; bar++) {
      for (int i = 0; i < idea.length; i++) {
        double onset = 4 * bar + 0.5 * i + 0.03;
        int pitch = idea[i] + steps[bar % steps.length];
        double cents = drift * onset / seconds + 14 * Math.sin(37 * onset);
        notes.add(new PlayedNote(onset, 0.45, pitch, cents, 0.7, 0.9));
      }
    }
    return Coach.judge(
        Setting.of(chart, TempoMap.steady(60), Player.VOICE, Optional.empty()),
        notes,
        phrase -> {});
  }

  /** An idea, and then only other things. */
  static JudgedTake unrelated() {
    Chart chart = ChartLibrary.open("paper-boats");
    List<Note> line = new ArrayList<>();
    List<String> bars =
        List.of(
            "C5/0.5 A4/0.5 G4 A4/0.5 F4/1",
            "F4/0.25 G4/0.25 A4/0.25 Bb4/0.25 C5/0.25 D5/0.25 E5/0.25 F5/1.5",
            "Bb4/1.5 D5/0.25 G5/0.25 D5/1.5",
            "E4/0.25 G4/0.25 Bb4/0.25 C5/0.25 E5/2",
            "A5/2 F5/1",
            "Db4/0.25 F4/0.25 Ab4/0.25 C5/0.25 Db5/0.25 F5/2");
    for (int bar = 0; bar < bars.size(); bar++) {
      for (Note note : IdeaNotation.parse(bars.get(bar))) {
        line.add(new Note(4.0 * bar + note.onsetBeats(), note.durationBeats(), note.pitch()));
      }
    }
    Setting setting = Setting.of(chart, TempoMap.steady(60), Player.KEYBOARD, Optional.empty());
    return Coach.judge(setting, new DemoStudent(3).play(line, setting.beats()), phrase -> {});
  }

  /** A take of so many minutes at a keyboard, an idea in every bar, now and then a new one. */
  public static JudgedTake long_(int minutes) {
    Chart chart = ChartLibrary.open("slow-ferry");
    List<Note> idea = IdeaNotation.parse("E4/0.5 G4/0.5 A4 G4/0.5 E4");
    List<Note> other = IdeaNotation.parse("C5/0.25 B4/0.25 A4/0.25 G4/0.25 F4/0.25 E4/0.25 D4 C4");
    List<Note> line = new ArrayList<>();
    for (int bar = 0; bar < minutes * 60 / 4; bar++) {
      for (Note note : bar % 7 == 5 ? other : idea) {
        int move = bar % 3 == 1 ? 2 : bar % 5 == 2 ? -1 : 0;
        line.add(
            new Note(4.0 * bar + note.onsetBeats(), note.durationBeats(), note.pitch() + move));
      }
    }
    Setting setting = Setting.of(chart, TempoMap.steady(60), Player.KEYBOARD, Optional.empty());
    return Coach.judge(setting, new DemoStudent(5).play(line, setting.beats()), phrase -> {});
  }

  /** Six takes before this one. */
  static Progress progress(boolean sung) {
    List<Progress.Take> takes = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      takes.add(
          new Progress.Take(
              DAY.minusDays(21 - 3L * i),
              56 + 2 * i,
              14 + i % 3,
              4 + i,
              2 + i % 2,
              2 + i,
              OptionalDouble.of(0.78 + 0.02 * i),
              sung ? OptionalDouble.of(-50 + 8 * i) : OptionalDouble.empty()));
    }
    return new Progress(takes);
  }
}
