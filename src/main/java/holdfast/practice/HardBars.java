package holdfast.practice;

import holdfast.backing.BarRange;
import holdfast.harmony.Fit;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The bars of a form that gave the most trouble in a take.
 *
 * @param bars which, with the bar that leads into them where there is one
 * @param chords the chords over which it happened
 * @param letGo how many phrases let the idea go there
 * @param rubbed how many kept it and rub there
 */
public record HardBars(BarRange bars, List<String> chords, int letGo, int rubbed) {

  /** A longer loop is no loop any more. */
  private static final int MOST_BARS = 4;

  /** Letting the idea go weighs more than keeping it where it rubs. */
  private static final int LET_GO = 2;

  private static final int RUBS = 1;

  private static final double HAIR_BEATS = 0.01;

  /** Copies the chords. */
  public HardBars {
    chords = List.copyOf(chords);
  }

  /** The hardest bars of a take; empty where every phrase carried the idea and sat. */
  public static Optional<HardBars> of(JudgedTake take) {
    Setting setting = take.setting();
    Map<Integer, Integer> trouble = new TreeMap<>();
    for (JudgedPhrase phrase : take.phrases()) {
      int size = phrase.statesTheIdea() ? 0 : trouble(phrase);
      if (size > 0) {
        for (int bar : barsOf(phrase, setting)) {
          trouble.merge(bar, size, Integer::sum);
        }
      }
    }
    if (trouble.isEmpty()) {
      return Optional.empty();
    }
    int last = setting.form().bars().size();
    BarRange bars = worst(trouble, last);
    return Optional.of(counted(take, bars));
  }

  private static int trouble(JudgedPhrase phrase) {
    if (!phrase.carries()) {
      return LET_GO;
    }
    return phrase.harmony().fit().map(Fit::sits).orElse(true) ? 0 : RUBS;
  }

  /** Every bar that the phrase sounds in; a pick-up belongs to the bar that it leads to. */
  private static List<Integer> barsOf(JudgedPhrase phrase, Setting setting) {
    int from = phrase.place().bar();
    double end = Math.max(phrase.startBeat(), phrase.endBeat() - HAIR_BEATS);
    int to = setting.way().at(end).bar();
    List<Integer> bars = new ArrayList<>();
    for (int bar = from; bar <= Math.max(from, to); bar++) {
      bars.add(bar);
    }
    return to < from ? List.of(from) : bars;
  }

  /** The stretch with the most trouble a bar, and the bar before it to come in from. */
  private static BarRange worst(Map<Integer, Integer> trouble, int lastBar) {
    BarRange worst = new BarRange(1, 1);
    double most = -1;
    for (int first : trouble.keySet()) {
      int sum = 0;
      for (int bar = first; bar < first + MOST_BARS - 1 && trouble.containsKey(bar); bar++) {
        sum += trouble.get(bar);
        if (sum > most) {
          most = sum;
          worst = new BarRange(first, bar);
        }
      }
    }
    int from = Math.max(1, worst.first() - 1);
    int to = Math.min(lastBar, Math.max(worst.last(), from + 1));
    return new BarRange(from, to);
  }

  private static HardBars counted(JudgedTake take, BarRange bars) {
    Set<String> chords = new LinkedHashSet<>();
    int letGo = 0;
    int rubbed = 0;
    for (JudgedPhrase phrase : take.phrases()) {
      int size = phrase.statesTheIdea() ? 0 : trouble(phrase);
      if (size > 0 && bars.contains(phrase.place().bar())) {
        chords.add(phrase.mainChord().harmony().display());
        letGo += size == LET_GO ? 1 : 0;
        rubbed += size == RUBS ? 1 : 0;
      }
    }
    return new HardBars(bars, List.copyOf(chords), letGo, rubbed);
  }

  /** What happened there, in one sentence to the student. */
  public String why() {
    String over = chords.isEmpty() ? "" : " over " + chordNames();
    if (letGo > 0) {
      return "Here" + over + " the idea was let go" + times(letGo) + ".";
    }
    return "Here" + over + " the idea rubs against the chord" + times(rubbed) + ".";
  }

  /** What to do there, in words that go on a sentence. */
  public String advice() {
    String round = "go round " + bars.words() + " slowly, ";
    if (letGo > 0) {
      String over = chords.isEmpty() ? "" : " over " + chordNames();
      return round + "say your idea's rhythm aloud, and keep its shape" + over;
    }
    String against = chords.isEmpty() ? "rubs" : "rubs against " + chordNames();
    return round + "keep the idea and move only the note that " + against + ", by a step or less";
  }

  private String chordNames() {
    int last = chords.size() - 1;
    return last == 0
        ? chords.get(0)
        : String.join(", ", chords.subList(0, last)) + " and " + chords.get(last);
  }

  private static String times(int count) {
    return count <= 1 ? "" : count == 2 ? " twice" : " " + count + " times";
  }
}
