package holdfast.practice;

import holdfast.backing.BackingEvent;
import holdfast.backing.BackingPlayer;
import holdfast.backing.Performance;
import holdfast.listening.NoteSource;
import holdfast.motif.Player;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.LiveTake;
import holdfast.session.Partner;
import java.util.List;

/**
 * A lesson as it is played: the backing sounds, the coach says its part, the ear is open in the
 * student's turns. Knows neither which instrument is listened to nor where it is shown.
 */
public final class PracticeTake {

  private final Lesson lesson;
  private final Player player;
  private final PracticeAudience audience;
  private final Keeper keeper;
  private List<Outcome> outcomes = List.of();
  private List<BackingEvent> said = List.of();

  /**
   * A take to be played.
   *
   * @param lesson what is practised
   * @param player how exactly this player's notes can be taken
   * @param audience whoever it is shown to
   * @param keeper told everything that is heard at once
   */
  public PracticeTake(Lesson lesson, Player player, PracticeAudience audience, Keeper keeper) {
    this.lesson = lesson;
    this.player = player;
    this.audience = audience;
    this.keeper = keeper;
  }

  /**
   * Plays it to its end, or until the student stops it; gives what was said about all that the
   * student played.
   *
   * @throws InterruptedException when it is broken off from outside; what was heard is kept
   */
  public JudgedTake play(BackingPlayer band, NoteSource source) throws InterruptedException {
    if (lesson.exercise().way() == Way.CLIMB) {
      Climb climb = new Climb(lesson, audience);
      JudgedTake take = live(climb).play(band, lesson.performance(), source);
      outcomes = climb.outcomes();
      return take;
    }
    Duet duet = new Duet(lesson, player, audience);
    JudgedTake take =
        live(duet).play(band, lesson.performance(), new InTurn(source, duet::speaksAt));
    duet.end();
    outcomes = duet.outcomes();
    said = duet.said();
    return take;
  }

  /** What came of each passage of the student's; empty before the take is played. */
  public List<Outcome> outcomes() {
    return outcomes;
  }

  /** What was played, the coach's line with it, for the file of the take. */
  public Performance performance() {
    return lesson.performance().withPlayedLine(said);
  }

  /** What it came to, in one sentence. */
  public String summary() {
    long reached = outcomes.stream().filter(Outcome::reached).count();
    String of = reached + " of " + outcomes.size();
    return switch (lesson.exercise().way()) {
      case HEAD_START, SWAP, TWELVE_KEYS ->
          "Over " + of + " chords of yours the idea was kept and sat.";
      case SING_BACK -> "You sang back " + of + " lines.";
      case CLIMB -> of + " rounds held.";
      case GUESS_NEXT -> of + " guesses were mine as well.";
    };
  }

  private LiveTake live(Partner partner) {
    return new LiveTake(
        lesson.arrangement().chart(),
        player,
        lesson.givenIdea(),
        new Steadfast(audience),
        keeper,
        partner);
  }
}
