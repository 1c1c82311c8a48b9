package holdfast.book;

import holdfast.backing.Arrangement;
import holdfast.backing.Performance;
import holdfast.listening.Heard;
import holdfast.listening.PlayedNote;
import holdfast.motif.Player;
import holdfast.session.Coach;
import holdfast.session.DemoTake;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** Takes as the demo student plays them, written the way a live take is, without waiting. */
public final class MadeTakes {

  /** The demo student's chart and line. */
  static final DemoTake DEMO = DemoTake.shipped();

  /** The take that she plays twice through. */
  static final Performance PERFORMANCE =
      Performance.of(Arrangement.of(DEMO.chart()).at(DEMO.tempo()), DemoTake.CHORUSES);

  static final Setting SETTING =
      Setting.of(
          PERFORMANCE.arrangement(), PERFORMANCE.tempoMap(), Player.KEYBOARD, Optional.empty());

  private static final LocalDateTime FIRST_DAY = LocalDateTime.of(2026, 9, 1, 17, 30);

  private MadeTakes() {}

  /** What she plays, in seconds of the take. */
  static List<PlayedNote> notes() {
    return DEMO.played(PERFORMANCE.tempoMap());
  }

  /** How the take of this day is set up. */
  static TakeSettings settings(String student, int day) {
    return TakeSettings.of(
        FIRST_DAY.plusDays(day), SETTING, PERFORMANCE, "a keyboard", Optional.of(student));
  }

  /** Plays a whole take into the book's folder. */
  public static TakeFolder play(Path home, String student, int day) {
    try {
      return play(home, settings(student, day));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  static TakeFolder play(Path home, TakeSettings settings) throws IOException {
    try (KeptTake take = KeptTake.begin(home.resolve(Book.TAKES), settings, PERFORMANCE)) {
      take.hear(Heard.recording(notes()));
      JudgedTake judged = Coach.judge(SETTING, notes(), phrase -> take.phraseEnded(0));
      take.finish(judged, Optional.empty());
      return take.folder();
    }
  }
}
