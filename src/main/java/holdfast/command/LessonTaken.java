package holdfast.command;

import holdfast.backing.SoundPlayer;
import holdfast.backing.sound.SoundChoice;
import holdfast.book.KeptTake;
import holdfast.book.TakeSettings;
import holdfast.command.live.Key;
import holdfast.command.live.LiveScreen;
import holdfast.listening.NoteSource;
import holdfast.practice.Lesson;
import holdfast.practice.Plan;
import holdfast.practice.PracticeTake;
import holdfast.practice.Way;
import holdfast.report.JudgementText;
import holdfast.report.PlanText;
import holdfast.session.Feedback;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.session.input.ReadyInput;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.Function;

/**
 * A lesson in one of the ways of practising, in the terminal, from the first count to its report.
 *
 * @param lesson what is practised
 * @param chart the chart's name as it is typed, for the commands of the plan
 * @param key the key that was asked for
 * @param student a first name or nickname
 * @param assignment the number of the assignment that the lesson answers
 */
record LessonTaken(
    Lesson lesson,
    String chart,
    Optional<String> key,
    Optional<String> student,
    Optional<String> assignment) {

  /**
   * Takes the lesson.
   *
   * @param whoPlays who is listened to, once the sound is on
   * @return the take it left
   */
  KeptTake play(
      SoundChoice sound, Function<SoundPlayer, ReadyInput> whoPlays, Feedback tell, PrintWriter out)
      throws InterruptedException, IOException {
    try (SoundPlayer band = SoundPlayer.open(sound);
        LiveScreen screen = LiveScreen.open(out)) {
      ReadyInput ready = whoPlays.apply(band);
      NoteSource source = ready.source();
      Setting setting = lesson.setting(ready.player());
      Way wanted = lesson.exercise().way();
      screen.say(wanted.title() + ". " + wanted.explanation());
      screen.say(SoundChoice.HEARING);
      ready.remarks().forEach(screen::say);
      band.trouble().ifPresent(screen::say);
      screen.say("I listen to " + source.name() + ".");
      if (screen.hasKeys()) {
        screen.say(Key.help());
      }
      screen.say("");
      TakeSettings settings =
          TakeSettings.of(
                  LocalDateTime.now(ZoneId.systemDefault()),
                  setting,
                  lesson.performance(),
                  source.name(),
                  student)
              .answering(assignment)
              .practisedBy(Optional.of(wanted.word()));
      try (KeptTake keeper = KeptTake.begin(KeptTake.takes(), settings, lesson.performance())) {
        TerminalAudience audience = new TerminalAudience(screen, tell, setting);
        TerminalCoach coach = new TerminalCoach(screen, audience, setting.changes().key());
        PracticeTake take = new PracticeTake(lesson, ready.player(), coach, keeper);
        JudgedTake judged = take.play(band, source.keepingSoundIn(keeper.recording()));
        screen.say("");
        screen.say(take.summary());
        new JudgementText(setting).close(judged).forEach(screen::say);
        screen.say("");
        Plan plan = Plan.after(lesson.exercise(), judged, take.outcomes(), chart, key);
        keeper.finish(judged, take.performance(), student, Optional.of(plan)).forEach(screen::say);
        screen.say("");
        PlanText.of(plan).forEach(screen::say);
        return keeper;
      }
    }
  }
}
