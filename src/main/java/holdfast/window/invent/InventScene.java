package holdfast.window.invent;

import holdfast.practice.invent.InventingAudience;
import holdfast.practice.invent.Invention;
import holdfast.practice.invent.Starter;
import holdfast.session.JudgedPhrase;
import holdfast.session.Moment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/** Where the thread of an inventing session and the event thread meet. Neither waits. */
final class InventScene implements InventingAudience {

  private volatile Optional<Moment> moment = Optional.empty();
  private final Queue<Invention> ideas = new ConcurrentLinkedQueue<>();
  private final Queue<String> sentences = new ConcurrentLinkedQueue<>();
  private final Queue<Wish> wishes = new ConcurrentLinkedQueue<>();

  @Override
  public void invented(Invention idea) {
    ideas.add(idea);
  }

  @Override
  public void starter(Starter starter) {
    sentences.add(starter.sentence());
  }

  @Override
  public void moment(Moment now) {
    moment = Optional.of(now);
  }

  @Override
  public void phrase(JudgedPhrase phrase) {
    // What is said of an idea is said when it is told.
  }

  @Override
  public void notice(String sentence) {
    sentences.add(sentence);
  }

  @Override
  public Optional<Wish> wish() {
    return Optional.ofNullable(wishes.poll());
  }

  /** Asks the running session for something. */
  void ask(Wish wish) {
    wishes.add(wish);
  }

  /** Where the session was a moment ago. */
  Optional<Moment> now() {
    return moment;
  }

  /** The ideas that ended since the last look. */
  List<Invention> newIdeas() {
    return drained(ideas);
  }

  /** What was said since the last look: starters, and notices. */
  List<String> newSentences() {
    return drained(sentences);
  }

  private static <T> List<T> drained(Queue<T> queue) {
    List<T> all = new ArrayList<>();
    for (T next = queue.poll(); next != null; next = queue.poll()) {
      all.add(next);
    }
    return all;
  }
}
