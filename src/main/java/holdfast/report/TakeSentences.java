package holdfast.report;

import holdfast.motif.Family;
import holdfast.session.Counts;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A take in two or three plain sentences: how far the idea was carried, where it was let go, what
 * to try next. No grade, and nothing about talent.
 */
public final class TakeSentences {

  private TakeSentences() {}

  /** The sentences, in the order in which they are read. */
  public static List<String> of(JudgedTake take) {
    if (take.idea().isEmpty()) {
      return List.of("I did not hear any notes in this take.");
    }
    Counts counts = take.counts();
    if (counts.phrases() == 0) {
      return List.of(
          "I heard one phrase, your idea. Carry it on to the next chord: keep its rhythm and its"
              + " shape.");
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(carried(counts));
    sentences.add(lost(take));
    sentences.add(next(take));
    return List.copyOf(sentences);
  }

  /** What hindsight tells otherwise than it was told while the take ran. */
  public static List<String> inHindsight(JudgedTake take) {
    return take.afterthoughts().stream()
        .map(
            thought -> {
              JudgedPhrase phrase = thought.phrase();
              String where = phrase.place().words(take.choruses());
              return switch (thought.kind()) {
                case MERGED ->
                    "Looking back, what you played from "
                        + where
                        + " on was one phrase; you waited in the middle of it.";
                case SPLIT ->
                    "Looking back, what you played from "
                        + where
                        + " on was more than one phrase, without a breath between.";
                case NEW_IDEA -> "From " + where + " on you carried a new idea.";
                case HEARD_ANEW ->
                    "Looking back, "
                        + where
                        + " was "
                        + (phrase.carries() ? "" : "new: ")
                        + TreatmentWords.of(phrase.verdict())
                        + ".";
                case TAKEN_BACK -> "In " + where + " you took your idea back.";
                case ANSWER ->
                    "In "
                        + where
                        + " you answered the phrase before it, as an answer a question: the same"
                        + " beginning, and an ending that comes to rest.";
              };
            })
        .toList();
  }

  private static String carried(Counts counts) {
    int all = counts.phrases();
    int carried = counts.carried();
    String run =
        counts.longestRun() > 1 && carried < all
            ? ", " + counts.longestRun() + " of them in a row"
            : "";
    if (carried == all) {
      return all == 1
          ? "You carried your idea into the next phrase."
          : "You carried your idea through all " + all + " phrases after it.";
    }
    if (carried == 0) {
      return all == 1
          ? "The next phrase was a new thought; your idea did not come back."
          : "The " + all + " phrases after your idea were new thoughts; it did not come back.";
    }
    return "You carried your idea through "
        + carried
        + " of the "
        + all
        + " phrases after it"
        + run
        + ".";
  }

  private static String lost(JudgedTake take) {
    List<JudgedPhrase> lost = take.counts().lost();
    if (lost.isEmpty()) {
      return take.counts().varied() > take.counts().restated()
          ? "You changed it often and it could still be heard."
          : "It stayed clear to hear from start to end.";
    }
    JudgedPhrase first = lost.get(0);
    String where =
        "You let it go in "
            + first.place().words(take.choruses())
            + " ("
            + chord(first)
            + "), where you played "
            + first.verdict().material().words();
    boolean back = take.phrases().stream().anyMatch(p -> p.index() > first.index() && p.carries());
    String others =
        lost.size() == 1
            ? ""
            : "; it happened "
                + (lost.size() - 1)
                + (lost.size() == 2 ? " more time" : " more times");
    return where + (back ? ", and you took it back after that" : "") + others + ".";
  }

  /** The bar to work on: where the idea was let go most often, else where it rubbed most. */
  private static String next(JudgedTake take) {
    Map<Integer, Integer> byBar = new TreeMap<>();
    for (JudgedPhrase phrase : take.counts().lost()) {
      byBar.merge(phrase.place().bar(), 1, Integer::sum);
    }
    if (!byBar.isEmpty()) {
      int bar = byBar.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
      JudgedPhrase there =
          take.counts().lost().stream()
              .filter(p -> p.place().bar() == bar)
              .findFirst()
              .orElseThrow();
      return "Try next: go round "
          + around(take, bar)
          + " slowly, say your idea's rhythm aloud, and keep its shape over "
          + chord(there)
          + ".";
    }
    return take.phrases().stream()
        .filter(p -> p.harmony().fit().map(fit -> !fit.sits()).orElse(false))
        .min(java.util.Comparator.comparingDouble(p -> p.harmony().fit().orElseThrow().score()))
        .map(
            p ->
                "Try next: in "
                    + p.place().words(take.choruses())
                    + " keep the idea and move only the note that rubs against "
                    + chord(p)
                    + ", by a step or less.")
        .orElseGet(
            () ->
                take.counts().restated() == take.counts().phrases()
                        && take.phrases().stream()
                            .allMatch(p -> p.verdict().family() == Family.RESTATED)
                    ? "Try next: the same idea in another key, or a new idea of your own."
                    : "Try next: the same chart a little faster, or with a new idea of your own.");
  }

  private static String around(JudgedTake take, int bar) {
    int last = take.setting().form().bars().size();
    int from = Math.max(1, bar - 1);
    int to = Math.min(last, bar + 1);
    return "bars " + from + " to " + to;
  }

  private static String chord(JudgedPhrase phrase) {
    Harmony harmony = phrase.mainChord().harmony();
    return harmony.display();
  }
}
