package holdfast.report;

import holdfast.practice.HardBars;
import holdfast.practice.Plan;
import holdfast.session.Afterthought;
import holdfast.session.Counts;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A take in two or three plain sentences: how far the idea was carried, where it was let go, what
 * to try next. No grade, and nothing about talent.
 */
public final class TakeSentences {

  /** More than these at the top of a page hide the rest. */
  private static final int MOST_AT_THE_TOP = 3;

  private TakeSentences() {}

  /** The sentences, in the order in which they are read. */
  public static List<String> of(JudgedTake take) {
    if (take.idea().isEmpty()) {
      return List.of("I did not hear any notes in this take.");
    }
    Counts counts = take.counts();
    int notes = take.idea().get().notes().size();
    if (counts.phrases() == 0 && notes > Plan.MOST_NOTES) {
      return List.of(
          "I heard one phrase of "
              + notes
              + " notes and took it for your idea. Rest after four or five notes, so that I hear"
              + " where your idea ends.");
    }
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
    return take.afterthoughts().stream().map(thought -> inHindsight(take, thought)).toList();
  }

  private static String inHindsight(JudgedTake take, Afterthought thought) {
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
          "Looking back, I hear "
              + where
              + " otherwise: "
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
  }

  /** As many of them as are read at the top of a page, new ideas first. */
  static List<String> foremostInHindsight(JudgedTake take) {
    List<Afterthought> ordered = new ArrayList<>(take.afterthoughts());
    ordered.sort(Comparator.comparing(thought -> thought.kind() != Afterthought.Kind.NEW_IDEA));
    int shown = ordered.size() <= MOST_AT_THE_TOP + 1 ? ordered.size() : MOST_AT_THE_TOP;
    List<String> sentences = new ArrayList<>();
    ordered.subList(0, shown).forEach(thought -> sentences.add(inHindsight(take, thought)));
    if (shown < ordered.size()) {
      sentences.add(
          "There were "
              + (ordered.size() - shown)
              + " more such moments; the sheet shows each as I hear it now.");
    }
    return sentences;
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
      int varied = take.counts().varied();
      return varied == 0
          ? "It stayed clear to hear from start to end."
          : varied == 1
              ? "You worked on it once, and it could still be heard."
              : "You worked on it " + varied + " times, and it could still be heard.";
    }
    JudgedPhrase first = lost.get(0);
    String where =
        "You let it go in "
            + first.place().words(take.choruses())
            + " ("
            + JudgementText.chords(first)
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

  /** The bars to work on, as the plan for practice has them; else how to go on from here. */
  private static String next(JudgedTake take) {
    return "Try next: "
        + HardBars.of(take).map(HardBars::advice).orElseGet(() -> onwards(take.counts()))
        + ".";
  }

  private static String onwards(Counts counts) {
    return counts.restated() == counts.phrases()
        ? "the same idea in another key, or a new idea of your own"
        : "the same chart a little faster, or with a new idea of your own";
  }
}
