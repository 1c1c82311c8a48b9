package holdfast.carry;

import java.util.ArrayList;
import java.util.List;

/**
 * The cheapest ways through a row of choices, where each choice costs something by itself and each
 * pair of neighbours costs something together: exact dynamic programming that keeps the k best
 * partial ways at every choice.
 */
final class Lattice {

  /** Costs of the ways; anything infinite is no way at all. */
  interface Price {
    /** What taking this choice at this place costs. */
    double of(int place, int choice);

    /** What this choice costs after that choice one place before. */
    double step(int place, int before, int choice);
  }

  /**
   * One way.
   *
   * @param choices a choice for each place
   * @param cost the sum
   */
  record Path(List<Integer> choices, double cost) {}

  /** A partial way, told backwards. */
  private record Partial(int choice, double cost, Partial before) {}

  private Lattice() {}

  /**
   * The k cheapest ways, cheapest first; fewer where there are fewer of finite cost. Ways of the
   * same cost come in the order of their choices.
   */
  static List<Path> cheapest(int k, int places, int choices, Price price) {
    List<List<Partial>> now = new ArrayList<>();
    for (int c = 0; c < choices; c++) {
      double cost = price.of(0, c);
      now.add(Double.isInfinite(cost) ? List.of() : List.of(new Partial(c, cost, null)));
    }
    double[] steps = new double[choices];
    for (int place = 1; place < places; place++) {
      List<List<Partial>> next = new ArrayList<>();
      for (int c = 0; c < choices; c++) {
        double own = price.of(place, c);
        if (Double.isInfinite(own)) {
          next.add(List.of());
        } else {
          for (int b = 0; b < choices; b++) {
            steps[b] =
                now.get(b).isEmpty() ? Double.POSITIVE_INFINITY : own + price.step(place, b, c);
          }
          next.add(cheapest(k, c, now, steps));
        }
      }
      now = next;
    }
    return cheapest(k, 0, now, new double[choices]).stream()
        .map(end -> path(end.before(), end.cost()))
        .toList();
  }

  /**
   * The k cheapest ways on to one choice: lists that are sorted already are merged from their
   * heads.
   */
  private static List<Partial> cheapest(
      int k, int choice, List<List<Partial>> before, double[] steps) {
    int[] heads = new int[before.size()];
    List<Partial> found = new ArrayList<>(k);
    while (found.size() < k) {
      int from = -1;
      double least = Double.POSITIVE_INFINITY;
      for (int b = 0; b < heads.length; b++) {
        if (!Double.isInfinite(steps[b]) && heads[b] < before.get(b).size()) {
          double cost = before.get(b).get(heads[b]).cost() + steps[b];
          if (cost < least) {
            least = cost;
            from = b;
          }
        }
      }
      if (from < 0) {
        break;
      }
      found.add(new Partial(choice, least, before.get(from).get(heads[from])));
      heads[from]++;
    }
    return found;
  }

  private static Path path(Partial end, double cost) {
    List<Integer> choices = new ArrayList<>();
    for (Partial p = end; p != null; p = p.before()) {
      choices.add(0, p.choice());
    }
    return new Path(choices, cost);
  }
}
