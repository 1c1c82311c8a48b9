package holdfast.chart;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Writes the bar lines that are more than plain: repeats, endings, double lines. */
final class MusicXmlBarlines {

  private final XmlPage page;
  private final List<WrittenBar> bars;

  /** For the last bar under each ending's bracket, the first one. */
  private final Map<Integer, Integer> endings = new HashMap<>();

  MusicXmlBarlines(XmlPage page, List<WrittenBar> bars) {
    this.page = page;
    this.bars = bars;
    for (int i = 0; i < bars.size(); i++) {
      if (bars.get(i).signs().startsEnding()) {
        endings.put(endOfBracket(i), i);
      }
    }
  }

  /** Where the ending closes; the last ending leads on, and its bracket stays over one bar. */
  private int endOfBracket(int start) {
    for (int i = start; i < bars.size(); i++) {
      RepeatSigns signs = bars.get(i).signs();
      if (i > start && (signs.opens() || signs.startsEnding())) {
        return start;
      }
      if (signs.closes()) {
        return i;
      }
    }
    return start;
  }

  void writeLeft(int index) {
    RepeatSigns signs = bars.get(index).signs();
    if (!signs.opens() && !signs.startsEnding()) {
      return;
    }
    page.open("barline", "location", "left");
    if (signs.opens()) {
      page.leaf("bar-style", "heavy-light");
    }
    if (signs.startsEnding()) {
      page.leaf("ending", "", "number", numbers(signs), "type", "start");
    }
    if (signs.opens()) {
      page.leaf("repeat", "", "direction", "forward");
    }
    page.close();
  }

  void writeRight(int index) {
    RepeatSigns signs = bars.get(index).signs();
    Optional<RepeatSigns> ending =
        Optional.ofNullable(endings.get(index)).map(start -> bars.get(start).signs());
    if (!signs.closes() && !signs.doubleLine() && ending.isEmpty()) {
      return;
    }
    page.open("barline", "location", "right");
    if (signs.doubleLine()) {
      page.leaf("bar-style", "light-light");
    } else if (signs.closes()) {
      page.leaf("bar-style", "light-heavy");
    }
    String stop = signs.closes() ? "stop" : "discontinue";
    ending.ifPresent(e -> page.leaf("ending", "", "number", numbers(e), "type", stop));
    if (signs.plays() > 2) {
      page.leaf("repeat", "", "direction", "backward", "times", String.valueOf(signs.plays()));
    } else if (signs.closes()) {
      page.leaf("repeat", "", "direction", "backward");
    }
    page.close();
  }

  private static String numbers(RepeatSigns signs) {
    return signs.ending().stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
