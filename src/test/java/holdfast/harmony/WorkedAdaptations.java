package holdfast.harmony;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.SpelledPitch;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/** The twelve worked adaptations of reference/adaptations.txt, for tests of fit and of carrying. */
public final class WorkedAdaptations {

  /**
   * One answer to one example.
   *
   * @param example its number, 1 to 12
   * @param from the chord that the idea was made over
   * @param to the chord that it is carried to; bar 1 starts on it
   * @param role {@code idea}, {@code accepted}, {@code hard} or {@code soft} (rejected)
   * @param notes over {@code to}, or over {@code from} for the idea
   */
  public record Answer(int example, Harmony from, Harmony to, String role, List<Note> notes) {

    /** The chords around it: the old one until beat 0, then the new; for the idea the old only. */
    public Changes changes() {
      TreeMap<Double, Harmony> startingAt = new TreeMap<>();
      startingAt.put(-4.0, from);
      startingAt.put(0.0, role.equals("idea") ? from : to);
      return Changes.through(startingAt, Optional.empty());
    }
  }

  private WorkedAdaptations() {}

  /** All forty-eight rows: twelve ideas, twenty-four accepted and twelve rejected answers. */
  public static List<Answer> all() {
    List<Answer> answers = new ArrayList<>();
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(
                WorkedAdaptations.class.getResourceAsStream("/reference/adaptations.txt"),
                StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (!line.startsWith("#")) {
          answers.add(answer(line.split("; ", -1)));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return answers;
  }

  private static Answer answer(String[] cells) {
    String[] rhythm = cells[3].split(" ", -1);
    String[] names = cells[5].split(" ", -1);
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < names.length; i++) {
      notes.add(
          new Note(
              Double.parseDouble(rhythm[2 * i]),
              Double.parseDouble(rhythm[2 * i + 1]),
              SpelledPitch.parse(names[i]).midi()));
    }
    return new Answer(
        Integer.parseInt(cells[0]),
        Harmony.parse(cells[1]),
        Harmony.parse(cells[2]),
        cells[4],
        notes);
  }
}
