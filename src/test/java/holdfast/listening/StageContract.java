package holdfast.listening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayEvent.NoteOff;
import holdfast.listening.PlayEvent.NoteOn;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/**
 * What every stage between an ear and the phrases must keep to, whatever comes in: onsets never go
 * backwards, every note ends once, promises are kept, and the pieces a take comes in change
 * nothing. A stage's test extends this class and is thrown at all of it.
 */
public abstract class StageContract {

  /** A stage under test. */
  protected interface Stage {
    Heard hear(Heard heard);

    Heard finish(double seconds);
  }

  /** A new stage that has heard nothing. */
  protected abstract Stage fresh();

  /** Whether what leaves must be one note at a time. */
  protected boolean isMonophonic() {
    return true;
  }

  @Test
  void silence_stays_silence() {
    Stage stage = fresh();
    for (int i = 1; i < 100; i++) {
      assertEquals(List.of(), stage.hear(new Heard(List.of(), i)).events());
    }
    assertEquals(new Heard(List.of(), 100), stage.finish(100));
  }

  @Test
  void a_note_that_is_never_ended_ends_with_the_take() {
    assertWellFormed(run(List.of(on(1, 60, 80)), List.of(1), 9));
  }

  @Test
  void note_offs_without_a_note_do_no_harm() {
    List<PlayEvent> events =
        List.of(off(0, 60), on(1, 60, 80), off(1.5, 61), off(2, 60), off(3, 60));
    assertWellFormed(run(events, List.of(5), 4));
  }

  @Test
  void every_key_at_once_and_again_is_borne() {
    List<PlayEvent> events = new ArrayList<>();
    for (int round = 0; round < 3; round++) {
      for (int key = 0; key < 128; key++) {
        events.add(on(1 + round, key, 1 + key % 127));
      }
    }
    assertWellFormed(run(events, List.of(events.size()), 10));
  }

  @Test
  void a_gap_of_a_day_is_borne() {
    List<PlayEvent> events =
        List.of(on(0, 60, 80), off(1, 60), on(86_400, 62, 80), off(86_401, 62));
    List<PlayEvent> out = run(events, List.of(4), 86_402);
    assertWellFormed(out);
    assertEquals(4, out.size());
  }

  @RepeatedTest(300)
  void any_playing_in_any_pieces_gives_the_same_well_formed_line(RepetitionInfo repetition) {
    Random chance = new Random(repetition.getCurrentRepetition());
    List<PlayEvent> events = wildPlaying(chance);
    double end = events.get(events.size() - 1).seconds() + chance.nextDouble();
    List<PlayEvent> whole = run(events, List.of(events.size()), end);
    assertWellFormed(whole);
    assertEquals(whole, run(events, pieces(chance, events.size()), end));
    assertEquals(whole, run(events, pieces(chance, events.size()), end));
  }

  @Test
  void a_stage_that_has_finished_can_go_on() {
    Stage stage = fresh();
    List<PlayEvent> out = new ArrayList<>(stage.hear(heard(1, on(0, 60, 80))).events());
    out.addAll(stage.finish(2).events());
    out.addAll(stage.hear(heard(4, on(3, 62, 80), off(3.5, 62))).events());
    out.addAll(stage.finish(5).events());
    assertWellFormed(out);
    assertEquals(4, out.size());
  }

  /** Events that go through a fresh stage in pieces of these sizes. */
  protected final List<PlayEvent> run(
      List<? extends PlayEvent> events, List<Integer> sizes, double end) {
    Stage stage = fresh();
    List<PlayEvent> out = new ArrayList<>();
    double promised = Double.NEGATIVE_INFINITY;
    int at = 0;
    for (int size : sizes) {
      List<PlayEvent> piece = List.copyOf(events.subList(at, Math.min(at + size, events.size())));
      at += piece.size();
      // A promise may lie anywhere up to the next event.
      double last = latest(events.subList(0, Math.max(1, at)));
      double next = at < events.size() ? events.get(at).seconds() : end;
      next = at == 0 ? next : Math.max(last, next);
      double upTo =
          at == 0 || at % 3 == 0 ? Math.min(last, next) : (at % 3 == 1) ? next : (last + next) / 2;
      Heard told = stage.hear(new Heard(piece, upTo));
      promised = assertPromise(promised, told, upTo);
      out.addAll(told.events());
    }
    Heard told = stage.finish(end);
    assertPromise(promised, told, end);
    out.addAll(told.events());
    return out;
  }

