package holdfast.command;

import holdfast.chart.Bar;
import holdfast.chart.Chart;
import holdfast.chart.Form;
import holdfast.harmony.TurnsAhead;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** The turns of a chart that the ear does not expect: those that are marked, those that we find. */
final class TurnsFound {

  private TurnsFound() {}

  /** A line for each, with the reason; bars are told as they are counted on the page. */
  static List<String> of(Chart chart) {
    Form form = chart.formAsWritten();
    Map<Integer, String> reasons = TurnsAhead.reasons(form.changes(), chart.key());
    Map<Integer, String> byWrittenBar = new TreeMap<>();
    for (Bar bar : form.bars()) {
      String reason = reasons.getOrDefault(bar.number(), "");
      if (bar.unexpected() || !reason.isEmpty()) {
        byWrittenBar.putIfAbsent(bar.writtenNumber(), line(bar, reason));
      }
    }
    return List.copyOf(byWrittenBar.values());
  }

  /** The chart with every turn that we find marked, and no other mark touched. */
  static Chart marked(Chart chart) {
    Form form = chart.formAsWritten();
    Chart marked = chart;
    Set<Integer> done = new HashSet<>();
    for (int number : TurnsAhead.unexpectedBars(form.changes(), chart.key())) {
      Bar bar = form.bars().get(number - 1);
      if (!bar.unexpected() && done.add(bar.writtenNumber())) {
        marked = marked.marked(bar.writtenNumber(), true);
      }
    }
    return marked;
  }

  private static String line(Bar bar, String reason) {
    String chord = bar.chords().get(0).harmony().display();
    String where = (bar.unexpected() ? "! " : "  ") + "bar " + bar.writtenNumber() + ", " + chord;
    if (reason.isEmpty()) {
      return where + ": marked in the chart";
    }
    String mend =
        bar.unexpected() ? "" : " (not marked; --mark " + bar.writtenNumber() + " marks it)";
    return where + ": " + reason + mend;
  }
}
