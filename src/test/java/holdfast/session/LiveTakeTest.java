package holdfast.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.Arrangement;
import holdfast.backing.Performance;
import holdfast.backing.SoundPlayer;
import holdfast.backing.sound.SilentOut;
import holdfast.chart.ChartText;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.keyboard.Keyboard;
import holdfast.listening.keyboard.TestCable;
import holdfast.motif.Player;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A short take over a silent backing, in real time, with a cable that can be pulled. */
class LiveTakeTest {

  private static final int NOTE_ON = 0x90;
  private static final int NOTE_OFF = 0x80;

  /** What the audience was told, and what it wishes for and does when. */
  private static final class Stage implements Audience {
    final List<JudgedPhrase> phrases = new ArrayList<>();
    final List<String> notices = new ArrayList<>();
    final List<Moment> moments = new ArrayList<>();
    final Deque<Wish> wishes = new ArrayDeque<>();
    final Deque<Runnable> deeds = new ArrayDeque<>();

    @Override
    public void moment(Moment moment) {
      moments.add(moment);
      if (moment.chorus() > 0 && !deeds.isEmpty()) {
        deeds.poll().run();
      }
    }

    @Override
    public void phrase(JudgedPhrase phrase) {
      phrases.add(phrase);
    }

    @Override
    public void notice(String sentence) {
      notices.add(sentence);
      if (sentence.contains("went away")) {
        TestCable.plugIn();
      } else if (sentence.contains("is back")) {
        play(62, 64, 65);
      }
    }

    @Override
    public Optional<Wish> wish() {
      return Optional.ofNullable(wishes.poll());
    }
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
  void a_cable_that_is_pulled_in_mid_take_is_told_and_nothing_played_is_lost() throws Exception {
    Stage stage = new Stage();
    stage.deeds.add(() -> play(60, 62, 64));
    // The first phrase gets time to end before the cable is pulled.
    for (int i = 0; i < 25; i++) {
      stage.deeds.add(() -> {});
    }
    stage.deeds.add(TestCable::pullOut);
    List<PlayEvent> kept = new ArrayList<>();

    JudgedTake take = take(stage, keeping(kept), 4);

    assertEquals(2, stage.notices.size(), stage.notices.toString());
    assertTrue(stage.notices.get(0).contains("went away"), stage.notices.toString());
    assertTrue(stage.notices.get(1).contains("back"), stage.notices.toString());
    assertEquals(2, take.phrases().size());
    assertEquals(
        List.of(62, 64, 65), take.phrases().get(1).notes().stream().map(n -> n.pitch()).toList());
    assertEquals(12, kept.size(), "every event was kept: " + kept);
  }

  @Test
  void a_player_can_stop_loop_and_take_a_new_idea() throws Exception {
    Stage stage = new Stage();
    stage.deeds.add(() -> stage.wishes.add(Audience.Wish.LOOP_HERE));
    stage.deeds.add(() -> stage.wishes.add(Audience.Wish.NEW_IDEA));
    stage.deeds.add(() -> {});
    stage.deeds.add(() -> stage.wishes.add(Audience.Wish.STOP));

    JudgedTake take = take(stage, Keeper.NOBODY, 200);

    assertTrue(stage.notices.get(0).contains("We go round bars 1 to 2"), stage.notices.toString());
    assertTrue(stage.notices.get(1).contains("new idea"), stage.notices.toString());
    assertTrue(take.idea().isEmpty());
  }

  @Test
  void the_turn_that_nobody_expects_is_told_a_bar_ahead() throws Exception {
    Stage stage = new Stage();
    take(stage, Keeper.NOBODY, 1);

    List<Integer> warned =
        stage.moments.stream()
            .filter(m -> m.warning().isPresent() && m.chorus() > 0)
            .map(Moment::bar)
            .distinct()
            .toList();
    assertEquals(List.of(1), warned, "bar 2 is marked, so bar 1 warns");
    assertEquals(
        List.of("next bar 2: A♭, leaves the key: borrowed from the minor"),
        stage.moments.stream().flatMap(m -> m.warning().stream()).distinct().toList());
    assertEquals("C", stage.moments.get(0).chord());
    assertEquals("A♭", stage.moments.get(0).nextChord());
  }

  private static JudgedTake take(Stage stage, Keeper keeper, int rounds)
      throws InterruptedException {
    Arrangement arrangement =
        Arrangement.of(
            ChartText.parse(
                "title: Two Bars\nkey: C\ntempo: 150\n\n| C | ! Ab |\n", "LiveTakeTest"));
    try (SoundPlayer band = new SoundPlayer(new SilentOut())) {
      return new LiveTake(arrangement.chart(), Player.KEYBOARD, Optional.empty(), stage, keeper)
          .play(
              band,
              new Performance(arrangement, OptionalInt.of(rounds), 0, Set.of()),
              new Keyboard(TestCable.NAME));
    }
  }

  private static void play(int... keys) {
    for (int key : keys) {
      TestCable.send(NOTE_ON, key, 80);
      pause(120);
      TestCable.send(NOTE_OFF, key, 0);
      pause(20);
    }
  }

  private static void pause(long millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static Keeper keeping(List<PlayEvent> kept) {
    return new Keeper() {
      @Override
      public void hear(Heard heard) {
        kept.addAll(heard.events());
      }

      @Override
      public void phraseEnded(double heardUpToSeconds) {}

      @Override
      public void mark(double seconds, String text) {}

      @Override
      public Optional<String> trouble() {
        return Optional.empty();
      }
    };
  }
}
