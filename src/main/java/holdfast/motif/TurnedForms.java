package holdfast.motif;

import java.util.Arrays;
import java.util.List;

/** The idea upside down, or backwards. */
final class TurnedForms {

  /** Mirror images in semitones against those by scale steps. Common practice, no source. */
  private static final double REAL = 0.5;

  /** Retrogrades that keep the rhythm against those that reverse it too. Common practice. */
  private static final double RHYTHM_FORWARDS = 0.55;

  private static final double[] NONE = {};

  private final Comparison c;

  TurnedForms(Comparison c) {
    this.c = c;
  }

  void weigh() {
    if (c.n >= 2) {
      mirrored();
      Line inRhythm = c.idea.reversed(false);
      List<PitchMap> carried = c.carriedTurned(inRhythm);
      backwards(inRhythm, carried, Math.log(RHYTHM_FORWARDS));
      backwards(c.idea.reversed(true), carried, Math.log(1 - RHYTHM_FORWARDS));
    }
  }

  private void mirrored() {
    double log = c.logPrior(Treatment.INVERTED);
    MirrorMaps mirrors = new MirrorMaps(c.phrase, c.grounds, c.maps, c.scales);
    List<PitchMap> real = mirrors.bySemitones(c.idea, 2);
    for (PitchMap map : real) {
      mirrored(map, log + Math.log(REAL), "");
    }
    for (PitchMap map : mirrors.bySteps(c.idea, c.ideaGrounds, c.key, 2)) {
      if (!map.isIn(real)) {
        mirrored(map, log + Math.log(1 - REAL), "by scale steps");
      }
    }
  }

  private void mirrored(PitchMap map, double log, String detail) {
    c.collected.weigh(Treatment.INVERTED, log + map.logPrior(), map, 1, c.plain, detail);
  }

  private void backwards(Line line, List<PitchMap> carried, double logWay) {
    boolean sameRhythm = Arrays.equals(line.onset, c.idea.onset);
    if (sameRhythm && isOwnMirror(line)) {
      return;
    }
    Pacing pacing = sameRhythm ? c.plain : c.aligner.pacing(line, 1, c.rhythm, c.plain.edges());
    double prior = c.logPrior(Treatment.RETROGRADE) + logWay;
    for (PitchMap map : carried) {
      double log = prior + Comparison.logShare(map);
      if (!c.collected.hopeless(log, map, pacing)) {
        c.collected.keep(
            new Explanation(
                Treatment.RETROGRADE,
                log + c.aligner.alignAbove(c.collected.floor() - log, map.notes(), NONE, pacing),
                map,
                1,
                true,
                () -> turned(map, pacing),
                sameRhythm ? "" : "rhythm reversed too"));
      }
    }
  }

  private int[] turned(PitchMap map, Pacing pacing) {
    c.aligner.align(map.notes(), NONE, pacing);
    int[] path = c.aligner.path();
    for (int j = 0; j < path.length; j++) {
      path[j] = path[j] < 0 ? -1 : c.n - 1 - path[j];
    }
    return path;
  }

  /** Whether the line is the idea itself, moved or not: then nobody hears that it was turned. */
  private boolean isOwnMirror(Line line) {
    int by = line.pitch[0] - c.idea.pitch[0];
    for (int i = 1; i < c.n; i++) {
      if (line.pitch[i] - c.idea.pitch[i] != by) {
        return false;
      }
    }
    return true;
  }
}
