package holdfast.bench.phrase;

import holdfast.phrase.EndScore;
import holdfast.phrase.MadeSolo;
import holdfast.phrase.MadeTake;
import holdfast.phrase.Phrase;
import holdfast.phrase.PhraseCutter;
import holdfast.phrase.PhraseRevision;
import holdfast.phrase.RhythmCost;
import holdfast.phrase.SoloMaker;
import holdfast.phrase.SoloMaker.Habits;
import holdfast.phrase.TakeMaker;
import holdfast.phrase.TakeMaker.Ear;
import holdfast.time.TempoMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Prints how well phrase ends are found on the held-out solos and takes. The argument, if any, is
 * how many of each; 400 otherwise.
 */
public final class PhraseEndsBench {

  private static final double REST_RULE_SECONDS = 0.30;

  private PhraseEndsBench() {}

  /** Prints two tables. */
  public static void main(String[] args) {
    int size = args.length > 0 ? Integer.parseInt(args[0]) : 400;
    solos(size);
    takes(size);
  }

  private static void solos(int size) {
    Map<String, Habits> playing = new LinkedHashMap<>();
    playing.put("jazz", Habits.JAZZ);
    playing.put("spacious", Habits.SPACIOUS);
    playing.put("student", Habits.STUDENT);
    playing.put("detached", Habits.DETACHED);
    playing.put("noisy offs", Habits.NOISY);
    playing.put("long lines", Habits.LONG_LINES);
    System.out.println("Solos, no idea known; the rule: a rest longer than 0.30 s");
    playing.forEach(
        (name, habits) -> {
          Map<String, EndScore> rule = new LinkedHashMap<>();
          Map<String, EndScore> cutter = new LinkedHashMap<>();
          SoloMaker maker = new SoloMaker(habits);
          for (int i = 0; i < size; i++) {
            MadeSolo solo = maker.make(SoloMaker.HOLD_OUT + i);
            TempoMap tempo = TempoMap.steady(solo.beatsPerMinute());
            List<Phrase> cut = PhraseCutter.cut(solo.notes(), tempo, Optional.empty());
            for (String kind : List.of("all", tempoClass(solo.beatsPerMinute()))) {
              rule.computeIfAbsent(kind, k -> new EndScore()).add(solo.firsts(), restRule(solo));
              cutter.computeIfAbsent(kind, k -> new EndScore()).add(solo.firsts(), cut);
            }
          }
          rule.keySet().stream()
              .sorted()
              .forEach(
                  kind ->
                      System.out.printf(
                          Locale.ROOT,
                          "  %-10s %-10s rule %s%n  %-21s cutter %s%n",
                          name,
                          kind,
                          rule.get(kind),
                          "",
                          cutter.get(kind)));
        });
  }

  private static String tempoClass(double bpm) {
    return bpm < 90 ? "under 90" : bpm < 140 ? "90-140" : bpm < 180 ? "140-180" : "over 180";
  }

  private static Set<Integer> restRule(MadeSolo solo) {
    Set<Integer> firsts = new HashSet<>();
    for (int i = 1; i < solo.notes().size(); i++) {
      double off = solo.notes().get(i - 1).endSeconds();
      if (solo.notes().get(i).onsetSeconds() - off > REST_RULE_SECONDS) {
        firsts.add(i);
      }
    }
    return firsts;
  }

  private static void takes(int size) {
    System.out.println("Takes that carry an idea");
    for (Ear ear : Ear.values()) {
      take("plain", new TakeMaker(ear, 0, 0, 0), size);
      take("hesitations in 15 %", new TakeMaker(ear, 0.15, 0, 0), size);
      take("a tenth join, ideas with rests", new TakeMaker(ear, 0, 0.1, 0.15), size);
      take("all of that", new TakeMaker(ear, 0.15, 0.1, 0.15), size);
      take("half of them join", new TakeMaker(ear, 0, 0.5, 0), size);
    }
  }

  private static void take(String name, TakeMaker maker, int size) {
    EndScore unknown = new EndScore();
    EndScore live = new EndScore();
    EndScore revised = new EndScore();
    for (int i = 0; i < size; i++) {
      MadeTake take = maker.make(SoloMaker.HOLD_OUT + i);
      TempoMap tempo = TempoMap.steady(take.beatsPerMinute());
      unknown.add(take.firsts(), PhraseCutter.cut(take.notes(), tempo, Optional.empty()));
      List<Phrase> cut = PhraseCutter.cut(take.notes(), tempo, Optional.of(take.idea()));
      live.add(take.firsts(), cut);
      RhythmCost cost = new RhythmCost(take.notes(), tempo, take.idea());
      revised.add(take.firsts(), PhraseRevision.of(cut, cost).phrases());
    }
    System.out.printf(
        Locale.ROOT,
        "  %s, %s%n    idea unknown %s%n    idea known   %s%n    in hindsight F %.3f%n",
        maker.ear().name().toLowerCase(Locale.ROOT),
        name,
        unknown,
        live,
        revised.f());
  }
}
