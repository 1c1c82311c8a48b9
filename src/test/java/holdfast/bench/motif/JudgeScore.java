package holdfast.bench.motif;

import holdfast.motif.Family;
import holdfast.motif.MotifJudge;
import holdfast.motif.Treatment;
import holdfast.motif.Verdict;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * How a judge did on cases whose making is known.
 *
 * @param treatment share of right treatments
 * @param family share of right families (restated, varied, new)
 * @param calibrationError expected calibration error over ten bins of confidence: how far, on
 *     average, the share of right treatments lies from the confidence (Guo et al. 2017)
 * @param passAtOnePercent share of true restatements above the bar that one in a hundred pairs of
 *     strangers passes
 * @param bar that bar, a probability
 * @param confusion how often each made treatment was judged as each
 * @param families the same of families
 * @param bins for each tenth of confidence: mean confidence, share right, cases
 */
record JudgeScore(
    double treatment,
    double family,
    double calibrationError,
    double passAtOnePercent,
    double bar,
    Map<Treatment, Map<Treatment, Integer>> confusion,
    Map<Family, Map<Family, Integer>> families,
    List<List<Double>> bins) {

  static JudgeScore of(List<Case> cases, List<Case> strangers) {
    MotifJudge judge = new MotifJudge();
    Map<Family, Map<Family, Integer>> families = new EnumMap<>(Family.class);
    Map<Treatment, Map<Treatment, Integer>> confusion = new EnumMap<>(Treatment.class);
    int right = 0;
    int familyRight = 0;
    double[][] bins = new double[10][3];
    List<Double> restated = new java.util.ArrayList<>();
    for (Case c : cases) {
      Verdict v = judge.compare(c.idea(), c.phrase(), c.context());
      boolean hit = c.isTreatment(v);
      right += hit ? 1 : 0;
      familyRight += c.isFamily(v) ? 1 : 0;
      families
          .computeIfAbsent(c.made().family(), f -> new EnumMap<>(Family.class))
          .merge(c.isFamily(v) ? c.made().family() : v.family(), 1, Integer::sum);
      confusion
          .computeIfAbsent(c.made(), t -> new EnumMap<>(Treatment.class))
          .merge(hit ? c.made() : v.treatment(), 1, Integer::sum);
      double[] bin = bins[(int) Math.min(9, v.confidence() * 10)];
      bin[0] += v.confidence();
      bin[1] += hit ? 1 : 0;
      bin[2]++;
      if (c.made().family() == Family.RESTATED) {
        restated.add(v.restates());
      }
    }
    double[] news =
        strangers.stream()
            .mapToDouble(c -> judge.compare(c.idea(), c.phrase(), c.context()).restates())
            .sorted()
            .toArray();
    double bar = news[(int) Math.ceil(news.length * 0.99) - 1];
    double pass = restated.stream().filter(x -> x > bar).count() / (double) restated.size();
    double error = 0;
    List<List<Double>> told = new java.util.ArrayList<>();
    for (double[] bin : bins) {
      error += Math.abs(bin[0] - bin[1]) / cases.size();
      if (bin[2] > 0) {
        told.add(List.of(bin[0] / bin[2], bin[1] / bin[2], bin[2]));
      }
    }
    return new JudgeScore(
        right / (double) cases.size(),
        familyRight / (double) cases.size(),
        error,
        pass,
        bar,
        confusion,
        families,
        told);
  }
}
