package holdfast.practice;

import holdfast.backing.Playback;
import holdfast.backing.SoundPlayer;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.Moment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/**
 * A lesson live: the real take over a silent output that goes step by step, and hands that press
 * the keys of a test cable on the beats that the test asks for.
 */
class Stage implements PracticeAudience {

  final List<Passage> passages = new ArrayList<>();
  final List<CoachLine> lines = new ArrayList<>();
  final List<Outcome> outcomes = new ArrayList<>();
  final List<JudgedPhrase> phrases = new ArrayList<>();
  final List<String> notices = new ArrayList<>();
  final SteppedOut out = new SteppedOut();

  private final AtomicReference<Playback> playback = new AtomicReference<>();
  private final Hands hands = new Hands(out, playback::get);

  /** Plays a lesson to its end on a cable that is plugged in. */
  PracticeTake play(Lesson lesson) throws InterruptedException {
    return play(lesson, take -> {});
  }

  PracticeTake play(Lesson lesson, Consumer<JudgedTake> then) throws InterruptedException {
    try (SoundPlayer player = new SoundPlayer(out)) {
      PracticeTake take = new PracticeTake(lesson, Player.KEYBOARD, this, Keeper.NOBODY);
      then.accept(take.play(new WatchedBand(player, playback::set), hands));
      return take;
    }
  }

  /** Plays these notes, in beats of the take. */
  void hands(List<Note> notes) {
    hands.play(notes);
  }

  @Override
  public void passage(Passage passage) {
    passages.add(passage);
  }

  @Override
  public void coachSays(CoachLine line) {
    lines.add(line);
  }

  @Override
  public void outcome(Outcome outcome) {
    outcomes.add(outcome);
  }

  @Override
  public void moment(Moment moment) {
    // Nobody looks.
  }

  @Override
  public void phrase(JudgedPhrase phrase) {
    phrases.add(phrase);
  }

  @Override
  public void notice(String sentence) {
    notices.add(sentence);
  }

  @Override
  public Optional<Wish> wish() {
    return Optional.empty();
  }
}
