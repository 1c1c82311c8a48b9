package holdfast.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.Arrangement;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.SoundPlayer;
import holdfast.chart.ChartText;
import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.NoteSource;
import holdfast.listening.PlayEvent;
import holdfast.listening.keyboard.TestCable;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.practice.Hands;
import holdfast.practice.SteppedOut;
import holdfast.practice.WatchedBand;
import holdfast.time.TakeClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What goes wrong under a live take: the take goes on, or ends with all that was played. */
@Timeout(120)
class FaultsTest {

  private static final int ROUNDS = 6;
  private static final int[] IDEA = {60, 64, 67, 65};

  /** Steps of 10 ms into the take, while the idea is played in the fourth round. */
  private static final int IN_THE_MIDDLE = 1_250;

  private final List<String> notices = new ArrayList<>();
  private final List<PlayEvent> kept = new ArrayList<>();
  private Optional<String> trouble = Optional.empty();

  private final SteppedOut out =
      new SteppedOut() {
        @Override
        public Optional<String> trouble() {
          return trouble;
        }
      };

  /** Something that happens to a session that listens. */
  private interface Fault {
    Heard happen(Capture ear) throws InterruptedException;
  }

  @BeforeEach
  void plugIn() {
    TestCable.plugIn();
  }

  @AfterEach
  void pullOut() {
    TestCable.pullOut();
  }

  @Test
  void a_session_that_stalls_for_half_a_second_hears_every_note_in_its_place() throws Exception {
    JudgedTake take =
        play(
            ear -> {
              List<PlayEvent> missed = new ArrayList<>();
              Heard latest = ear.await(Duration.ZERO);
              for (int i = 0; i < 50; i++) {
                missed.addAll(latest.events());
                latest = ear.await(Duration.ZERO);
              }
              missed.addAll(latest.events());
              return new Heard(missed, latest.upToSeconds());
            });
    assertEverythingHeard(take);
    for (int round = 0; round < ROUNDS; round++) {
      assertEquals(8.0 * round, take.phrases().get(round).startBeat(), 0.05);
    }
  }

  @Test
  void a_clock_that_leaps_ahead_loses_no_note() throws Exception {
    JudgedTake take =
        play(
            ear -> {
              out.leap(700_000);
              return ear.await(Duration.ZERO);
            });
    // The rest that it seems to be may end a phrase, and keys that were due go down at once.
    assertEquals(ROUNDS * IDEA.length, keysDown());
    assertEquals(
        ROUNDS - 1, take.phrases().stream().filter(p -> p.notes().size() == IDEA.length).count());
  }

  @Test
  void a_clock_that_goes_back_as_after_an_underrun_loses_no_note() throws Exception {
    for (int i = 0; i < 3; i++) {
      kept.clear();
      int at = i;
      JudgedTake take =
          play(
              IN_THE_MIDDLE + 40 * at,
              ear -> {
                out.leap(-300_000);
                return ear.await(Duration.ZERO);
              });
      assertAllKept(take);
    }
  }

  @Test
  void instruments_that_break_off_are_told_and_the_take_goes_on() throws Exception {
    JudgedTake take =
        play(
            ear -> {
              trouble = Optional.of("The instruments broke off; the take goes on in silence.");
              return ear.await(Duration.ZERO);
            });
    assertEverythingHeard(take);
    assertEquals(List.of(trouble.orElseThrow()), notices);
  }

  @Test
  void a_cable_that_is_pulled_for_good_leaves_what_was_played() throws Exception {
    JudgedTake take =
        play(
            ear -> {
              TestCable.pullOut();
              return ear.await(Duration.ZERO);
            });
    assertEquals(1, notices.size(), notices.toString());
    assertTrue(notices.get(0).startsWith("The input went away"), notices.toString());
    assertEquals(4, take.phrases().size());
  }

  private void assertEverythingHeard(JudgedTake take) {
    assertAllKept(take);
    assertEquals(ROUNDS, take.phrases().size());
    for (JudgedPhrase phrase : take.phrases()) {
      assertEquals(IDEA.length, phrase.notes().size());
    }
  }

  /** No key is missing from the log, and none from what is judged. */
  private void assertAllKept(JudgedTake take) {
    assertEquals(ROUNDS * IDEA.length, keysDown());
    assertEquals(
        ROUNDS * IDEA.length, take.phrases().stream().mapToInt(p -> p.notes().size()).sum());
  }

  private int keysDown() {
    return (int) kept.stream().filter(e -> e instanceof PlayEvent.NoteOn).count();
  }

  private JudgedTake play(Fault fault) throws InterruptedException {
    return play(IN_THE_MIDDLE, fault);
  }

  /** The idea once in every round, with a fault after so many steps. */
  private JudgedTake play(int after, Fault fault) throws InterruptedException {
    Arrangement arrangement =
        Arrangement.of(
            ChartText.parse("title: Two Bars\nkey: C\ntempo: 120\n\n| C | Am7 |\n", "FaultsTest"));
    List<Note> notes = new ArrayList<>();
    for (int round = 0; round < ROUNDS; round++) {
      for (int i = 0; i < IDEA.length; i++) {
        notes.add(new Note(8 * round + 0.5 * i, 0.5, IDEA[i]));
      }
    }
    AtomicReference<Playback> playback = new AtomicReference<>();
    Hands hands = new Hands(out, playback::get);
    hands.play(notes);
    LiveTake take =
        new LiveTake(arrangement.chart(), Player.KEYBOARD, Optional.empty(), audience(), keeper());
    return take.play(
        new WatchedBand(new SoundPlayer(out), playback::set),
        new Performance(arrangement, OptionalInt.of(ROUNDS), 0, Set.of()),
        new Faulty(hands, after, fault));
  }

  /** Listens, and once something goes wrong. */
  private record Faulty(NoteSource source, int after, Fault fault) implements NoteSource {
    @Override
    public String name() {
      return source.name();
    }

    @Override
    public Capture open(TakeClock clock) {
      Capture ear = source.open(clock);
      return new Capture() {
        private int steps;

        @Override
        public Heard await(Duration atMost) throws InterruptedException {
          steps++;
          return steps == after ? fault.happen(ear) : ear.await(atMost);
        }

        @Override
        public Heard rest() {
          return ear.rest();
        }

        @Override
        public boolean isListening() {
          return ear.isListening();
        }

        @Override
        public long lost() {
          return ear.lost();
        }

        @Override
        public void close() {
          ear.close();
        }
      };
    }
  }

  private Audience audience() {
    return new Audience() {
      @Override
      public void moment(Moment moment) {
        // Nobody looks.
      }

      @Override
      public void phrase(JudgedPhrase phrase) {
        // What counts is what is judged in the end.
      }

      @Override
      public void notice(String sentence) {
        notices.add(sentence);
      }

      @Override
      public Optional<Wish> wish() {
        return Optional.empty();
      }
    };
  }

  private Keeper keeper() {
    return new Keeper() {
      @Override
      public void hear(Heard heard) {
        kept.addAll(heard.events());
      }

      @Override
      public void phraseEnded(double heardUpToSeconds) {
        // Nothing is forced to a disk.
      }

      @Override
      public void mark(double seconds, String text) {
        // Nothing is marked.
      }

      @Override
      public Optional<String> trouble() {
        return Optional.empty();
      }
    };
  }
}
