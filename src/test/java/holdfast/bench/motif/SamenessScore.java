package holdfast.bench.motif;

import holdfast.motif.Treatment;
import holdfast.practice.invent.Sameness;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How often two ideas are counted as they should be.
 *
 * @param once of ideas in other clothes, the part that is counted once, 0 to 1
 * @param twice of ideas that have nothing to do with each other, the part that is counted twice
 */
record SamenessScore(Map<Dress, Double> once, double twice) {

  /** So many pairs of each kind. */
  static SamenessScore of(LabelledSet set, int pairs, long seed) {
    Map<Dress, Double> once = new EnumMap<>(Dress.class);
    for (Dress dress : Dress.values()) {
      once.put(dress, same(set.dressed(dress, pairs, seed)));
    }
    List<Case> others = new ArrayList<>(set.strangers(pairs, seed));
    set.heldOut(4 * pairs, seed).stream()
        .filter(one -> one.made() == Treatment.NEW)
        .forEach(others::add);
    return new SamenessScore(once, 1 - same(others));
  }

  private static double same(List<Case> cases) {
    long same =
        cases.stream()
            .filter(
                one ->
                    new Sameness(one.context())
                        .between(one.idea().notes(), one.phrase())
                        .isPresent())
            .count();
    return (double) same / cases.size();
  }

  @Override
  public String toString() {
    StringBuilder said = new StringBuilder("counted once:");
    once.forEach(
        (dress, part) ->
            said.append(
                String.format(
                    Locale.ROOT, " %s %.3f", dress.name().toLowerCase(Locale.ROOT), part)));
    return said.append(String.format(Locale.ROOT, "; counted twice: others %.3f", twice))
        .toString();
  }
}
