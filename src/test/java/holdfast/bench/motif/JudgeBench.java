package holdfast.bench.motif;

import holdfast.bench.phrase.PhraseEndsBench;
import holdfast.motif.Family;
import holdfast.motif.Treatment;
import java.io.PrintStream;
import java.util.Arrays;
import java.util.List;

/**
 * Prints how the judge does on the labelled set, tuning half and held-out half apart: accuracy,
 * calibration, false alarms, confusion matrices; then whole takes, ideas in other clothes, and the
 * ends of phrases. Every seed is fixed.
 */
public final class JudgeBench {

  static final long SEED = 20261125;

  private JudgeBench() {}

  private static final int PHRASES_IN_A_TAKE = 8;

  /** Optional argument: cases for each table; 4000 unless told. */
  public static void main(String[] args) {
    int size = args.length > 0 ? Integer.parseInt(args[0]) : 4000;
    PrintStream out = System.out;
    for (Performer performer : Performer.values()) {
      for (boolean written : new boolean[] {true, false}) {
        for (Known known : Known.values()) {
          for (IdeaMaker maker : List.of(IdeaMaker.WALK, IdeaMaker.CELLS)) {
            LabelledSet set = new LabelledSet(performer, maker, known, written);
            String what =
                performer
                    + (written ? ", idea written" : ", idea played")
                    + known.words()
                    + (maker == IdeaMaker.WALK ? ", walks" : ", cells");
            boolean full = written && known == Known.CHORDS_AND_PLAYER;
            report(what, set, size, full, out);
          }
        }
      }
    }
    for (Performer performer : Performer.values()) {
      for (IdeaMaker maker : List.of(IdeaMaker.WALK, IdeaMaker.CELLS)) {
        takes(performer, maker, size / (2 * PHRASES_IN_A_TAKE), out);
      }
    }
    for (Performer performer : Performer.values()) {
      for (IdeaMaker maker : List.of(IdeaMaker.WALK, IdeaMaker.CELLS)) {
        LabelledSet set = new LabelledSet(performer, maker, Known.CHORDS_AND_PLAYER, false);
        out.printf(
            "%s, %s, two ideas beside each other%n  %s%n",
            performer,
            maker == IdeaMaker.WALK ? "walks" : "cells",
            SamenessScore.of(set, size / 2, SEED + 3));
      }
    }
    PhraseEndsBench.main(new String[0]);
  }

  /** Whole takes, the idea heard once: what is known of it grows. */
  private static void takes(Performer performer, IdeaMaker maker, int size, PrintStream out) {
    LabelledSet set = new LabelledSet(performer, maker, Known.CHORDS_AND_PLAYER, false);
    TakeScore score = TakeScore.of(set.takes(size, PHRASES_IN_A_TAKE, SEED + 2));
    out.printf(
        "%s, %s, %d takes of %d phrases, the idea heard once%n",
        performer, maker == IdeaMaker.WALK ? "walks" : "cells", size, PHRASES_IN_A_TAKE);
    out.println("  held against its opening alone  " + score.openingAlone());
    out.println("  live                            " + score.live());
    out.println("  in hindsight                    " + score.hindsight());
    out.println("  the idea as it was meant        " + score.ideaKnown());
  }

  private static void report(
      String what, LabelledSet set, int size, boolean full, PrintStream out) {
    List<Case> strangers = set.strangers(size, SEED + 1);
    print(what + ", tuning", JudgeScore.of(set.tuning(size, SEED), strangers), false, out);
    print(what + ", held out", JudgeScore.of(set.heldOut(size, SEED), strangers), full, out);
  }

  private static void print(String what, JudgeScore score, boolean full, PrintStream out) {
    out.printf(
        "%-62s treatment %.3f  family %.3f  ECE %.3f  at 1%% false alarms %.3f pass (bar %.4f)%n",
        what,
        score.treatment(),
        score.family(),
        score.calibrationError(),
        score.passAtOnePercent(),
        score.bar());
    if (!full) {
      return;
    }
    out.printf("  %-14s", "made \\ judged");
    Arrays.stream(Treatment.values()).forEach(t -> out.printf("%6.5s", t.word()));
    out.println();
    score
        .confusion()
        .forEach(
            (made, row) -> {
              out.printf("  %-14s", made.word());
              for (Treatment t : Treatment.values()) {
                int k = row.getOrDefault(t, 0);
                out.printf("%6s", k == 0 ? "." : Integer.toString(k));
              }
              out.println();
            });
    out.printf("  %-14s", "made \\ judged");
    Arrays.stream(Family.values()).forEach(f -> out.printf("%10s", f.word()));
    out.println();
    score
        .families()
        .forEach(
            (made, row) -> {
              out.printf("  %-14s", made.word());
              Arrays.stream(Family.values())
                  .forEach(f -> out.printf("%10d", row.getOrDefault(f, 0)));
              out.println();
            });
    for (List<Double> bin : score.bins()) {
      out.printf("  sure %.2f: right %.2f of %.0f%n", bin.get(0), bin.get(1), bin.get(2));
    }
  }
}
