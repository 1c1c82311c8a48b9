package holdfast.carry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Held against trying every way, which needs no cleverness to be right. */
class LatticeTest {

  private static final class RandomPrice implements Lattice.Price {
    private final double[][] own;
    private final double[][][] steps;

    RandomPrice(long seed, int places, int choices) {
      SplittableRandom random = new SplittableRandom(seed);
      own = new double[places][choices];
      steps = new double[places][choices][choices];
      for (int p = 0; p < places; p++) {
        for (int c = 0; c < choices; c++) {
          own[p][c] = random.nextInt(6) == 0 ? Double.POSITIVE_INFINITY : random.nextDouble();
          for (int b = 0; b < choices; b++) {
            steps[p][b][c] = random.nextDouble() * 2 - 0.5;
          }
        }
      }
    }

    @Override
    public double of(int place, int choice) {
      return own[place][choice];
    }

    @Override
    public double step(int place, int before, int choice) {
      return steps[place][before][choice];
    }
  }

  private static List<Double> everyWay(Lattice.Price price, int places, int choices) {
    List<Double> costs = new ArrayList<>();
    int ways = (int) Math.pow(choices, places);
    for (int way = 0; way < ways; way++) {
      double cost = 0;
      int before = 0;
      for (int place = 0, rest = way; place < places; place++, rest /= choices) {
        int choice = rest % choices;
        cost += price.of(place, choice) + (place > 0 ? price.step(place, before, choice) : 0);
        before = choice;
      }
      if (!Double.isInfinite(cost)) {
        costs.add(cost);
      }
    }
    return costs.stream().sorted().toList();
  }

  @Property(tries = 300, seed = "20261125")
  void the_k_cheapest_ways_are_the_k_cheapest_of_all(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 5) int places) {
    int choices = 4;
    int k = 7;
    Lattice.Price price = new RandomPrice(seed, places, choices);
    List<Double> all = everyWay(price, places, choices);
    List<Lattice.Path> found = Lattice.cheapest(k, places, choices, price);
    assertEquals(Math.min(k, all.size()), found.size());
    for (int i = 0; i < found.size(); i++) {
      assertEquals(all.get(i), found.get(i).cost(), 1e-9);
      assertEquals(places, found.get(i).choices().size());
      assertEquals(found.get(i).cost(), sum(price, found.get(i).choices()), 1e-9);
    }
    assertEquals(found.size(), found.stream().map(Lattice.Path::choices).distinct().count());
  }

  private static double sum(Lattice.Price price, List<Integer> choices) {
    double cost = price.of(0, choices.get(0));
    for (int i = 1; i < choices.size(); i++) {
      cost += price.of(i, choices.get(i)) + price.step(i, choices.get(i - 1), choices.get(i));
    }
    return cost;
  }

  @Test
  void where_a_place_has_no_choice_there_is_no_way() {
    Lattice.Price closed =
        new Lattice.Price() {
          @Override
          public double of(int place, int choice) {
            return place == 1 ? Double.POSITIVE_INFINITY : 0;
          }

          @Override
          public double step(int place, int before, int choice) {
            return 0;
          }
        };
    assertTrue(Lattice.cheapest(3, 3, 2, closed).isEmpty());
  }
}