  private static double latest(List<? extends PlayEvent> events) {
    return events.stream().mapToDouble(PlayEvent::seconds).max().orElseThrow();
  }

  private static double assertPromise(double promised, Heard told, double upTo) {
    assertTrue(told.upToSeconds() >= promised, "a promise was taken back");
    assertTrue(told.upToSeconds() <= upTo + 1e-9, "more was promised than was known");
    for (PlayEvent event : told.events()) {
      assertTrue(
          event.seconds() >= promised, () -> event + " came after a promise up to " + promised);
    }
    return told.upToSeconds();
  }

  /** Onsets never go backwards, every note ends once, one note at a time. */
  protected final void assertWellFormed(List<? extends PlayEvent> events) {
    double time = Double.NEGATIVE_INFINITY;
    double[] sounding = new double[128];
    Arrays.fill(sounding, Double.NaN);
    int count = 0;
    for (PlayEvent event : events) {
      assertTrue(event.seconds() >= time, () -> "time went backwards at " + event);
      time = event.seconds();
      if (event instanceof NoteOn) {
        assertTrue(Double.isNaN(sounding[event.pitch()]), () -> "struck twice: " + event);
        sounding[event.pitch()] = time;
        count++;
        assertTrue(!isMonophonic() || count == 1, () -> "two notes at once at " + event);
      } else {
        assertTrue(sounding[event.pitch()] < time, () -> "ended without a length: " + event);
        sounding[event.pitch()] = Double.NaN;
        count--;
      }
    }
    assertEquals(0, count, "a note never ended");
  }

  protected static Heard heard(double upTo, PlayEvent... events) {
    return new Heard(List.of(events), upTo);
  }

  protected static NoteOn on(double seconds, int pitch, int velocity) {
    return NoteOn.key(seconds, pitch, velocity);
  }

  protected static NoteOff off(double seconds, int pitch) {
    return new NoteOff(seconds, pitch);
  }

  /** Chords, trills, slips, stuck keys, double strokes, lost note-offs, equal times. */
  private static List<PlayEvent> wildPlaying(Random chance) {
    List<PlayEvent> events = new ArrayList<>();
    double[] steps = {0, 0, 0.0004, 0.005, 0.02, 0.04, 0.07, 0.08, 0.15, 0.3, 2};
    double time = 0;
    int centre = 40 + chance.nextInt(50);
    List<Integer> down = new ArrayList<>();
    int count = 1 + chance.nextInt(120);
    for (int i = 0; i < count; i++) {
      time +=
          steps[chance.nextInt(steps.length)] * (chance.nextBoolean() ? 1 : chance.nextDouble());
      // A tenth of the events are stamped a little too early, as by a device that is out of step.
      double stamp = chance.nextInt(10) == 0 ? time - 0.01 : time;
      if (!down.isEmpty() && chance.nextInt(100) < 48) {
        events.add(off(stamp, down.remove(chance.nextInt(down.size()))));
      } else {
        int pitch = Math.max(0, Math.min(127, centre + (int) (chance.nextGaussian() * 8)));
        events.add(on(stamp, pitch, 1 + chance.nextInt(127)));
        down.add(pitch);
      }
    }
    return events;
  }

  private static List<Integer> pieces(Random chance, int count) {
    List<Integer> sizes = new ArrayList<>();
    for (int left = count; left > 0; ) {
      int size = Math.min(left, chance.nextInt(4));
      sizes.add(size);
      left -= size;
    }
    return sizes;
  }
}
