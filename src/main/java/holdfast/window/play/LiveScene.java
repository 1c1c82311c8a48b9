package holdfast.window.play;

import holdfast.backing.Playback;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.practice.CoachLine;
import holdfast.practice.Outcome;
import holdfast.practice.Passage;
import holdfast.practice.PracticeAudience;
import holdfast.session.JudgedPhrase;
import holdfast.session.Keeper;
import holdfast.session.Moment;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * Where the thread of a take and the event thread meet: the one puts in what happened, the other
 * takes it out at its next frame. Neither waits for the other.
 */
public final class LiveScene implements PracticeAudience {

  private volatile Optional<Playback> playback = Optional.empty();
  private volatile Optional<Moment> moment = Optional.empty();
  private final Queue<JudgedPhrase> phrases = new ConcurrentLinkedQueue<>();
  private final Queue<String> notices = new ConcurrentLinkedQueue<>();
  private final Queue<PlayEvent> events = new ConcurrentLinkedQueue<>();
  private final Queue<Passage> turns = new ConcurrentLinkedQueue<>();
  private final Queue<CoachLine> said = new ConcurrentLinkedQueue<>();
  private final Queue<Outcome> outcomes = new ConcurrentLinkedQueue<>();
  private final Queue<Wish> wishes = new ConcurrentLinkedQueue<>();

  @Override
  public void begins(Playback started) {
    playback = Optional.of(started);
  }

  @Override
  public void moment(Moment now) {
    moment = Optional.of(now);
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
  public void passage(Passage passage) {
    turns.add(passage);
  }

  @Override
  public void coachSays(CoachLine line) {
    said.add(line);
  }

  @Override
  public void outcome(Outcome outcome) {
    outcomes.add(outcome);
  }

  @Override
  public Optional<Wish> wish() {
    return Optional.ofNullable(wishes.poll());
  }

  /** Asks the running take for something. */
  public void ask(Wish wish) {
    wishes.add(wish);
  }

  /** The backing, once it sounds. */
  public Optional<Playback> playback() {
    return playback;
  }

  /** Where the take was a moment ago. */
  public Optional<Moment> moment() {
    return moment;
  }

  /** The phrases that ended since the last look. */
  public List<JudgedPhrase> newPhrases() {
    return drained(phrases);
  }

  /** The sentences that were said since the last look. */
  public List<String> newNotices() {
    return drained(notices);
  }

  /** The turns that began since the last look. */
  public List<Passage> newTurns() {
    return drained(turns);
  }

  /** What the coach began to say since the last look. */
  public List<CoachLine> newSayings() {
    return drained(said);
  }

  /** What came of the player's turns since the last look. */
  public List<Outcome> newOutcomes() {
    return drained(outcomes);
  }

  /** The notes that began or ended since the last look. */
  public List<PlayEvent> newEvents() {
    return drained(events);
  }

  /** A keeper that lets this scene see what the other one keeps. */
  public Keeper watching(Keeper keeper) {
    return new Keeper() {
      @Override
      public void hear(Heard heard) {
        keeper.hear(heard);
        events.addAll(heard.events());
      }

      @Override
      public void phraseEnded(double heardUpToSeconds) {
        keeper.phraseEnded(heardUpToSeconds);
      }

      @Override
      public void mark(double seconds, String text) {
        keeper.mark(seconds, text);
      }

      @Override
      public void tempo(TempoMap beats) {
        keeper.tempo(beats);
      }

      @Override
      public Optional<String> trouble() {
        return keeper.trouble();
      }
    };
  }

  private static <T> List<T> drained(Queue<T> queue) {
    if (queue.isEmpty()) {
      return List.of();
    }
    List<T> all = new ArrayList<>();
    for (T next = queue.poll(); next != null; next = queue.poll()) {
      all.add(next);
    }
    return all;
  }
}
