package holdfast.harmony;

import holdfast.theory.Key;
import holdfast.theory.Mode;
import holdfast.theory.NoteName;
import holdfast.theory.PitchClassSet;
import holdfast.theory.TonalPitchSpace;
import java.util.ArrayList;
import java.util.List;

/**
 * In which key does the ear stand after each chord, knowing nothing of what follows? The end of the
 * cheapest path through all keys so far: notes of a chord that lie outside a key cost, and so does
 * every change of key, more for a far one. A chord that is borrowed for a bar costs less than going
 * away and coming back; a bridge in another key does not.
 */
final class KeyOfTheMoment {

  /** What a note outside the key costs; as in the ranking of unexpected bars. */
  private static final double OUTSIDE = 4;

  /** What a change of key costs, and each step of it on the circle of fifths. */
  private static final double LEAVING = 6;

  private static final double STEP = 0.5;

  /**
   * A key as the ear knows it.
   *
   * @param key its tonic and mode, for distances
   * @param notes what belongs to it, with a minor key's raised sixth and seventh
   */
  record Place(Key key, PitchClassSet notes) {

    /** How many of the notes lie outside. */
    int outside(PitchClassSet chord) {
      return chord.minus(notes).size();
    }
  }

  private static final PitchClassSet MAJOR = PitchClassSet.of(0, 2, 4, 5, 7, 9, 11);

  /** Natural, harmonic and melodic minor together. */
  private static final PitchClassSet MINOR = PitchClassSet.of(0, 2, 3, 5, 7, 8, 9, 10, 11);

  private KeyOfTheMoment() {}

  /** The place of a major or minor key. */
  static Place of(int tonic, boolean minor) {
    Key key = new Key(NoteName.plain(tonic, false), minor ? Mode.MINOR : Mode.MAJOR);
    return new Place(key, (minor ? MINOR : MAJOR).transpose(tonic));
  }

  /** The key after each chord, the tune starting at home. */
  static List<Place> along(List<PitchClassSet> chords, Place home) {
    List<Place> places = new ArrayList<>();
    places.add(home);
    for (int tonic = 0; tonic < 12; tonic++) {
      places.add(of(tonic, false));
      places.add(of(tonic, true));
    }
    double[] costs = new double[places.size()];
    for (int p = 0; p < costs.length; p++) {
      costs[p] = change(home, places.get(p));
    }
    List<Place> path = new ArrayList<>();
    for (PitchClassSet chord : chords) {
      double[] next = new double[costs.length];
      for (int p = 0; p < next.length; p++) {
        next[p] = Double.POSITIVE_INFINITY;
        for (int before = 0; before < next.length; before++) {
          double cost = costs[before] + change(places.get(before), places.get(p));
          next[p] = Math.min(next[p], cost);
        }
        next[p] += OUTSIDE * places.get(p).outside(chord);
      }
      costs = next;
      path.add(places.get(cheapest(costs)));
    }
    return path;
  }

  /** The first of the cheapest: home, where it is among them. */
  private static int cheapest(double[] costs) {
    int at = 0;
    for (int p = 1; p < costs.length; p++) {
      if (costs[p] < costs[at]) {
        at = p;
      }
    }
    return at;
  }

  private static double change(Place from, Place to) {
    return from.equals(to) ? 0 : LEAVING + STEP * TonalPitchSpace.keySteps(from.key(), to.key());
  }
}
