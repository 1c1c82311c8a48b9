package holdfast.bench.motif;

import holdfast.motif.Family;
import holdfast.motif.MotifJudge;
import holdfast.motif.Treatment;
import holdfast.motif.Verdict;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Prints how the judge does on the labelled set: tuning half and held-out half apart. */
public final class JudgeBench {

  private static final long SEED = 20261125;

  private JudgeBench() {}

  /** Optional argument: cases for each table; 4000 unless told. */
  public static void main(String[] args) {
    int size = args.length > 0 ? Integer.parseInt(args[0]) : 4000;
    boolean brief = args.length > 1;
    PrintStream out = System.out;
    for (Performer performer : Performer.values()) {
      for (boolean written : new boolean[] {true, false}) {
        for (boolean chords : new boolean[] {true, false}) {
          for (IdeaMaker maker : List.of(IdeaMaker.WALK, IdeaMaker.CELLS)) {
            String what =
                performer
                    + (written ? ", idea written" : ", idea played")
                    + (chords ? ", chords known" : ", notes alone")
                    + (maker == IdeaMaker.WALK ? ", walks" : ", cells");
            LabelledSet set = new LabelledSet(performer, maker, chords, written);
            report(
                what,
                set.make(size, SEED),
                set.strangers(size, SEED + 1),
                brief || !written || !chords,
                out);
          }
        }
      }
    }
  }

  private static void report(
      String what, List<Case> cases, List<Case> strangers, boolean brief, PrintStream out) {
    List<Case> tune = new ArrayList<>();
    List<Case> held = new ArrayList<>();
    for (int i = 0; i < cases.size(); i++) {
      (i % 2 == 0 ? tune : held).add(cases.get(i));
    }
    table(what + ", tuning", tune, strangers, true, out);
    table(what + ", held out", held, strangers, brief, out);
  }

  private static void table(
      String what, List<Case> cases, List<Case> strangers, boolean brief, PrintStream out) {
    MotifJudge judge = new MotifJudge();
    Map<Treatment, Map<Treatment, Integer>> confusion = new EnumMap<>(Treatment.class);
    int right = 0;
    int familyRight = 0;
    double[] sure = new double[10];
    double[] hits = new double[10];
    int[] count = new int[10];
    List<Double> newScores = new ArrayList<>();
    List<Double> restatedScores = new ArrayList<>();
    for (Case c : cases) {
      Verdict v = judge.compare(c.idea(), c.phrase(), c.context());
      boolean hit = c.treatments().contains(v.treatment());
      right += hit ? 1 : 0;
      familyRight += c.families().contains(v.family()) || hitsBy(c, v) ? 1 : 0;
      confusion
          .computeIfAbsent(c.made(), t -> new EnumMap<>(Treatment.class))
          .merge(hit ? c.made() : v.treatment(), 1, Integer::sum);
      int bin = (int) Math.min(9, v.confidence() * 10);
      sure[bin] += v.confidence();
      hits[bin] += hit ? 1 : 0;
      count[bin]++;
      if (c.made().family() == Family.RESTATED) {
        restatedScores.add(v.restates());
      }
    }
    for (Case c : strangers) {
      newScores.add(judge.compare(c.idea(), c.phrase(), c.context()).restates());
    }
    double ece = 0;
    for (int b = 0; b < 10; b++) {
      ece += Math.abs(sure[b] - hits[b]) / cases.size();
    }
    double[] news = newScores.stream().mapToDouble(x -> x).sorted().toArray();
    double bar = news[(int) Math.ceil(news.length * 0.99) - 1];
    double pass =
        restatedScores.stream().filter(x -> x > bar).count() / (double) restatedScores.size();
    out.printf(
        "%-58s treatment %.3f  family %.3f  ECE %.3f  at 1%% false alarms %.3f pass (bar %.4f)%n",
        what, right / (double) cases.size(), familyRight / (double) cases.size(), ece, pass, bar);
    if (!brief) {
      print(confusion, out);
      for (int b = 0; b < 10; b++) {
        if (count[b] > 0) {
          out.printf(
              "  sure %.2f: right %.2f of %d%n", sure[b] / count[b], hits[b] / count[b], count[b]);
        }
      }
    }
  }

  /** A word that is right brings its own family along. */
  private static boolean hitsBy(Case c, Verdict v) {
    return c.treatments().contains(v.treatment()) && v.family() == v.treatment().family();
  }

  private static void print(Map<Treatment, Map<Treatment, Integer>> confusion, PrintStream out) {
    out.printf("  %-14s", "made \\ judged");
    Arrays.stream(Treatment.values()).forEach(t -> out.printf("%6.5s", t.word()));
    out.println();
    confusion.forEach(
        (made, row) -> {
          out.printf("  %-14s", made.word());
          for (Treatment t : Treatment.values()) {
            int k = row.getOrDefault(t, 0);
            out.printf("%6s", k == 0 ? "." : Integer.toString(k));
          }
          out.println();
        });
  }
}
