package holdfast.phrase;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * How many phrase beginnings were found: precision, recall and their harmonic mean over all
 * beginnings but the first of a take, which is given. A beginning is found when the very note is
 * named.
 */
public final class EndScore {

  private int right;
  private int wrong;
  private int missed;
  private int late;

  /** Counts one take. */
  public EndScore add(List<Integer> truth, List<Phrase> phrases) {
    Set<Integer> found = new HashSet<>();
    for (int i = 0; i + 1 < phrases.size(); i++) {
      Phrase phrase = phrases.get(i);
      found.add(phrase.endNote());
      if (phrase.decidedSeconds() > phrase.endSeconds() + 0.35) {
        late++;
      }
    }
    return add(truth, found);
  }

  /** Counts one take by the first notes that were found. */
  public EndScore add(List<Integer> truth, Set<Integer> found) {
    Set<Integer> wanted = new HashSet<>(truth);
    wanted.remove(0);
    int both = (int) found.stream().filter(wanted::contains).count();
    right += both;
    wrong += found.size() - both;
    missed += wanted.size() - both;
    return this;
  }

  public double precision() {
    return right / (double) (right + wrong);
  }

  public double recall() {
    return right / (double) (right + missed);
  }

  public double f() {
    return 2.0 * right / (2 * right + wrong + missed);
  }

  /** Part of the ends that were known later than 0.35 s after the note-off. */
  public double late() {
    return late / (double) (right + wrong);
  }

  @Override
  public String toString() {
    return String.format(
        java.util.Locale.ROOT,
        "F %.3f (precision %.3f, recall %.3f, late %.3f)",
        f(),
        precision(),
        recall(),
        late());
  }
}
