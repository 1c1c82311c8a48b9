package holdfast.motif;

import holdfast.theory.PitchClassSet;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** From explanations to a verdict: probabilities, the winner, and what became of each note. */
final class Weighing {

  /** A kept contour is the idea itself where no note lies farther than this from its place. */
  private static final int NEAR_PLACE = 3;

  /** And where its notes lie no farther on average, in semitones. */
  private static final double NEAR_PLACE_ON_AVERAGE = 1.25;

  private final Line idea;
  private final Line phrase;
  private final Ground[] grounds;
  private final PitchClassSet key;
  private final Scales scales;
  private final double temperature;
  private final List<Explanation> all;
  private final Background background;

  Weighing(Comparison c, List<Explanation> all, double temperature) {
    this.idea = c.idea;
    this.phrase = c.phrase;
    this.grounds = c.grounds;
    this.key = c.key;
    this.scales = c.scales;
    this.background = c.background;
    this.all = all;
    this.temperature = temperature;
  }

  Verdict verdict(double pulse, double beatsPerBar) {
    Map<Treatment, Explanation> best = new EnumMap<>(Treatment.class);
    for (Explanation e : all) {
      best.merge(e.treatment(), e, (a, b) -> b.log() > a.log() ? b : a);
    }
    Map<Treatment, Double> p = probabilities(best);
    boolean contourIsTheIdea =
        best.containsKey(Treatment.CONTOUR_KEPT) && nearPlace(best.get(Treatment.CONTOUR_KEPT));
    Map<Family, Double> families = new EnumMap<>(Family.class);
    p.forEach((t, share) -> families.merge(family(t, contourIsTheIdea), share, Double::sum));
    Family family = likeliest(families);
    Map<Treatment, Double> within = new EnumMap<>(p);
    within.keySet().removeIf(t -> family(t, contourIsTheIdea) != family);
    Treatment treatment = likeliest(within);
    Explanation winner = best.get(treatment);
    int[] ideaOf = winner.aligner().path();
    double fromNew = 0;
    for (Map.Entry<Treatment, Double> e : p.entrySet()) {
      if (e.getKey() != Treatment.NEW) {
        fromNew += e.getValue();
      }
    }
    double scale = winner.scale();
    double rhythm = Similarity.rhythm(idea, phrase, scale);
    double intervals = Similarity.intervals(idea, phrase);
    int moved = treatment == Treatment.NEW ? 0 : transposition(winner, ideaOf);
    return new Verdict(
        treatment,
        family,
        moved,
        treatment == Treatment.NEW ? 0 : winner.map().steps(),
        shift(winner, ideaOf, pulse, beatsPerBar),
        scale,
        p.get(treatment),
        Math.min(1, fromNew),
        p,
        similarity(rhythm, intervals),
        new Evidence(clamp(rhythm), clamp(Similarity.contour(idea, phrase)), clamp(intervals)),
        treatment == Treatment.NEW
            ? List.of()
            : new NoteChanges(idea, phrase, grounds).of(winner, ideaOf, moved),
        background.kind(),
        detail(winner, ideaOf));
  }

  private String detail(Explanation e, int[] ideaOf) {
    if (e.treatment() == Treatment.CONTOUR_KEPT && e.detail().isEmpty()) {
      return Contour.sizes(idea, phrase, ideaOf);
    }
    return e.detail();
  }

  private static double clamp(double share) {
    return Math.max(0, Math.min(1, share));
  }

  private static Family family(Treatment t, boolean contourIsTheIdea) {
    return t == Treatment.CONTOUR_KEPT && contourIsTheIdea ? Family.RESTATED : t.family();
  }

  /** ln Σ over each treatment's explanations, tempered, as shares that sum to 1. */
  private Map<Treatment, Double> probabilities(Map<Treatment, Explanation> best) {
    Map<Treatment, Double> sums = new EnumMap<>(Treatment.class);
    for (Explanation e : all) {
      sums.merge(e.treatment(), Math.exp(e.log() - best.get(e.treatment()).log()), Double::sum);
    }
    double top = Double.NEGATIVE_INFINITY;
    for (Map.Entry<Treatment, Double> e : sums.entrySet()) {
      e.setValue((best.get(e.getKey()).log() + Math.log(e.getValue())) / temperature);
      top = Math.max(top, e.getValue());
    }
    double all = 0;
    Map<Treatment, Double> p = new EnumMap<>(Treatment.class);
    for (Treatment t : Treatment.values()) {
      double share = sums.containsKey(t) ? Math.exp(sums.get(t) - top) : 0;
      p.put(t, share);
      all += share;
    }
    double sum = all;
    p.replaceAll((t, share) -> share / sum);
    return p;
  }

