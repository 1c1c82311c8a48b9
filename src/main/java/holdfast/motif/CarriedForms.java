package holdfast.motif;

import java.util.List;

/**
 * The idea in its own rhythm: literal, transposed, as a sequence, with its contour or its rhythm
 * alone.
 */
final class CarriedForms {

  /** Of all sequences, those along scales; the others are skewed in place. Common practice. */
  private static final double BY_STEPS = 0.6;

  /** Of all kept contours, those that move some notes and leave the others where they are. */
  private static final double SOME_NOTES = 0.4;

  /** Of those, the ones that stand in the idea's place. */
  private static final double IN_PLACE = 0.8;

  /** A rhythm of even notes is anybody's: so much rarer it is what a player means to keep. */
  private static final double EVEN = 0.2;

  /** Tempo of one statement against another, in e-folds: 10 %. */
  private static final double TEMPO_SPREAD = 0.1;

  /** A tempo that differs by less is no other tempo: the rhythm model's drift carries it. */
  private static final double SAME_TEMPO = 0.06;

  /** ln cost of a tempo of its own, which the likelihood of the times must pay for. */
  private static final double OTHER_TEMPO = -1.5;

  private static final double[] NONE = {};

  private final Comparison c;
  private final List<PitchMap> carried;

  CarriedForms(Comparison c, List<PitchMap> carried) {
    this.c = c;
    this.carried = carried;
  }

  void weigh() {
    plain();
    rhythmAlone();
    contourAlone();
    for (PitchMap map : carried) {
      if (map.move() == PitchMap.Move.LITERAL || map.move() == PitchMap.Move.TRANSPOSED) {
        someNotesMoved(map);
      }
    }
  }

  /** Literal, transposed, as a sequence. */
  void plain() {
    double tempo = tempo();
    boolean otherTempo = Math.abs(Math.log(tempo)) > SAME_TEMPO;
    double z = Math.log(tempo) / TEMPO_SPREAD;
    double logTempo = -0.5 * z * z + OTHER_TEMPO;
    Pacing stretched =
        otherTempo ? c.aligner.pacing(c.idea, tempo, c.rhythm, c.plain.edges()) : c.plain;
    for (PitchMap map : carried) {
      Treatment treatment = Comparison.treatment(map);
      double log = c.logPrior(treatment) + logWay(map) + map.logPrior();
      plain(treatment, log, map, 1, c.plain);
      if (otherTempo) {
        plain(treatment, log + logTempo, map, tempo, stretched);
      }
    }
  }

  private void plain(Treatment treatment, double log, PitchMap map, double scale, Pacing pacing) {
    boolean skew = map.move() == PitchMap.Move.SKEWED;
    c.collected.weigh(treatment, log, map, scale, pacing, "", path -> !skew || demanded(map, path));
  }

  private static double logWay(PitchMap map) {
    return switch (map.move()) {
      case LITERAL, TRANSPOSED -> 0;
      case STEPS -> Math.log(BY_STEPS);
      case SKEWED -> Math.log(1 - BY_STEPS);
    };
  }

  /** A skew moves at least one note that asked for it, and turns no up into a down. */
  private boolean demanded(PitchMap map, int[] ideaOf) {
    boolean demanded = false;
    for (int j = 0; j < c.m; j++) {
      if (ideaOf[j] >= 0) {
        int meant = map.expected()[ideaOf[j] * c.m + j];
        boolean clashes = !c.grounds[j].knowsChord() || !c.grounds[j].welcomes(meant);
        demanded |= clashes && c.phrase.pitch[j] != meant;
      }
    }
    return demanded && Contour.neverTurned(c.idea, c.phrase, ideaOf);
  }

  /** The phrase's tempo against the idea's, where it is near enough to be the same one. */
  private double tempo() {
    if (c.n < 2 || c.m < 2 || Math.abs(c.n - c.m) > 1) {
      return 1;
    }
    double ratio = c.phrase.span() / c.idea.span();
    return ratio > StretchedForms.LEAST_SHRUNK && ratio < StretchedForms.LEAST_STRETCHED
        ? ratio
        : 1;
  }

  private void someNotesMoved(PitchMap place) {
    PitchMap map = c.maps.someMoved(place, c.idea);
    double where =
        place.semitones() == 0 ? Math.log(IN_PLACE) : Math.log(1 - IN_PLACE) + place.logPrior();
    c.collected.weigh(
        Treatment.CONTOUR_KEPT,
        c.logPrior(Treatment.CONTOUR_KEPT) + Math.log(SOME_NOTES) + where,
        map,
        1,
        c.plain,
        "",
        path -> anyMoved(map, path) && Contour.kept(c.idea, c.phrase, path));
  }

  private boolean anyMoved(PitchMap map, int[] ideaOf) {
    for (int j = 0; j < c.m; j++) {
      if (ideaOf[j] >= 0 && c.phrase.pitch[j] != map.expected()[ideaOf[j] * c.m + j]) {
        return true;
      }
    }
    return false;
  }

  private void contourAlone() {
    double log = c.logPrior(Treatment.CONTOUR_KEPT) + Math.log(1 - SOME_NOTES);
    double[] starts = Contour.starts(c.idea, c.phrase, c.background);
    double[] moves = Contour.moves(c.idea, c.phrase, c.background, c.aligner);
    alone(Treatment.CONTOUR_KEPT, log, starts, moves, c.aligner.best(starts, moves), 0);
  }

  private void rhythmAlone() {
    if (c.n < 2) {
      return;
    }
    double[] free = new double[c.n * c.m];
    double[] pitch = c.background.pitch;
    for (int i = 0; i < c.n; i++) {
      System.arraycopy(pitch, 0, free, i * c.m, c.m);
    }
    // The pitches are new material of any kind, not melodic motion alone.
    double anyKind = c.background.logTotal() - c.aligner.logAsNew();
    double log = c.logPrior(Treatment.RHYTHM_KEPT) + (c.idea.isEven() ? Math.log(EVEN) : 0);
    alone(Treatment.RHYTHM_KEPT, log, free, NONE, pitch, anyKind);
  }

  private void alone(
      Treatment treatment,
      double logPrior,
      double[] notes,
      double[] moves,
      double[] best,
      double besides) {
    double floor = c.collected.floor() - logPrior - besides;
    if (c.aligner.bound(best, c.plain) < floor) {
      return;
    }
    double log = logPrior + c.aligner.alignAbove(floor, notes, moves, c.plain) + besides;
    Explanation.Redo redo =
        () -> {
          c.aligner.align(notes, moves, c.plain);
          return c.aligner.path();
        };
    c.collected.keep(new Explanation(treatment, log, c.literal, 1, false, redo, ""));
  }
}
