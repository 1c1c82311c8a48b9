package holdfast.report;

import holdfast.motif.Family;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import java.util.ArrayList;
import java.util.List;

/**
 * Where several phrases in a row were something else than the idea: "Bars 5 to 8 were a scale run."
 */
final class MaterialRuns {

  private MaterialRuns() {}

  /** A sentence for each run of two phrases or more of one kind of material. */
  static List<String> of(JudgedTake take) {
    List<String> sentences = new ArrayList<>();
    List<JudgedPhrase> run = new ArrayList<>();
    for (JudgedPhrase phrase : take.phrases()) {
      if (!run.isEmpty() && !goesOn(run.get(run.size() - 1), phrase)) {
        tell(run, take, sentences);
        run.clear();
      }
      if (isOther(phrase)) {
        run.add(phrase);
      }
    }
    tell(run, take, sentences);
    return List.copyOf(sentences);
  }

  private static boolean isOther(JudgedPhrase phrase) {
    return !phrase.statesTheIdea() && phrase.verdict().family() == Family.NEW;
  }

  private static boolean goesOn(JudgedPhrase before, JudgedPhrase phrase) {
    return isOther(phrase)
        && phrase.verdict().material() == before.verdict().material()
        && phrase.place().chorus() == before.place().chorus();
  }

  private static void tell(List<JudgedPhrase> run, JudgedTake take, List<String> sentences) {
    if (run.size() < 2) {
      return;
    }
    JudgedPhrase first = run.get(0);
    int last = run.get(run.size() - 1).place().bar();
    String chorus = take.choruses() > 1 ? " of chorus " + first.place().chorus() : "";
    String bars =
        first.place().bar() == last
            ? "Bar " + last + chorus + " was "
            : "Bars " + first.place().bar() + " to " + last + chorus + " were ";
    sentences.add(bars + first.verdict().material().words() + ".");
  }
}
