package holdfast.carry;

import holdfast.theory.Key;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a player has been heard to carry ideas: how often in which way.
 *
 * @param counts for each way how many statements went it
 */
public record Habit(Map<Way, Integer> counts) {

  /** Nothing heard yet: every way is as likely. */
  public static final Habit UNKNOWN = new Habit(Map.of());

  /** Copies the counts. */
  public Habit {
    counts = Map.copyOf(counts);
  }

  /** The habit that these ways show, in the order in which they were heard. */
  public static Habit heard(List<Way> ways) {
    EnumMap<Way, Integer> counts = new EnumMap<>(Way.class);
    ways.forEach(way -> counts.merge(way, 1, Integer::sum));
    return new Habit(counts);
  }

  /**
   * The habit of a player who said these statements one after another; pairs that differ in their
   * number of notes are passed over.
   */
  public static Habit of(List<Statement> statements, Optional<Key> key) {
    List<Way> ways = new ArrayList<>();
    for (int i = 1; i < statements.size(); i++) {
      if (statements.get(i).size() == statements.get(i - 1).size()) {
        ways.add(Way.between(statements.get(i - 1), statements.get(i), key));
      }
    }
    return heard(ways);
  }

  /** How likely this player goes this way next, 0 to 1, each way counted once beforehand. */
  double likelihood(Way way) {
    int all = counts.values().stream().mapToInt(Integer::intValue).sum();
    return (counts.getOrDefault(way, 0) + 1.0) / (all + Way.values().length);
  }

  /** What going this way costs this player: 0 while nothing is known, less for a likely way. */
  double cost(Way way) {
    return -Costs.HABIT * Math.log(likelihood(way) * Way.values().length);
  }
}
