package holdfast.backing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BiConsumer;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class LivePlaybackTest {

  private static final Chart CHART = ChartLibrary.open("paper-boats");
  private static final int BASS_CHANNEL = 1;
  private static final int DRUM_CHANNEL = 9;
  private static final int LINE_CHANNEL = 3;

  private final LockstepOut out = new LockstepOut();
  private final List<BeatNotice> beats = new CopyOnWriteArrayList<>();

  private static Performance performance(Feel feel, double tempo, int rounds) {
    Arrangement arrangement =
        Arrangement.of(CHART, feel, tempo, Optional.empty(), Optional.empty());
    return new Performance(arrangement, OptionalInt.of(rounds), 1, Set.of());
  }

  /** Plays to the end; what is to happen meanwhile happens on the scheduler's thread, at a beat. */
  private Playback play(Performance performance, BiConsumer<Playback, BeatNotice> meanwhile)
      throws InterruptedException {
    LivePlayback playback = new LivePlayback(out, performance, Long.MIN_VALUE);
    playback.onBeat(beats::add);
    playback.onBeat(beat -> meanwhile.accept(playback, beat));
    playback.start();
    while (playback.isRunning()) {
      Thread.sleep(1);
    }
    return playback;
  }

  private static void nothing(Playback playback, BeatNotice beat) {
    // The music goes on by itself.
  }

  private List<LockstepOut.Sent> notesOn(int channel) {
    return out.sent().stream()
        .filter(sent -> sent.message().getCommand() == ShortMessage.NOTE_ON)
        .filter(sent -> sent.message().getChannel() == channel)
        .toList();
  }

  @Test
  void every_note_is_sent_ahead_with_the_stamp_of_its_beat() throws InterruptedException {
    Performance performance = performance(Feel.BALLAD, 75, 2);
    play(performance, LivePlaybackTest::nothing);
    List<Double> expected =
        performance.events().stream()
            .map(BackingEvent::onsetBeats)
            .map(beat -> performance.tempoMap().secondsAt(beat + 4) * 1e6)
            .toList();
    List<LockstepOut.Sent> notes = new ArrayList<>();
    for (LockstepOut.Sent sent : out.sent()) {
      if (sent.message().getCommand() == ShortMessage.NOTE_ON) {
        notes.add(sent);
      }
    }
    assertEquals(expected.size(), notes.size());
    long first = notes.get(0).micros();
    for (int i = 0; i < notes.size(); i++) {
      assertEquals(expected.get(i), (double) (notes.get(i).micros() - first), 1, "note " + i);
      long ahead = notes.get(i).micros() - notes.get(i).madeMicros();
      assertTrue(ahead > 100_000, "note " + i + " is sent only " + ahead + " µs ahead");
    }
  }

  @Test
  void a_line_is_sent_ahead_too_from_its_pick_up_on_and_over_more_than_one_round()
      throws InterruptedException {
    // Early, late, and one that is struck again before it was let go.
    List<BackingEvent> line =
        List.of(
            new BackingEvent(Part.LINE, -0.53, 0.5, 72, 61),
            new BackingEvent(Part.LINE, 0.02, 1.4, 69, 92),
            new BackingEvent(Part.LINE, 1.01, 0.5, 69, 70),
            new BackingEvent(Part.LINE, 63.5, 2, 65, 75),
            new BackingEvent(Part.LINE, 64, 1, 60, 75));
    Performance performance = performance(Feel.PLAIN, 80, 2).withPlayedLine(line);
    play(performance, LivePlaybackTest::nothing);
    List<LockstepOut.Sent> notes = notesOn(LINE_CHANNEL);
    long count = notesOn(DRUM_CHANNEL).get(0).micros();
    // What would begin when all is over is not begun.
    assertEquals(4, notes.size());
    for (int i = 0; i < notes.size(); i++) {
      LockstepOut.Sent sent = notes.get(i);
      double beats = 4 + line.get(i).onsetBeats();
      assertEquals(beats * 60e6 / 80, (double) (sent.micros() - count), 1, "note " + i);
      assertTrue(sent.micros() - sent.madeMicros() > 100_000, "note " + i + " is sent late");
      assertEquals(line.get(i).velocity(), sent.message().getData2());
    }
    assertEquals(4, performance.events().stream().filter(e -> e.part() == Part.LINE).count());
  }

  @Test
  void what_is_said_while_it_plays_sounds_on_its_beats() throws InterruptedException {
    List<BackingEvent> said =
        List.of(
            new BackingEvent(Part.LINE, 6, 0.5, 67, 80),
            new BackingEvent(Part.LINE, 6.5, 1, 69, 80),
            new BackingEvent(Part.LINE, 500, 1, 60, 80));
    play(
        performance(Feel.PLAIN, 80, 1),
        (playback, beat) -> {
          if (beat.beat() == 2) {
            playback.say(said);
          }
        });
    List<LockstepOut.Sent> notes = notesOn(LINE_CHANNEL);
    long count = notesOn(DRUM_CHANNEL).get(0).micros();
    assertEquals(2, notes.size(), "what lies behind the end is not said");
    for (int i = 0; i < 2; i++) {
      double beats = 4 + said.get(i).onsetBeats();
      assertEquals(beats * 60e6 / 80, (double) (notes.get(i).micros() - count), 1, "note " + i);
      assertTrue(notes.get(i).micros() - notes.get(i).madeMicros() > 100_000, "sent late");
    }
  }

  @Test
  void a_muted_line_is_silent() throws InterruptedException {
    Performance muted =
        new Performance(
            performance(Feel.PLAIN, 120, 1).arrangement(),
            OptionalInt.of(1),
            1,
            Set.of(Part.LINE),
            List.of(new BackingEvent(Part.LINE, 0, 1, 69, 80)));
    play(muted, LivePlaybackTest::nothing);
    List<Integer> volumes =
        out.sent().stream()
            .map(LockstepOut.Sent::message)
            .filter(m -> m.getCommand() == ShortMessage.CONTROL_CHANGE)
            .filter(m -> m.getChannel() == LINE_CHANNEL && m.getData1() == 7)
            .map(ShortMessage::getData2)
            .toList();
    assertEquals(0, volumes.get(volumes.size() - 1));
    assertTrue(muted.events().stream().noneMatch(e -> e.part() == Part.LINE));
  }

  @Test
  void every_note_that_begins_ends() throws InterruptedException {
    play(performance(Feel.EVEN, 120, 2), LivePlaybackTest::nothing);
    int[][] sounding = new int[16][128];
    for (LockstepOut.Sent sent : out.sent()) {
      ShortMessage message = sent.message();
      if (message.getCommand() == ShortMessage.NOTE_ON) {
        sounding[message.getChannel()][message.getData1()]++;
        assertEquals(1, sounding[message.getChannel()][message.getData1()], message.toString());
      } else if (message.getCommand() == ShortMessage.NOTE_OFF) {
        sounding[message.getChannel()][message.getData1()] = 0;
      }
    }
    for (int[] channel : sounding) {
      for (int pitch : channel) {
        assertEquals(0, pitch);
      }
    }
    assertFalse(out.silenced());
  }

  @Test
  void every_beat_is_told_with_its_place() throws InterruptedException {
    play(performance(Feel.PLAIN, 100, 2), LivePlaybackTest::nothing);
    assertEquals(4 + 64, beats.size());
    assertEquals(-4, beats.get(0).beat());
    assertEquals(1, beats.get(0).beatOfBar());
    BeatNotice beat = beats.get(4 + 38);
    assertEquals(new BarPlace(2, 2), beat.place());
    assertEquals(3, beat.beatOfBar());
  }

  @Test
  void a_stall_of_half_a_second_drops_late_drums_keeps_chords_and_breaks_nothing()
      throws InterruptedException {
    boolean[] stalled = new boolean[1];
    play(
        performance(Feel.BALLAD, 120, 2),
        (playback, beat) -> {
          if (beat.beat() == 13 && !stalled[0]) {
            stalled[0] = true;
            out.stall(500_000);
          }
        });
    assertEquals(4 + 64, beats.size());
    long most = 0;
    for (LockstepOut.Sent sent : notesOn(DRUM_CHANNEL)) {
      most = Math.max(most, sent.madeMicros() - sent.micros());
    }
    assertTrue(most <= 30_000, "a drum came " + most + " µs late");
    // Two bass notes in each of 15 bars, two more where two chords share a bar: all are there.
    long expected =
        performance(Feel.BALLAD, 120, 2).events().stream()
            .filter(event -> event.part() == Part.BASS)
            .count();
    assertEquals(expected, notesOn(BASS_CHANNEL).size());
  }

  @Test
  void another_tempo_begins_at_a_bar_line_and_the_beats_go_on() throws InterruptedException {
    Playback playback =
        play(
            performance(Feel.PLAIN, 60, 2),
            (running, beat) -> {
              if (beat.beat() == 5) {
                running.setTempo(120);
              }
            });
    assertEquals(2, playback.tempoMap().points().size());
    assertEquals(8, playback.tempoMap().points().get(1).beat(), 1e-9);
    List<LockstepOut.Sent> bass = notesOn(BASS_CHANNEL);
    // Bars 1 and 2 at 60, bar 3 on at 120.
    assertEquals(4_000_000.0, (double) (bass.get(1).micros() - bass.get(0).micros()), 2);
    assertEquals(4_000_000.0, (double) (bass.get(2).micros() - bass.get(1).micros()), 2);
    assertEquals(2_000_000.0, (double) (bass.get(3).micros() - bass.get(2).micros()), 2);
  }

  @Test
  void a_loop_goes_round_until_it_is_let_go_and_the_changes_say_so() throws InterruptedException {
    Playback playback =
        play(
            performance(Feel.PLAIN, 120, 1),
            (running, beat) -> {
              if (beat.beat() == 9) {
                running.loop(new BarRange(3, 4));
              }
              if (beat.beat() == 25) {
                running.goOn();
              }
            });
    List<Integer> bars =
        beats.stream()
            .filter(beat -> beat.beat() >= 0 && beat.beatOfBar() == 1)
            .map(beat -> beat.place().bar())
            .toList();
    assertEquals(List.of(1, 2, 3, 4, 3, 4, 3, 4, 5, 6, 7, 8), bars);
    assertEquals("C7", playback.changes().at(21).harmony().text());
    assertEquals("Dbmaj7", playback.changes().at(36).harmony().text());
    assertEquals(Optional.of(48.0), playback.lastBeat());
  }

  @Test
  void a_muted_part_is_silent_from_then_on_and_can_come_back() throws InterruptedException {
    play(
        performance(Feel.PLAIN, 120, 1),
        (running, beat) -> {
          if (beat.beat() == 4 || beat.beat() == 12) {
            running.mute(Part.BASS, beat.beat() == 4);
          }
        });
    List<Integer> volumes =
        out.sent().stream()
            .map(LockstepOut.Sent::message)
            .filter(m -> m.getCommand() == ShortMessage.CONTROL_CHANGE)
            .filter(m -> m.getChannel() == BASS_CHANNEL && m.getData1() == 7)
            .map(ShortMessage::getData2)
            .toList();
    int loud = Seat.of(Part.BASS, Feel.PLAIN).volume();
    assertEquals(List.of(loud, loud, 0, loud), volumes);
  }

  @Test
  void stopping_silences_at_once() throws InterruptedException {
    play(
        performance(Feel.PLAIN, 120, 1),
        (running, beat) -> {
          if (beat.beat() == 6) {
            running.stop();
          }
        });
    assertTrue(out.silenced());
    assertEquals(4 + 7, beats.size());
  }

  @Test
  void a_listener_that_fails_does_not_stop_the_music() throws InterruptedException {
    play(
        performance(Feel.PLAIN, 240, 1),
        (running, beat) -> {
          throw new IllegalStateException("this listener is broken on purpose");
        });
    assertEquals(4 + 32, beats.size());
  }
}
