package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The best alignment against all of them, tried one by one. */
class AlignerTest {

  private static final double NEVER = Double.NEGATIVE_INFINITY;
  private static final double[] NONE = {};
  private static final double SLIP = Math.log(0.02);

  /** An idea, a phrase, and what is known of them. */
  private static final class Case {
    final Line idea;
    final Line phrase;
    final RhythmModel rhythm = new RhythmModel(Player.KEYBOARD, 1);
    final Background background;
    final Aligner aligner;
    final PitchMap map;
    final double[] times;

    Case(Line idea, Line phrase) {
      this.idea = idea;
      this.phrase = phrase;
      Ground[] grounds = Lines.everywhere(Ground.UNKNOWN, phrase);
      this.background = new Background(idea, phrase, grounds, rhythm, new Scales());
      this.aligner = new Aligner(idea.size, phrase, background);
      this.map =
          new PitchMaps(phrase, grounds, new Intonation(Player.KEYBOARD, 1, false), new Scales())
              .literal(idea);
      this.times =
          aligner.pacing(idea, 1, rhythm, Edges.whole(idea.size, phrase.size, SLIP)).times();
    }

    Pacing between(Edges edges) {
      return aligner.pacing(times, edges);
    }

    static Case of(Random random) {
      int[] pitches = new int[2 + random.nextInt(3)];
      for (int i = 0; i < pitches.length; i++) {
        pitches[i] = 60 + random.nextInt(8);
      }
      Line idea = Lines.even(pitches);
      List<Integer> notes = new ArrayList<>();
      List<Double> onsets = new ArrayList<>();
      double onset = 0;
      for (int pitch : pitches) {
        if (random.nextInt(4) > 0) {
          notes.add(pitch + (random.nextInt(4) == 0 ? 1 : 0));
          onsets.add(onset + 0.03 * random.nextGaussian());
        }
        if (random.nextInt(3) == 0) {
          notes.add(60 + random.nextInt(12));
          onsets.add(onset + 0.4);
        }
        onset++;
      }
      notes.add(62);
      onsets.add(onset + random.nextInt(2));
      return new Case(
          idea,
          Lines.at(
              onsets.stream().mapToDouble(d -> d).toArray(),
              notes.stream().mapToInt(n -> n).toArray()));
    }

    /** Notes that stand for none of the idea's, as new material. */
    double unexplained(int from, int to, boolean timed) {
      double sum = 0;
      for (int j = from; j < to; j++) {
        sum += background.pitch[j] + (timed ? background.time[j] : 0);
      }
      return sum;
    }

    /** ln density of a step's time, notes put in lying anywhere within it, in order. */
    double time(int i, int toIdea, int j, int toPhrase) {
      double step = phrase.onset[toPhrase] - phrase.onset[j];
      double log = rhythm.meant(step, idea.onset[toIdea] - idea.onset[i]);
      int put = toPhrase - j - 1;
      for (int k = 1; k <= put; k++) {
        log += Math.log(k) - Math.log(step);
      }
      return log;
    }

    /** The best of all alignments that go on from a pair. */
    double best(int i, int j, Edges edges) {
      double most =
          edges.trail(idea.size - 1 - i)
              + edges.trailAdds(phrase.size - 1 - j)
              + unexplained(j + 1, phrase.size, true);
      for (int drops = 0; drops <= 2 && i + drops + 1 < idea.size; drops++) {
        // Up to three notes put in; one where a note is left out, none where two are.
        int puts = drops == 0 ? 3 : 2 - drops;
        for (int put = 0; put <= puts && j + put + 1 < phrase.size; put++) {
          int toIdea = i + drops + 1;
          int to = j + put + 1;
          most =
              Math.max(
                  most,
                  drops * edges.drop()
                      + put * edges.add()
                      + unexplained(j + 1, to, false)
                      + time(i, toIdea, j, to)
                      + map.notes()[toIdea * phrase.size + to]
                      + best(toIdea, to, edges));
        }
      }
      return most;
    }

    double best(Edges edges) {
      double most = NEVER;
      for (int i = 0; i < idea.size; i++) {
        for (int j = 0; j < phrase.size; j++) {
          most =
              Math.max(
                  most,
                  edges.lead(i)
                      + edges.leadAdds(j)
                      + unexplained(0, j, true)
                      + background.time[j]
                      + map.notes()[i * phrase.size + j]
                      + best(i, j, edges));
        }
      }
      return most;
    }
  }

  private static List<Edges> edges(Case c) {
    int n = c.idea.size;
    int m = c.phrase.size;
    List<Edges> edges = new ArrayList<>();
    edges.add(Edges.whole(n, m, SLIP));
    edges.add(Edges.extendedAfter(n, m, SLIP));
    edges.add(Edges.extendedBefore(n, m, SLIP));
    if (n >= 3) {
      edges.add(Edges.head(n, m, SLIP));
      edges.add(Edges.later(n, m, SLIP));
    }
    return edges;
  }

  @Test
  void no_alignment_is_better_than_the_one_that_is_found() {
    Random random = new Random(20261125);
    for (int t = 0; t < 200; t++) {
      Case c = Case.of(random);
      for (Edges edges : edges(c)) {
        double found = c.aligner.align(c.map.notes(), NONE, c.between(edges));
        assertEquals(c.best(edges), found, 1e-9);
      }
    }
  }

