package holdfast.chart;

import holdfast.theory.Key;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * A chart: the changes of a tune as a musician writes them down, before anything is played out.
 *
 * @param heading what stands at its head
 * @param lines its body, line by line, remarks included; at least one bar
 */
public record Chart(Heading heading, List<ChartLine> lines) {

  /**
   * Checks that it can be played: every bar is full, every repeat sign has its bar, every ending
   * its repeat.
   *
   * @throws UnplayableBarException where it cannot
   */
  public Chart {
    lines = List.copyOf(lines);
    PlayedOut.check(heading, bars(lines));
  }

  /** The tune's name. */
  public String title() {
    return heading.title();
  }

  /** The key as written, which for a transposing instrument is not the one that sounds. */
  public Optional<Key> key() {
    return heading.key();
  }

  /** The metre. */
  public Metre metre() {
    return heading.metre();
  }

  /** The tempo in beats a minute. */
  public double tempo() {
    return heading.tempo();
  }

  /** How it is played, in the words of the backing band. */
  public String feel() {
    return heading.feel();
  }

  /** All bars in the order of the page. */
  public List<WrittenBar> writtenBars() {
    return bars(lines);
  }

  /** One chorus, repeats and endings played out, in the pitch that sounds. */
  public Form form() {
    return PlayedOut.form(sounding());
  }

  /** One chorus, repeats and endings played out, in the pitch that is written. */
  public Form formAsWritten() {
    return PlayedOut.form(this);
  }

  /** What sounds when, chorus after chorus. */
  public Changes changes() {
    Chart sounding = sounding();
    Form form = PlayedOut.form(sounding);
    return new Changes(form.changes(), form.lengthBeats(), sounding.key());
  }

  /** The numbers of the bars, counted in the form, that the ear does not expect. */
  public Set<Integer> unexpectedBars() {
    return formAsWritten().unexpectedBars();
  }

  /** The same chart in concert pitch. */
  public Chart sounding() {
    return Transposition.writtenFor(this, WrittenFor.CONCERT);
  }

  /**
   * The same chart with a bar marked as unexpected, or with its mark taken off.
   *
   * @param writtenNumber the bar as counted on the page, from 1; 0 is the pick-up bar
   * @throws IllegalArgumentException where the page has no such bar
   */
  public Chart marked(int writtenNumber, boolean unexpected) {
    int[] number = {heading.pickupBeats() > 0 ? 0 : 1};
    boolean[] found = {false};
    Chart marked =
        withBars(
            bar -> {
              int first = number[0];
              number[0] += bar.contents().barCount();
              if (writtenNumber != first) {
                return bar;
              }
              found[0] = true;
              return bar.marked(unexpected);
            });
    if (!found[0]) {
      throw new IllegalArgumentException(
          "the chart has bars 1 to "
              + (number[0] - 1)
              + "; bar "
              + writtenNumber
              + " is none of them, or the second bar of a two-bar repeat");
    }
    return marked;
  }

  /** The same chart with every bar changed in its place, in the order of the page. */
  Chart withBars(UnaryOperator<WrittenBar> change) {
    return new Chart(heading, changed(change));
  }

  /** The lines with every bar changed in its place. */
  List<ChartLine> changed(UnaryOperator<WrittenBar> change) {
    List<ChartLine> changed = new ArrayList<>();
    for (ChartLine line : lines) {
      if (line instanceof ChartLine.Row row) {
        changed.add(new ChartLine.Row(row.bars().stream().map(change).toList(), row.remark()));
      } else {
        changed.add(line);
      }
    }
    return changed;
  }

  private static List<WrittenBar> bars(List<ChartLine> lines) {
    List<WrittenBar> bars = new ArrayList<>();
    for (ChartLine line : lines) {
      if (line instanceof ChartLine.Row row) {
        bars.addAll(row.bars());
      }
    }
    return List.copyOf(bars);
  }
}
