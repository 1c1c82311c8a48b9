package holdfast.backing;

import holdfast.theory.ChordSymbol;
import holdfast.theory.Degree;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * In which ways can a chord lie under the hands, and which of them lie well?
 *
 * <p>Always there: the guide tones, and the tensions that the symbol names. Root and fifth join
 * where there is room, for the bass has the root already; over a foreign bass the root is needed
 * above. Three or four notes, fewer where the chord has fewer, more where it names more. Common
 * practice, no source.
 */
final class VoicingChoices {

  /** D3: below it, close intervals grow muddy. Common practice, no source. */
  static final int LOWEST = 50;

  /** E5: above it a comping hand covers most melodies. Common practice, no source. */
  static final int HIGHEST = 76;

  /** G4: without a singer's range, the chords stay below the middle of the staff. */
  static final int USUAL_TOP = 67;

  /** A comping hand plays three or four notes. */
  private static final int FEWEST = 3;

  private static final int USUAL = 4;

  /** And five where the symbol asks for them. */
  private static final int MOST = 5;

  /** A tenth: what a hand spans, and wider chords fall apart. */
  private static final int WIDEST = 16;

  /** A sixth between neighbours is the widest that still sounds as one chord. */
  private static final int WIDEST_GAP = 9;

  /** The middle of the keyboard for the lowest and highest note together. */
  private static final double CENTRE = 58.5;

  /** So many of the best shapes of each chord are weighed against each other. */
  private static final int KEPT = 40;

  private final Optional<PitchRange> singer;
  private final Map<ChordSymbol, List<ShapedVoicing>> known = new HashMap<>();

  /**
   * @param singer the range that no chord's highest note may lie in
   */
  VoicingChoices(Optional<PitchRange> singer) {
    this.singer = singer;
  }

  /** The best shapes of a chord, the best first; never empty. */
  List<ShapedVoicing> of(ChordSymbol chord) {
    return known.computeIfAbsent(chord, this::shapes);
  }

  private List<ShapedVoicing> shapes(ChordSymbol chord) {
    List<ShapedVoicing> all = new ArrayList<>();
    for (Set<Integer> pitchClasses : noteSets(chord)) {
      place(List.copyOf(pitchClasses), new ArrayList<>(), all, chord);
    }
    List<ShapedVoicing> outside =
        all.stream().filter(shape -> !crossesSinger(shape.voicing().top())).toList();
    // A range of many octaves, as an instrument has, leaves no room outside; then all are allowed.
    List<ShapedVoicing> allowed = outside.isEmpty() ? all : outside;
    return allowed.stream()
        .sorted(
            Comparator.comparingDouble(ShapedVoicing::cost)
                .thenComparing(shape -> shape.voicing().pitches().toString()))
        .limit(KEPT)
        .toList();
  }

  private boolean crossesSinger(int top) {
    return singer.map(range -> range.contains(top)).orElse(false);
  }

  /** The sets of pitch classes that stand for the chord. */
  private static List<Set<Integer>> noteSets(ChordSymbol chord) {
    int root = chord.root().pitchClass();
    Set<Integer> needed = new LinkedHashSet<>();
    Set<Integer> colours = new LinkedHashSet<>();
    Set<Integer> optional = new LinkedHashSet<>();
    // Of an eleventh chord players leave out the third, guide tone or not.
    chord.guideTones().intersection(chord.pitchClasses()).stream().forEach(needed::add);
    for (Degree degree : chord.kind().sounding()) {
      int pitchClass = Math.floorMod(root + degree.semitones(), 12);
      boolean colour = degree.number() > 7 || (degree.number() == 5 && degree.alter() != 0);
      (colour ? colours : optional).add(pitchClass);
    }
    if (chord.bass().isPresent()) {
      needed.add(root);
    }
    colours.removeAll(needed);
    if (needed.size() + colours.size() > MOST) {
      // An altered chord names more tensions than a hand can hold: two of them say it.
      return pairs(needed, List.copyOf(colours));
    }
    needed.addAll(colours);
    optional.removeAll(needed);
    return supersets(needed, List.copyOf(optional));
  }