  @Test
  void what_cannot_come_above_a_floor_is_given_up_and_nothing_else() {
    Random random = new Random(7);
    for (int t = 0; t < 200; t++) {
      Case c = Case.of(random);
      for (Edges edges : edges(c)) {
        double best = c.best(edges);
        Pacing pacing = c.between(edges);
        assertTrue(
            c.aligner.bound(c.map.best(c.phrase.size), pacing) >= best - 1e-9 || best == NEVER);
        assertEquals(best, c.aligner.alignAbove(best - 0.1, c.map.notes(), NONE, pacing), 1e-9);
        c.aligner.bound(c.map.best(c.phrase.size), pacing);
        assertTrue(c.aligner.alignAbove(best + 0.1, c.map.notes(), NONE, pacing) <= best + 1e-9);
      }
    }
  }

  @Test
  void a_bound_takes_every_note_at_its_best() {
    Case same = new Case(Lines.even(60, 64, 67, 65), Lines.even(60, 64, 67, 65));
    Pacing whole = same.between(Edges.whole(4, 4, SLIP));
    double best = same.aligner.align(same.map.notes(), NONE, whole);
    assertEquals(best, same.aligner.bound(same.map.best(4), whole), 1e-9);
  }

  private static int[] path(Line idea, Line phrase) {
    Case c = new Case(idea, phrase);
    c.aligner.align(c.map.notes(), NONE, c.between(Edges.whole(idea.size, phrase.size, SLIP)));
    return c.aligner.path();
  }

  @Test
  void a_note_left_out_or_put_in_is_found_where_it_is() {
    Line idea = Lines.even(60, 67, 64, 69, 62);
    assertArrayEquals(new int[] {0, 1, 2, 3, 4}, path(idea, idea));
    assertArrayEquals(
        new int[] {0, 1, 3, 4}, path(idea, Lines.at(new double[] {0, 1, 3, 4}, 60, 67, 69, 62)));
    assertArrayEquals(
        new int[] {0, 3, 4}, path(idea, Lines.at(new double[] {0, 3, 4}, 60, 69, 62)));
    assertArrayEquals(
        new int[] {0, 1, -1, 2, 3, 4},
        path(idea, Lines.at(new double[] {0, 1, 1.4, 2, 3, 4}, 60, 67, 72, 64, 69, 62)));
    assertArrayEquals(
        new int[] {-1, 0, 1, 2, 3, 4, -1},
        path(idea, Lines.at(new double[] {-1, 0, 1, 2, 3, 4, 5}, 70, 60, 67, 64, 69, 62, 70)));
  }

  @Test
  void pitches_in_a_rhythm_of_their_own_take_their_times_from_new_material() {
    Case c = new Case(Lines.even(60, 67, 64), Lines.at(new double[] {0, 2.5, 2.75}, 60, 67, 64));
    Pacing free = c.aligner.freePacing(Edges.whole(3, 3, SLIP));
    double pitches = 0;
    double times = 0;
    for (int j = 0; j < 3; j++) {
      pitches += c.map.notes()[j * 3 + j];
      times += c.background.time[j];
    }
    double found = c.aligner.align(c.map.notes(), NONE, free);
    assertEquals(pitches + times, found, 1e-9);
    assertEquals(pitches + times, c.aligner.bound(c.map.best(c.phrase.size), free), 1e-9);
    assertEquals(c.unexplained(0, 3, true), c.aligner.logAsNew(), 1e-12);
    double[] late = free.times();
    assertEquals(
        c.background.time[1] + c.background.time[2], late[c.aligner.cell(0, 0, 0, 1)], 1e-12);
    assertEquals(c.background.time[2], late[c.aligner.cell(1, 1, 0, 0)], 1e-12);
  }

  @Test
  void by_moves_the_first_note_alone_is_taken_by_its_pitch() {
    Case c = new Case(Lines.even(60, 67, 64), Lines.even(62, 69, 66));
    double[] moves = new double[c.aligner.steps()];
    Arrays.fill(moves, -5);
    moves[c.aligner.cell(0, 0, 0, 0)] = -0.25;
    moves[c.aligner.cell(1, 1, 0, 0)] = -0.5;
    double[] starts = new double[9];
    Arrays.fill(starts, -3);
    double found = c.aligner.align(starts, moves, c.between(Edges.whole(3, 3, Math.log(1e-9))));
    assertEquals(-3 - 0.75 + c.time(0, 1, 0, 1) + c.time(1, 2, 1, 2), found, 1e-9);
  }

  @Test
  void by_moves_too_only_what_cannot_come_above_a_floor_is_given_up() {
    Random random = new Random(11);
    for (int t = 0; t < 200; t++) {
      Case c = Case.of(random);
      double[] moves = logs(random, c.aligner.steps());
      double[] starts = logs(random, c.idea.size * c.phrase.size);
      for (Edges edges : edges(c)) {
        Pacing pacing = c.between(edges);
        double found = c.aligner.align(starts, moves, pacing);
        assertTrue(c.aligner.bound(c.aligner.best(starts, moves), pacing) >= found - 1e-9);
        assertEquals(found, c.aligner.alignAbove(found - 0.1, starts, moves, pacing), 1e-9);
      }
    }
  }

  private static double[] logs(Random random, int size) {
    return random.doubles(size, -6, 0).toArray();
  }
}
