package holdfast.practice.invent;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** What makes one idea another than the one before. */
public enum Difference {
  /** Other lengths, or in another order. */
  RHYTHM("another rhythm"),
  /** Other ups and downs. */
  SHAPE("another shape"),
  /** It spans clearly more or less. */
  RANGE("another range"),
  /** It starts on another note. */
  START("another note to start on");

  /** Times that differ by less than this share of the mean are the same. */
  private static final double SAME_SHARE = 0.3;

  /** A span that is so many semitones wider or narrower is heard as another. */
  private static final int RANGE_SEMITONES = 4;

  private static final int OCTAVE = 12;

  private final String words;

  Difference(String words) {
    this.words = words;
  }

  /** As in a sentence. */
  public String words() {
    return words;
  }

  /** What was found, in the order in which it is told. */
  public static Stream<Difference> inOrder(Set<Difference> found) {
    return Arrays.stream(values()).filter(found::contains);
  }

  /** All that differs between two ideas; tempo and octave make no difference. */
  public static Set<Difference> between(List<Note> one, List<Note> other) {
    Set<Difference> found = EnumSet.noneOf(Difference.class);
    if (!sameRhythm(shares(one), shares(other))) {
      found.add(RHYTHM);
    }
    if (!shape(one).equals(shape(other))) {
      found.add(SHAPE);
    }
    if (Math.abs(span(one) - span(other)) >= RANGE_SEMITONES) {
      found.add(RANGE);
    }
    if (Math.floorMod(one.get(0).pitch() - other.get(0).pitch(), OCTAVE) != 0) {
      found.add(START);
    }
    return found;
  }

  /** Times between onsets, as shares of their mean. */
  private static List<Double> shares(List<Note> notes) {
    List<Double> shares = new ArrayList<>();
    if (notes.size() < 2) {
      return shares;
    }
    double whole = notes.get(notes.size() - 1).onsetBeats() - notes.get(0).onsetBeats();
    double mean = whole / (notes.size() - 1);
    for (int i = 1; i < notes.size(); i++) {
      shares.add((notes.get(i).onsetBeats() - notes.get(i - 1).onsetBeats()) / mean);
    }
    return shares;
  }

  private static boolean sameRhythm(List<Double> one, List<Double> other) {
    if (one.size() != other.size()) {
      return false;
    }
    for (int i = 0; i < one.size(); i++) {
      if (Math.abs(one.get(i) - other.get(i)) > SAME_SHARE) {
        return false;
      }
    }
    return true;
  }

  private static List<Integer> shape(List<Note> notes) {
    List<Integer> shape = new ArrayList<>();
    for (int i = 1; i < notes.size(); i++) {
      shape.add(Integer.signum(notes.get(i).pitch() - notes.get(i - 1).pitch()));
    }
    return shape;
  }

  private static int span(List<Note> notes) {
    int low = notes.stream().mapToInt(Note::pitch).min().orElseThrow();
    int high = notes.stream().mapToInt(Note::pitch).max().orElseThrow();
    return high - low;
  }
}