  private static List<Set<Integer>> pairs(Set<Integer> needed, List<Integer> colours) {
    List<Set<Integer>> sets = new ArrayList<>();
    for (int i = 0; i < colours.size(); i++) {
      for (int j = i + 1; j < colours.size(); j++) {
        Set<Integer> set = new LinkedHashSet<>(needed);
        set.add(colours.get(i));
        set.add(colours.get(j));
        sets.add(set);
      }
    }
    return sets;
  }

  private static List<Set<Integer>> supersets(Set<Integer> needed, List<Integer> optional) {
    int smallest = Math.min(FEWEST, needed.size() + optional.size());
    int largest = Math.max(USUAL, needed.size());
    List<Set<Integer>> sets = new ArrayList<>();
    for (int mask = 0; mask < 1 << optional.size(); mask++) {
      Set<Integer> set = new LinkedHashSet<>(needed);
      for (int i = 0; i < optional.size(); i++) {
        if ((mask >> i & 1) != 0) {
          set.add(optional.get(i));
        }
      }
      if (set.size() >= smallest && set.size() <= largest) {
        sets.add(set);
      }
    }
    return sets;
  }

  private void place(
      List<Integer> pitchClasses,
      List<Integer> placed,
      List<ShapedVoicing> all,
      ChordSymbol chord) {
    if (placed.size() == pitchClasses.size()) {
      List<Integer> sorted = placed.stream().sorted().collect(Collectors.toList());
      if (sorted.get(sorted.size() - 1) - sorted.get(0) <= WIDEST) {
        all.add(new ShapedVoicing(new Voicing(sorted), cost(sorted, chord)));
      }
      return;
    }
    int pitchClass = pitchClasses.get(placed.size());
    for (int pitch = LOWEST + Math.floorMod(pitchClass - LOWEST, 12);
        pitch <= HIGHEST;
        pitch += 12) {
      placed.add(pitch);
      place(pitchClasses, placed, all, chord);
      placed.remove(placed.size() - 1);
    }
  }

  /** Weighed against semitones of movement: 1 is hardly heard, 10 is avoided wherever possible. */
  private double cost(List<Integer> pitches, ChordSymbol chord) {
    int size = pitches.size();
    int low = pitches.get(0);
    int top = pitches.get(size - 1);
    double cost = 0.25 * Math.abs((low + top) / 2.0 - CENTRE);
    cost += size < USUAL ? 1.5 : 0;
    for (int i = 1; i < size; i++) {
      int gap = pitches.get(i) - pitches.get(i - 1);
      cost += gap == 1 ? 2 : 0;
      cost += gap > WIDEST_GAP ? 3.0 * (gap - WIDEST_GAP) : 0;
      // Two seconds on end make a cluster.
      cost += i > 1 && gap <= 2 && pitches.get(i - 1) - pitches.get(i - 2) <= 2 ? 3 : 0;
    }
    // A second at the bottom is heavy, one at the top hides the line.
    cost += size > 1 && pitches.get(1) - low <= 2 ? 1.5 : 0;
    cost += size > 1 && top - pitches.get(size - 2) == 1 ? 4 : 0;
    // A minor ninth grates, but for the one that a flat ninth makes with its root.
    int root = chord.root().pitchClass();
    for (int i = 0; i < size; i++) {
      for (int j = i + 1; j < size; j++) {
        boolean grates = pitches.get(j) - pitches.get(i) == 13;
        cost += grates && Math.floorMod(pitches.get(i), 12) != root ? 6 : 0;
      }
    }
    // With a singer below, climb over; else stay low.
    boolean above = singer.map(range -> top > range.highest()).orElse(false);
    return cost + (above ? 3 : 4.0 * Math.max(0, top - USUAL_TOP));
  }
}
