package holdfast.book;

import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayedNote;
import holdfast.session.Coach;
import holdfast.session.JudgedTake;
import holdfast.session.LiveTake;
import holdfast.session.Setting;
import holdfast.session.log.LoggedTake;
import java.util.List;

/**
 * Judges a take again from what was written down while it was played, new ideas included. Bars that
 * were looped in the middle of a take are taken as the form.
 */
final class Replay {

  private Replay() {}

  /** The take, judged as it would be now. */
  static JudgedTake judge(Setting setting, LoggedTake logged) {
    return judge(
        setting,
        logged.notes(),
        logged.marks().stream()
            .filter(mark -> mark.text().equals(LiveTake.NEW_IDEA_MARK))
            .map(LoggedTake.Mark::seconds)
            .toList());
  }

  /**
   * Judges notes.
   *
   * @param newIdeas when the player said that the next phrase is a new idea, in seconds of the take
   */
  static JudgedTake judge(Setting setting, List<PlayedNote> notes, List<Double> newIdeas) {
    Coach coach = new Coach(setting);
    Heard all = Heard.recording(notes);
    double from = Double.NEGATIVE_INFINITY;
    for (double mark : newIdeas.stream().sorted().toList()) {
      coach.hear(between(all, from, mark));
      coach.newIdea();
      from = mark;
    }
    coach.hear(between(all, from, Math.max(from, all.upToSeconds())));
    coach.rest();
    return coach.inHindsight();
  }

  private static Heard between(Heard all, double from, double to) {
    List<PlayEvent> events =
        all.events().stream().filter(e -> e.seconds() > from && e.seconds() <= to).toList();
    return new Heard(events, to);
  }
}
