package holdfast.practice;

import holdfast.backing.BackingPlayer;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.SoundPlayer;
import holdfast.listening.keyboard.Keyboard;
import holdfast.listening.keyboard.TestCable;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.Moment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.PriorityBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;

/**
 * A lesson live: the real take over a silent quick output, and hands that press the keys of a test
 * cable on the beats that the test asks for.
 */
class Stage implements PracticeAudience {

  private static final int NOTE_ON = 0x90;
  private static final int NOTE_OFF = 0x80;

  /** Fingers lift before the next note. */
  private static final double ARTICULATION = 0.85;

  /** A key that goes down or up. */
  private record Stroke(double beat, int status, int key) {}

  final List<Passage> passages = new ArrayList<>();
  final List<CoachLine> lines = new ArrayList<>();
  final List<Outcome> outcomes = new ArrayList<>();
  final List<JudgedPhrase> phrases = new ArrayList<>();
  final List<String> notices = new ArrayList<>();
  final QuickOut out;

  private final PriorityBlockingQueue<Stroke> strokes =
      new PriorityBlockingQueue<>(
          16, Comparator.comparingDouble(Stroke::beat).thenComparingInt(Stroke::status));
  private final AtomicReference<Playback> playback = new AtomicReference<>();

  Stage(int speed) {
    out = new QuickOut(speed);
  }

  /** Plays a lesson to its end on a cable that is plugged in. */
  PracticeTake play(Lesson lesson) throws InterruptedException {
    return play(lesson, take -> {});
  }

  PracticeTake play(Lesson lesson, java.util.function.Consumer<JudgedTake> then)
      throws InterruptedException {
    Thread hands = new Thread(this::pressKeys, "hands");
    hands.setDaemon(true);
    hands.start();
    try (SoundPlayer player = new SoundPlayer(out)) {
      PracticeTake take = new PracticeTake(lesson, Player.KEYBOARD, this, Keeper.NOBODY);
      then.accept(take.play(watched(player), new Keyboard(TestCable.NAME)));
      return take;
    } finally {
      hands.interrupt();
      hands.join(1000);
    }
  }

  /** Plays these notes, in beats of the take. */
  void hands(List<Note> notes) {
    for (Note note : notes) {
      strokes.add(new Stroke(note.onsetBeats(), NOTE_ON, note.pitch()));
      double end = note.onsetBeats() + ARTICULATION * note.durationBeats();
      strokes.add(new Stroke(end, NOTE_OFF, note.pitch()));
    }
  }

  private void pressKeys() {
    try {
      while (true) {
        Stroke stroke = strokes.poll(1, TimeUnit.MILLISECONDS);
        if (stroke == null || playback.get() == null) {
          if (stroke != null) {
            strokes.add(stroke);
            LockSupport.parkNanos(1_000_000);
          }
          continue;
        }
        long due = playback.get().clock().nanoTimeAt(stroke.beat());
        if (due > System.nanoTime() + 2_000_000) {
          strokes.add(stroke);
          Thread.sleep(1);
          continue;
        }
        while (System.nanoTime() < due) {
          Thread.onSpinWait();
        }
        TestCable.send(stroke.status(), stroke.key(), 80);
      }
    } catch (InterruptedException over) {
      // The take is over.
    }
  }

  private BackingPlayer watched(BackingPlayer band) {
    return new BackingPlayer() {
      @Override
      public Playback start(Performance performance, long earliest) {
        playback.set(band.start(performance, earliest));
        return playback.get();
      }

      @Override
      public void setVolume(double volume) {
        band.setVolume(volume);
      }

      @Override
      public String output() {
        return band.output();
      }

      @Override
      public Optional<String> trouble() {
        return band.trouble();
      }

      @Override
      public void close() {
        band.close();
      }
    };
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
