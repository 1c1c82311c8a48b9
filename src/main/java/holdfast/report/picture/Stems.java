package holdfast.report.picture;

import holdfast.chart.Beams;
import holdfast.chart.MelodyBar;
import java.util.ArrayList;
import java.util.List;

/**
 * Which way stems point and how far, and the beams at their ends; in staff spaces below the top
 * line. Single stems are an octave long and reach the middle line; a beam leans with its notes, a
 * space at most. Common practice of engravers, no source.
 */
final class Stems {

  private static final double LENGTH = 3.5;
  private static final double SHORTEST_IN_A_BEAM = 2.75;
  private static final double MOST_LEAN = 1;

  /** Where a head meets its stem, from Bravura's metadata. */
  private static final double ANCHOR = 0.168;

  /**
   * A stem.
   *
   * @param note whose it is
   * @param up whether it points up
   * @param x its middle
   * @param from where it leaves the head
   * @param to its end
   */
  record Stem(PlacedNote note, boolean up, double x, double from, double to) {}

  /**
   * One beam of a level.
   *
   * @param left where it begins
   * @param right where it ends
   * @param leftY the edge that stems reach, at its left end
   * @param rightY the same at its right end
   * @param up whether its stems point up
   */
  record Beam(double left, double right, double leftY, double rightY, boolean up) {}

  private final List<Stem> stems = new ArrayList<>();
  private final List<Beam> beams = new ArrayList<>();
  private final Staff staff;

  Stems(Staff staff, List<PlacedNote> notes) {
    this.staff = staff;
    List<PlacedNote> group = new ArrayList<>();
    for (PlacedNote note : notes) {
      if (!note.hasStem()) {
        continue;
      }
      java.util.Optional<Beams.Part> part = Beams.of(bar(note), note.index(), 1);
      if (part.isEmpty()) {
        single(note);
        continue;
      }
      group.add(note);
      if (part.get() == Beams.Part.END) {
        beamed(List.copyOf(group));
        group.clear();
      }
    }
  }

  List<Stem> stems() {
    return stems;
  }

  List<Beam> beams() {
    return beams;
  }

  private List<MelodyBar.Written> bar(PlacedNote note) {
    return staff.bars().get(note.bar()).notes();
  }

  private void single(PlacedNote note) {
    boolean up = note.position().orElseThrow() < Lines.MIDDLE;
    double far = up ? note.y() - LENGTH : note.y() + LENGTH;
    double middle = Lines.y(Lines.MIDDLE);
    stems.add(stem(note, up, up ? Math.min(far, middle) : Math.max(far, middle)));
  }

  private static Stem stem(PlacedNote note, boolean up, double end) {
    double half = Lines.STEM_THICKNESS / 2;
    double x = up ? note.x() + PlacedNote.HEAD_WIDTH - half : note.x() + half;
    return new Stem(note, up, x, note.y() + (up ? -ANCHOR : ANCHOR), end);
  }

  private void beamed(List<PlacedNote> group) {
    int highest = group.stream().mapToInt(n -> n.position().orElseThrow()).max().orElseThrow();
    int lowest = group.stream().mapToInt(n -> n.position().orElseThrow()).min().orElseThrow();
    boolean up = highest - Lines.MIDDLE < Lines.MIDDLE - lowest;
    PlacedNote first = group.get(0);
    PlacedNote last = group.get(group.size() - 1);
    double left = stem(first, up, 0).x();
    double right = stem(last, up, 0).x();
    double lean = Math.max(-MOST_LEAN, Math.min(MOST_LEAN, (last.y() - first.y()) / 2));
    double slope = lean / (right - left);
    int most = group.stream().mapToInt(n -> n.written().beams()).max().orElse(1);
    double shortest = SHORTEST_IN_A_BEAM + Lines.BEAM_STEP * (most - 1);
    double base = up ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    for (PlacedNote note : group) {
      double flat = slope * (stem(note, up, 0).x() - left);
      base =
          up
              ? Math.min(base, note.y() - shortest - flat)
              : Math.max(base, note.y() + shortest - flat);
    }
    double middle = Lines.y(Lines.MIDDLE);
    base =
        up
            ? Math.min(base, middle - Math.min(0, lean))
            : Math.max(base, middle - Math.max(0, lean));
    List<Stem> made = new ArrayList<>();
    for (PlacedNote note : group) {
      double x = stem(note, up, 0).x();
      made.add(stem(note, up, base + slope * (x - left)));
    }
    stems.addAll(made);
    for (int level = 1; level <= most; level++) {
      addBeams(made, level, base, slope, left, up);
    }
  }

  private void addBeams(
      List<Stem> group, int level, double base, double slope, double zero, boolean up) {
    double inward = (up ? 1 : -1) * Lines.BEAM_STEP * (level - 1);
    double half = Lines.STEM_THICKNESS / 2;
    double start = 0;
    for (Stem stem : group) {
      java.util.Optional<Beams.Part> part = Beams.of(bar(stem.note()), stem.note().index(), level);
      if (part.isEmpty()) {
        continue;
      }
      double from = stem.x() - half;
      double to = stem.x() + half;
      switch (part.get()) {
        case BEGIN -> start = from;
        case CONTINUE -> {}
        case END -> beams.add(beam(start, to, base + inward, slope, zero, up));
        case FORWARD_HOOK ->
            beams.add(beam(from, from + PlacedNote.HEAD_WIDTH, base + inward, slope, zero, up));
        case BACKWARD_HOOK ->
            beams.add(beam(to - PlacedNote.HEAD_WIDTH, to, base + inward, slope, zero, up));
      }
    }
  }

  private static Beam beam(
      double left, double right, double base, double slope, double zero, boolean up) {
    return new Beam(left, right, base + slope * (left - zero), base + slope * (right - zero), up);
  }
}
