package holdfast.backing;

import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;

/**
 * The groups of beats that a bar is felt in: 4/4 as 2 + 2, 5/4 as 3 + 2, 6/8 as 3 + 3. Common
 * practice, no source.
 *
 * @param groups how many beats each group has; together the bar
 */
record Pulse(List<Integer> groups) {

  Pulse {
    groups = List.copyOf(groups);
  }

  static Pulse of(Metre metre) {
    int beats = metre.beats();
    List<Integer> groups = new ArrayList<>();
    boolean threes = beats % 3 == 0 && (metre.unit() >= 8 || beats % 2 == 1 || beats > 4);
    if (threes) {
      fill(groups, beats, 3);
    } else if (beats % 2 == 0) {
      fill(groups, beats, 2);
    } else {
      // 5 is 3 + 2, 7 is 3 + 2 + 2: the long group first, and all others of two.
      if (beats >= 3) {
        groups.add(3);
        beats -= 3;
      }
      fill(groups, beats, 2);
    }
    return new Pulse(groups);
  }

  private static void fill(List<Integer> groups, int beats, int size) {
    for (int left = beats; left > 0; left -= size) {
      groups.add(Math.min(size, left));
    }
  }

  /** The first beat of each group, counted from 0. */
  List<Integer> starts() {
    List<Integer> starts = new ArrayList<>();
    int beat = 0;
    for (int group : groups) {
      starts.add(beat);
      beat += group;
    }
    return starts;
  }

  /** How many beats the bar has. */
  int beats() {
    return groups.stream().mapToInt(Integer::intValue).sum();
  }

  /** The weak beats that a foot on a hi-hat answers on: 2 and 4 of 4/4, 2 and 3 of 3/4. */
  List<Integer> answers() {
    List<Integer> answers = new ArrayList<>();
    List<Integer> starts = starts();
    for (int g = 0; g < groups.size(); g++) {
      int start = starts.get(g);
      if (groups.get(g) == 3 && groups.size() == 1) {
        answers.add(start + 1);
      }
      answers.add(start + groups.get(g) - 1);
    }
    return answers.stream().filter(beat -> beat > 0).distinct().toList();
  }
}
