package holdfast.practice.invent;

import holdfast.backing.BackingPlayer;
import holdfast.backing.Performance;
import holdfast.listening.NoteSource;
import holdfast.motif.Player;
import holdfast.session.Audience;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.LiveTake;
import holdfast.session.Moment;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** An inventing session as it is played: a chord or two go round, every phrase is an idea anew. */
public final class InventingTake {

  /** So long without a note is being stuck, and not yet being bored. */
  private static final long STUCK_NANOS = 12_000_000_000L;

  private final Performance performance;
  private final Player player;
  private final InventingAudience audience;
  private final Keeper keeper;
  private final Inventing inventing;
  private final Deque<Starter> starters;

  /**
   * A session to be played.
   *
   * @param performance the chords, and how long they go round
   * @param seed shuffles the starters
   */
  public InventingTake(
      Performance performance,
      Player player,
      InventingAudience audience,
      Keeper keeper,
      long seed) {
    this.performance = performance;
    this.player = player;
    this.audience = audience;
    this.keeper = keeper;
    var changes = performance.arrangement().changes();
    this.inventing = Inventing.over(changes, player, performance.arrangement().metre());
    this.starters = new ArrayDeque<>(Starter.shuffled(changes, seed));
  }

  /**
   * Plays it to its end, or until the player stops it.
   *
   * @throws InterruptedException when it is broken off from outside; what was heard is kept
   */
  public JudgedTake play(BackingPlayer band, NoteSource source) throws InterruptedException {
    return new LiveTake(
            performance.arrangement().chart(), player, Optional.empty(), new Anew(), keeper)
        .play(band, performance, source);
  }

  /** What was invented so far. */
  public Inventing inventing() {
    return inventing;
  }

  /** Takes every phrase for a new idea, and gives starters to who asks or is stuck. */
  private final class Anew implements Audience {
    private boolean nextIsNew;
    private boolean asked;
    private long lastNote = System.nanoTime();

    @Override
    public void moment(Moment moment) {
      audience.moment(moment);
      if (moment.hearing() || moment.chorus() == 0) {
        lastNote = System.nanoTime();
      } else if (System.nanoTime() - lastNote > STUCK_NANOS) {
        lastNote = System.nanoTime();
        give();
      }
    }

    @Override
    public void phrase(JudgedPhrase phrase) {
      audience.phrase(phrase);
      audience.invented(inventing.hear(phrase.notes()));
      nextIsNew = true;
    }

    @Override
    public void notice(String sentence) {
      if (asked) {
        // That a new idea is taken needs no telling where each is new.
        asked = false;
      } else {
        audience.notice(sentence);
      }
    }

    @Override
    public Optional<Wish> wish() {
      if (nextIsNew) {
        nextIsNew = false;
        asked = true;
        return Optional.of(Wish.NEW_IDEA);
      }
      Optional<Wish> wish = audience.wish();
      if (wish.equals(Optional.of(Wish.NEW_IDEA))) {
        give();
      }
      return wish.filter(Wish.STOP::equals);
    }

    private void give() {
      Starter starter = starters.poll();
      if (starter != null) {
        audience.starter(starter);
      }
    }
  }
}
