package holdfast.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * In which order are the written bars played? Repeats are not nested; a repeat that is closed but
 * not opened goes back to the end of the repeat before it, or to the start of the tune.
 */
final class PlayingOrder {

  /**
   * A bar to be played.
   *
   * @param index its place among all written bars
   * @param pass the how-manieth time its repeat is played, from 1
   */
  record Step(int index, int pass) {}

  /** One ending of a repeat: its passes, its first bar and its last. */
  private record Ending(List<Integer> passes, int from, int to) {}

  private final List<WrittenBar> bars;
  private final List<Step> steps = new ArrayList<>();
  private final TreeSet<Integer> repeatStarts = new TreeSet<>();

  /** The first bar that is not yet in the order. */
  private int start;

  private boolean opened;

  private PlayingOrder(List<WrittenBar> bars, int firstBar) {
    this.bars = bars;
    this.start = firstBar;
  }

  /** The order of the bars from the given one on; the ones before it, a pick-up, are left out. */
  static PlayingOrder of(List<WrittenBar> bars, int firstBar) {
    PlayingOrder order = new PlayingOrder(bars, firstBar);
    order.playOut();
    return order;
  }

  /** All bars in the order in which they are played. */
  List<Step> steps() {
    return steps;
  }

  /** Whether a repeat goes back to this bar, so that what comes before it differs by pass. */
  boolean isRepeatStart(int index) {
    return repeatStarts.contains(index);
  }

  private void playOut() {
    int i = start;
    while (i < bars.size()) {
      RepeatSigns signs = bars.get(i).signs();
      if (signs.opens()) {
        open(i);
      }
      if (signs.startsEnding()) {
        i = playEndings(i);
      } else if (signs.closes()) {
        play(start, i, signs.plays());
        start = i + 1;
        opened = false;
      }
      i++;
    }
    if (opened) {
      throw new UnplayableBarException(
          start, "a repeat opens here and never closes", "write :| after its last bar");
    }
    playOnce(start, bars.size() - 1, 1);
  }

  private void open(int i) {
    if (opened) {
      throw new UnplayableBarException(
          i, "a repeat opens inside another", "close the one before with :| first");
    }
    playOnce(start, i - 1, 1);
    start = i;
    opened = true;
  }

  private void play(int from, int to, int times) {
    repeatStarts.add(from);
    for (int pass = 1; pass <= times; pass++) {
      playOnce(from, to, pass);
    }
  }

  private void playOnce(int from, int to, int pass) {
    for (int i = from; i <= to; i++) {
      steps.add(new Step(i, pass));
    }
  }

  /** Plays a repeat with endings; the bars of the last one follow as any others do. */
  private int playEndings(int first) {
    if (first == start) {
      throw new UnplayableBarException(
          first, "an ending stands where nothing comes before it", "write the repeated bars first");
    }
    List<Ending> endings = endings(first);
    int passes = checkPasses(endings);
    repeatStarts.add(start);
    for (int pass = 1; pass <= passes; pass++) {
      playOnce(start, first - 1, pass);
      for (Ending ending : endings) {
        if (ending.passes().contains(pass) && pass < passes) {
          playOnce(ending.from(), ending.to(), pass);
        }
      }
    }
    Ending last = endings.get(endings.size() - 1);
    playOnce(last.from(), last.to(), passes);
    start = last.to() + 1;
    opened = false;
    return last.to();
  }

  private List<Ending> endings(int first) {
    List<Ending> endings = new ArrayList<>();
    int from = first;
    while (true) {
      List<Integer> passes = bars.get(from).signs().ending();
      int to = endOfEnding(from);
      boolean closes = bars.get(to).signs().closes();
      endings.add(new Ending(passes, from, to));
      boolean another = to + 1 < bars.size() && bars.get(to + 1).signs().startsEnding();
      if (!closes && another) {
        throw new UnplayableBarException(
            to, "this ending leads on into the next one", "close it with :|");
      }
      if (!another) {
        if (closes) {
          throw new UnplayableBarException(
              to,
              endings.size() == 1
                  ? "there is a first ending and no second"
                  : "the last ending goes back once more, and no other ending follows",
              "begin the next ending behind :| as in :|2. or, if this is the last, close it with |");
        }
        return endings;
      }
      from = to + 1;
    }
  }

  /**
   * The last bar of the ending that starts here: where it closes, or the bar before another sign.
   */
  private int endOfEnding(int from) {
    for (int i = from; i < bars.size(); i++) {
      RepeatSigns signs = bars.get(i).signs();
      if (i > from && (signs.opens() || signs.startsEnding())) {
        return i - 1;
      }
      if (signs.closes()) {
        if (signs.plays() > 2) {
          throw new UnplayableBarException(
              i,
              "the endings say how often it is played, and so does " + signs.plays() + "x",
              "leave out " + signs.plays() + "x");
        }
        return i;
      }
    }
    return bars.size() - 1;
  }

  /** How often the repeat is played, once the endings have shared out all passes from 1 on. */
  private static int checkPasses(List<Ending> endings) {
    TreeSet<Integer> seen = new TreeSet<>();
    for (Ending ending : endings) {
      for (int pass : ending.passes()) {
        if (!seen.add(pass)) {
          throw new UnplayableBarException(
              ending.from(),
              "two endings are for pass " + pass,
              "number each pass once, as in |1. and :|2.");
        }
      }
    }
    Ending last = endings.get(endings.size() - 1);
    int passes = seen.last();
    if (seen.size() != passes) {
      throw new UnplayableBarException(
          last.from(),
          "no ending is for each pass up to " + passes,
          "number the endings from 1 on");
    }
    if (endings.size() < 2) {
      throw new UnplayableBarException(
          last.from(), "there is a first ending and no second", "write the other ending behind :|");
    }
    if (!last.passes().equals(List.of(passes))) {
      throw new UnplayableBarException(
          last.from(),
          "the last ending is not for the last pass alone",
          "number it " + passes + ". and no more");
    }
    return passes;
  }
}
