package holdfast.command;

import holdfast.command.live.LiveScreen;
import holdfast.harmony.ToneName;
import holdfast.practice.CoachLine;
import holdfast.practice.Outcome;
import holdfast.practice.Passage;
import holdfast.practice.PracticeAudience;
import holdfast.session.JudgedPhrase;
import holdfast.session.Moment;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.Optional;
import java.util.stream.Collectors;

/** A practice take in the terminal: who speaks over which chord, and what came of it. */
final class TerminalCoach implements PracticeAudience {

  private final LiveScreen screen;
  private final TerminalAudience audience;
  private final Optional<Key> key;

  /**
   * A practice take on the screen.
   *
   * @param audience shows what every take shows, and reads the keys
   */
  TerminalCoach(LiveScreen screen, TerminalAudience audience, Optional<Key> key) {
    this.screen = screen;
    this.audience = audience;
    this.key = key;
  }

  @Override
  public void passage(Passage passage) {
    if (passage.who() == Passage.Who.STUDENT) {
      screen.say("you  over " + passage.chord());
    }
  }

  @Override
  public void coachSays(CoachLine line) {
    Harmony chord = line.passage().chords().get(0).harmony();
    String notes =
        line.notes().stream()
            .map(note -> ToneName.shown(note.pitch(), chord, key))
            .collect(Collectors.joining(" "));
    screen.say("I    over " + line.passage().chord() + ": " + notes);
  }

  @Override
  public void outcome(Outcome outcome) {
    screen.say("     " + outcome.sentence());
  }

  @Override
  public void moment(Moment moment) {
    audience.moment(moment);
  }

  @Override
  public void phrase(JudgedPhrase phrase) {
    audience.phrase(phrase);
  }

  @Override
  public void notice(String sentence) {
    audience.notice(sentence);
  }

  @Override
  public Optional<Wish> wish() {
    return audience.wish();
  }
}
