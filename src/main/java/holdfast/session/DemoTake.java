package holdfast.session;

import holdfast.backing.Arrangement;
import holdfast.backing.Feel;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.listening.PlayedNote;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.time.TempoMap;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The take that the demo student plays: over one of our charts a line that was written down bar by
 * bar, over any other an idea of her own.
 *
 * @param student her first name
 * @param chart what she plays over
 * @param tempo in beats a minute
 * @param line what she means to play, in beats of the take
 */
public record DemoTake(String student, Chart chart, double tempo, List<Note> line) {

  /** So many choruses she plays; then she listens. */
  public static final int CHORUSES = 2;

  /** The same take each time. */
  private static final long SEED = 20;

  /** Copies. */
  public DemoTake {
    line = List.copyOf(line);
  }

  /** The take that travels in the jar. */
  public static DemoTake shipped() {
    Map<String, String> head = new HashMap<>();
    List<String[]> bars = new ArrayList<>();
    try (InputStream in = DemoTake.class.getResourceAsStream("demo-take.txt");
        BufferedReader text =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String row : text.lines().toList()) {
        if (row.isBlank() || row.startsWith("#")) {
          continue;
        }
        int colon = row.indexOf(':');
        if (colon > 0) {
          head.put(row.substring(0, colon), row.substring(colon + 1).strip());
        } else {
          bars.add(row.split("\\s+", 2));
        }
      }
    } catch (IOException e) {
      throw new IllegalStateException("the demo take cannot be read from the jar", e);
    }
    Chart chart = ChartLibrary.shipped(head.get("chart")).orElseThrow();
    return new DemoTake(
        head.get("student"), chart, Double.parseDouble(head.get("tempo")), line(chart, bars));
  }

  /**
   * What she plays over a backing: the line that was written for its chart, or else an idea of her
   * own, carried through the bars that go round.
   */
  public static DemoTake over(Arrangement arrangement) {
    DemoTake shipped = shipped();
    boolean isWritten =
        arrangement.chart().equals(shipped.chart())
            && arrangement.bars().size() == arrangement.form().bars().size()
            && arrangement.feel() != Feel.DRONE;
    return new DemoTake(
        shipped.student(),
        arrangement.chart(),
        arrangement.tempo(),
        isWritten ? shipped.line() : CarriedLine.over(arrangement, SEED));
  }

  /** The same take, broken off at this beat. */
  DemoTake until(double beat) {
    return new DemoTake(
        student, chart, tempo, line.stream().filter(note -> note.onsetBeats() < beat).toList());
  }

  /** How she plays it: with a person's timing and touch, in seconds from bar 1. */
  public List<PlayedNote> played() {
    return played(TempoMap.steady(tempo));
  }

  /** How she plays it over a backing at another tempo. */
  public List<PlayedNote> played(TempoMap beats) {
    return new DemoStudent(SEED).play(line, beats);
  }

  private static List<Note> line(Chart chart, List<String[]> bars) {
    double formBeats = chart.form().lengthBeats();
    List<Note> line = new ArrayList<>();
    for (String[] bar : bars) {
      int dot = bar[0].indexOf('.');
      int chorus = Integer.parseInt(bar[0].substring(0, dot));
      int number = Integer.parseInt(bar[0].substring(dot + 1));
      double start = (chorus - 1) * formBeats + chart.form().beatOfBar(number);
      for (Note note : IdeaNotation.parse(bar[1])) {
        line.add(new Note(start + note.onsetBeats(), note.durationBeats(), note.pitch()));
      }
    }
    line.sort(Comparator.comparingDouble(Note::onsetBeats));
    return line;
  }
}
