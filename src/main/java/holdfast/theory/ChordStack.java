package holdfast.theory;

import java.util.List;
import java.util.TreeSet;

/** A chord while its symbol is being read: thirds stacked on a root, and what is done to them. */
final class ChordStack {

  private static final Degree ROOT = new Degree(1, 0);
  private static final Degree ELEVENTH = new Degree(11, 0);
  private static final Degree THIRTEENTH = new Degree(13, 0);

  private final TreeSet<Degree> third = new TreeSet<>(List.of(new Degree(3, 0)));
  private Degree fifth = new Degree(5, 0);
  private final TreeSet<Degree> alteredFifths = new TreeSet<>();
  private final TreeSet<Degree> stacked = new TreeSet<>();
  private final TreeSet<Degree> altered = new TreeSet<>();
  private final TreeSet<Degree> added = new TreeSet<>();
  private final TreeSet<Integer> leftOut = new TreeSet<>();

  /** Minor (-1) or major (0) third. */
  void third(int alter) {
    third.clear();
    third.add(new Degree(3, alter));
  }

  /** Diminished (-1) or augmented (1) fifth as the chord's quality has it. */
  void fifth(int alter) {
    fifth = new Degree(5, alter);
  }

  boolean hasSeventh() {
    return stacked.stream().anyMatch(d -> d.number() == 7);
  }

  /** The seventh, in the place of one that was there. */
  void seventh(int alter) {
    stacked.removeIf(d -> d.number() == 7);
    stacked.add(new Degree(7, alter));
  }

  void sixth() {
    stacked.add(new Degree(6, 0));
  }

  void ninth() {
    stacked.add(new Degree(9, 0));
  }

  /** Thirds up to a seventh, ninth, eleventh or thirteenth; a seventh that is there stays. */
  void upTo(int top, int seventh) {
    if (!hasSeventh()) {
      seventh(seventh);
    }
    for (int n = 9; n <= top; n += 2) {
      stacked.add(new Degree(n, 0));
    }
  }

  /** A second or fourth in the place of the third. */
  void suspend(int number) {
    third.removeIf(d -> d.number() == 3);
    third.add(new Degree(number, 0));
  }

  /** An altered degree in the place of the natural one. */
  void alter(int number, int alter) {
    (number == 5 ? alteredFifths : altered).add(new Degree(number, alter));
  }

  void add(int number, int alter) {
    added.add(new Degree(number, alter));
  }

  void leaveOut(int number) {
    leftOut.add(number);
  }

  /** The degrees in order. */
  List<Degree> degrees() {
    TreeSet<Degree> chord = new TreeSet<>(third);
    chord.add(ROOT);
    chord.addAll(alteredFifths.isEmpty() ? List.of(fifth) : alteredFifths);
    chord.addAll(stacked);
    boolean suspended = third.stream().anyMatch(d -> d.number() == 4);
    // A thirteenth chord with an altered ninth or eleventh is not stacked through the eleventh, and
    // a suspended fourth is the eleventh.
    if (suspended || (stacked.contains(THIRTEENTH) && !altered.isEmpty())) {
      chord.remove(ELEVENTH);
    }
    altered.forEach(degree -> chord.remove(new Degree(degree.number(), 0)));
    chord.addAll(altered);
    chord.addAll(added);
    chord.removeIf(degree -> leftOut.contains(degree.number()));
    return List.copyOf(chord);
  }
}
