package holdfast.motif;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.ChordPalette;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Could a listener foresee the next statement? From the idea and from how this player has carried
 * it so far a listener expects the same notes, another step along the scale, or a move with the
 * chord's root. Phrase by phrase the shares of these ways follow what the player does (Dirichlet
 * counts), and each phrase is measured against what was expected before it was heard: what comes
 * later never changes that.
 */
public final class Predictability {

  /** What a listener expects of anybody, in phrases' worth. Common practice, no source. */
  private static final Map<CarryWay, Double> AT_FIRST =
      Map.of(CarryWay.SAME_NOTES, 1.5, CarryWay.BY_STEP, 0.9, CarryWay.WITH_THE_ROOT, 0.6);

  /** A phrase at least this near went as expected; below it the thread is broken. */
  private static final double NEAR = 0.5;

  /** A sequence moves by a step, a third or a fourth; a wider move is a leap to another place. */
  private static final int WIDEST_STEP = 3;

  private final Motif idea;
  private final Map<CarryWay, Double> counts = new EnumMap<>(AT_FIRST);
  private List<Note> before;
  private Context context = Context.NOTES_ONLY;
  private OptionalInt lastStep = OptionalInt.empty();
  private boolean threadHolds = true;

  /** A listener who has heard the idea and nothing else. */
  public Predictability(Motif idea) {
    this.idea = idea;
    this.before = idea.notes();
  }

  /** Hears the next phrase: how near did it come to what was expected? */
  public Expectation hear(List<Note> phrase, Context over) {
    Phrases.check("a phrase", phrase);
    context = over;
    double pulse = Line.pulse(idea.notes());
    Line played = Line.of(phrase, pulse);
    double total = counts.values().stream().mapToDouble(Double::doubleValue).sum();
    Map<CarryWay, Double> fits = new EnumMap<>(CarryWay.class);
    CarryWay best = CarryWay.SAME_NOTES;
    double expectedNearness = 0;
    for (CarryWay way : CarryWay.values()) {
      double fit = nearness(Line.of(expected(way, phrase), pulse), played);
      fits.put(way, fit);
      if (liking(fit, way, total) > liking(fits.get(best), best, total)) {
        best = way;
      }
      expectedNearness = Math.max(expectedNearness, fit * surprise(counts.get(way) / total));
    }
    Expectation heard =
        new Expectation(
            best,
            counts.get(best) / total,
            expected(best, phrase),
            expectedNearness,
            threadHolds && expectedNearness < NEAR);
    threadHolds = expectedNearness >= NEAR;
    learn(best, fits, phrase);
    return heard;
  }

  /** Of two ways that come to nearly the same notes, the one that was counted on more. */
  private double liking(double fit, CarryWay way, double total) {
    return fit + 0.1 * counts.get(way) / total;
  }

  /**
   * What an unlikely way takes off: an expected way counts in full, one that nobody counted on
   * still for the most part, since a listener knows the idea.
   */
  private static double surprise(double share) {
    return 0.7 + 0.3 * Math.min(1, 3 * share);
  }

  private void learn(CarryWay best, Map<CarryWay, Double> fits, List<Note> phrase) {
    if (fits.get(best) < NEAR) {
      return;
    }
    double sum = fits.values().stream().mapToDouble(f -> f * f * f).sum();
    fits.forEach((way, fit) -> counts.merge(way, fit * fit * fit / sum, Double::sum));
    int moved = stepsMoved(before.get(0).pitch(), phrase.get(0));
    if (moved != 0 && Math.abs(moved) <= WIDEST_STEP) {
      lastStep = OptionalInt.of(moved);
    }
    before = phrase;
  }

  /** The statement that one way leads to, at the place where the phrase begins. */
  private List<Note> expected(CarryWay way, List<Note> phrase) {
    double start = phrase.get(0).onsetBeats();
    List<Note> model = way == CarryWay.BY_STEP ? before : idea.notes();
    double shift = start - model.get(0).onsetBeats();
    // Before any step was heard, a step up is as good as a step down.
    int step = lastStep.orElse(phrase.get(0).pitch() < before.get(0).pitch() ? -1 : 1);
    List<Note> made = new ArrayList<>();
    for (Note note : model) {
      double onset = note.onsetBeats() + shift;
      int pitch = Math.max(0, Math.min(127, pitch(way, note.pitch(), onset, step)));
      made.add(new Note(onset, note.durationBeats(), pitch));
    }
    return made;
  }

  private int pitch(CarryWay way, int pitch, double beat, int step) {
    return switch (way) {
      case SAME_NOTES -> fitted(pitch, beat);
      case BY_STEP -> stepped(pitch, beat, step);
      case WITH_THE_ROOT -> fitted(pitch + rootMove(beat), beat);
    };
  }

  /** The pitch itself where it sits well, else the nearest one that does, within a whole tone. */
  private int fitted(int pitch, double beat) {
    if (context.changes().isEmpty()) {
      return pitch;
    }
    PitchClassSet welcome = Grounds.welcome(palette(beat));
    if (welcome.isEmpty() || welcome.contains(pitch)) {
      return pitch;
    }
    for (int off = 1; off <= 2; off++) {
      if (welcome.contains(pitch - off)) {
        return pitch - off;
      }
      if (welcome.contains(pitch + off)) {
        return pitch + off;
      }
    }
    return pitch;
  }

  private PitchClassSet scale(double beat) {
    return context
        .key()
        .map(Key::scale)
        .or(() -> context.changes().map(c -> palette(beat).scale()))
        .orElse(PitchClassSet.EMPTY);
  }

  private int stepsMoved(int from, Note to) {
    PitchClassSet scale = scale(to.onsetBeats());
    if (scale.isEmpty()) {
      return (to.pitch() - from) / 2;
    }
    Ladder ladder = Ladder.of(scale);
    return ladder.step(to.pitch()) - ladder.step(from);
  }

  private int stepped(int pitch, double beat, int step) {
    PitchClassSet scale = scale(beat);
    if (scale.isEmpty()) {
      return pitch + 2 * step;
    }
    Ladder ladder = Ladder.of(scale);
    return ladder.pitch(ladder.step(pitch) + step) + ladder.above(pitch);
  }

  /** How far the root has moved since the idea's chord, the shorter way round. */
  private int rootMove(double beat) {
    Optional<Harmony> there = context.changes().map(changes -> changes.at(beat).harmony());
    Optional<Integer> from = idea.chord().flatMap(Predictability::root);
    Optional<Integer> to = there.flatMap(Predictability::root);
    if (from.isEmpty() || to.isEmpty()) {
      return 0;
    }
    int up = Math.floorMod(to.get() - from.get(), 12);
    return up > 6 ? up - 12 : up;
  }

  private static Optional<Integer> root(Harmony harmony) {
    return harmony.chord().map(chord -> chord.root().pitchClass());
  }

  private ChordPalette palette(double beat) {
    return context.changes().map((Changes c) -> c.paletteAt(beat)).orElseThrow();
  }

  /**
   * How near two lines are: half rhythm, half pitch. A pitch a third away or more is no nearer than
   * any other; one that is only an octave off is half right.
   */
  private static double nearness(Line expected, Line played) {
    double pitch =
        Similarity.edit(
            expected.size,
            played.size,
            (i, j) -> {
              int off = Math.abs(expected.pitch[i] - played.pitch[j]);
              return off % 12 == 0 && off > 0 ? 0.5 : Math.min(1, off / 3.0);
            });
    double rhythm = expected.size < 2 ? pitch : Similarity.rhythm(expected, played, 1);
    return Math.max(0, 0.5 * pitch + 0.5 * rhythm);
  }
}
