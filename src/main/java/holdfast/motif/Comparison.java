package holdfast.motif;

import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.List;

/** An idea and a phrase side by side, with all that every explanation needs. */
final class Comparison {

  final Line idea;
  final Ground[] ideaGrounds;
  final Line phrase;
  final Ground[] grounds;
  final PitchClassSet key;
  final Player player;

  /** ln chance, a note, that it is missing or too many by mistake. */
  final double slip;

  final Priors priors;
  final Scales scales;
  final int n;
  final int m;
  final RhythmModel rhythm;
  final Background background;
  final Aligner aligner;
  final PitchMaps maps;
  final PitchMap literal;
  final Pacing plain;
  final Collected collected;

  Comparison(
      Line idea,
      Ground[] ideaGrounds,
      Line phrase,
      Ground[] grounds,
      PitchClassSet key,
      Player player,
      double spreading,
      Priors priors,
      Scales scales) {
    this.idea = idea;
    this.ideaGrounds = ideaGrounds;
    this.phrase = phrase;
    this.grounds = grounds;
    this.key = key;
    this.player = player;
    this.priors = priors;
    this.scales = scales;
    this.n = idea.size;
    this.m = phrase.size;
    double meanStep = n < 2 ? 1 : Math.max(idea.span() / (n - 1), 0.25);
    this.rhythm = new RhythmModel(player, meanStep);
    this.background = new Background(idea, phrase, grounds, rhythm, scales);
    this.aligner = new Aligner(isFarLonger() ? 1 : n, phrase, background);
    Intonation intonation = new Intonation(player, spreading, phrase.isTuned());
    this.maps = new PitchMaps(phrase, grounds, intonation, scales);
    this.literal = maps.literal(idea);
    this.slip = Math.log(player.extraOrMissing());
    this.plain =
        isFarLonger()
            ? new Pacing(new double[0], Edges.whole(n, m, slip), new double[0], 0)
            : aligner.pacing(idea, 1, rhythm, Edges.whole(n, m, slip));
    this.collected = new Collected(aligner);
  }

  /**
   * Whether the phrase is so much longer than the idea that no single statement explains it, only
   * the idea again and again.
   */
  boolean isFarLonger() {
    return m > 4 * n + 32;
  }

  double logPrior(Treatment treatment) {
    return Math.log(priors.share(treatment));
  }

  /** The ways in which the idea's pitches may have been carried over. */
  List<PitchMap> carried() {
    List<PitchMap> moved = maps.transposed(idea, 2);
    List<PitchMap> all = new ArrayList<>();
    all.add(literal);
    all.addAll(moved);
    all.addAll(maps.sequences(idea, ideaGrounds, key));
    all.add(maps.skewed(idea, 0));
    if (!moved.isEmpty()) {
      all.add(maps.skewed(idea, moved.get(0).semitones()));
    }
    return all;
  }

  /** The ways in which those of the idea turned round may have been: nobody skews it then. */
  List<PitchMap> carriedTurned(Line line) {
    List<PitchMap> all = new ArrayList<>();
    all.add(maps.literal(line));
    all.addAll(maps.transposed(line, 1));
    all.addAll(maps.sequences(line, ideaGrounds, key));
    return all;
  }

  /** ln share of a pitch map within a treatment that is about something else than pitch. */
  static double logShare(PitchMap map) {
    double way =
        switch (map.move()) {
          case LITERAL -> 0.5;
          case TRANSPOSED -> 0.25;
          case STEPS -> 0.17;
          case SKEWED -> 0.08;
        };
    return Math.log(way) + map.logPrior();
  }

  /** The word for a pitch map where nothing else is changed. */
  static Treatment treatment(PitchMap map) {
    return switch (map.move()) {
      case LITERAL -> Treatment.LITERAL;
      case TRANSPOSED -> Treatment.TRANSPOSED;
      case STEPS, SKEWED -> Treatment.SEQUENCE;
    };
  }
}