  private static <K> K likeliest(Map<K, Double> shares) {
    return Collections.max(shares.entrySet(), Map.Entry.comparingByValue()).getKey();
  }

  /** Whether every note is there, in its rhythm, and near where the idea would have it. */
  private boolean nearPlace(Explanation e) {
    if (idea.size != phrase.size || e.scale() != 1 || e.detail().equals(Explanation.OWN_RHYTHM)) {
      return false;
    }
    int[] ideaOf = e.aligner().path();
    for (int j = 0; j < ideaOf.length; j++) {
      if (ideaOf[j] != j) {
        return false;
      }
    }
    return nearPlace(idea, phrase);
  }

  /** Whether note for note the one lies near where the other is, moved as one or not. */
  static boolean nearPlace(Line idea, Line phrase) {
    int[] off = new int[phrase.size];
    for (int j = 0; j < off.length; j++) {
      off[j] = phrase.pitch[j] - idea.pitch[j];
    }
    int[] sorted = off.clone();
    Arrays.sort(sorted);
    int middle = sorted[sorted.length / 2];
    return near(off, 0) || near(off, middle);
  }

  private static boolean near(int[] off, int from) {
    double sum = 0;
    for (int o : off) {
      int size = Math.abs(o - from);
      if (size > NEAR_PLACE) {
        return false;
      }
      sum += size;
    }
    return sum / off.length <= NEAR_PLACE_ON_AVERAGE;
  }

  private double similarity(double rhythm, double intervals) {
    if (key.isEmpty()) {
      return clamp(0.6 * intervals + 0.4 * rhythm);
    }
    return clamp(
        0.5 * Similarity.degrees(idea, phrase)
            + 0.3 * Similarity.steps(idea, phrase, scales.ladder(key))
            + 0.2 * rhythm);
  }

  /** The middle one of the distances between the notes and their own idea notes. */
  private int transposition(Explanation e, int[] ideaOf) {
    if (e.map().move() == PitchMap.Move.TRANSPOSED || e.map().move() == PitchMap.Move.LITERAL) {
      if (e.treatment() != Treatment.CONTOUR_KEPT && e.treatment() != Treatment.RHYTHM_KEPT) {
        return e.map().semitones();
      }
    }
    int count = 0;
    int[] off = new int[phrase.size];
    for (int j = 0; j < phrase.size; j++) {
      if (ideaOf[j] >= 0) {
        off[count++] = phrase.pitch[j] - idea.pitch[ideaOf[j]];
      }
    }
    if (count == 0) {
      return 0;
    }
    int[] sorted = Arrays.copyOf(off, count);
    Arrays.sort(sorted);
    int middle = sorted[count / 2];
    // From scale to scale in place: whatever most notes did, the idea did not move.
    boolean inPlace = e.map().move() == PitchMap.Move.STEPS && Math.abs(middle) <= 1;
    return inPlace && e.treatment() == Treatment.SEQUENCE ? 0 : middle;
  }

  private double shift(Explanation e, int[] ideaOf, double pulse, double beatsPerBar) {
    double beats = (phrase.onset[0] - idea.onset[0]) * pulse;
    int count = 0;
    double[] off = new double[phrase.size];
    for (int j = 0; j < phrase.size; j++) {
      int i = ideaOf[j];
      if (i >= 0 && e.scale() == 1 && !e.backwards()) {
        off[count++] = (phrase.onset[j] - idea.onset[i]) * pulse;
      } else if (i == 0 && count == 0 && !e.backwards()) {
        beats = (phrase.onset[j] - idea.onset[0]) * pulse;
      }
    }
    if (count > 0) {
      double[] sorted = Arrays.copyOf(off, count);
      Arrays.sort(sorted);
      beats = sorted[count / 2];
    }
    double bars = Math.rint(beats / beatsPerBar);
    boolean sameBar = Math.abs(beats) < beatsPerBar && Math.abs(beats - bars * beatsPerBar) > 0.5;
    if (sameBar) {
      return beats;
    }
    double inBar = beats - Math.floor(beats / beatsPerBar) * beatsPerBar;
    return inBar > beatsPerBar / 2 ? inBar - beatsPerBar : inBar;
  }
}
