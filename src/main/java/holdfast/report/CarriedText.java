package holdfast.report;

import holdfast.carry.Adaptation;
import holdfast.carry.CarriedThrough;
import holdfast.carry.Saying;
import holdfast.chart.ChordSpan;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.SpelledPitch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** An idea carried through a form, for people to read: bar, chords, notes, and why. */
public final class CarriedText {

  /** Columns in which a terminal or a sheet of paper shows text without breaking it. */
  private static final int WIDTH = 80;

  private static final int BAR_COLUMNS = 8;
  private static final String BESIDE = "  ";

  private CarriedText() {}

  /**
   * Line by line.
   *
   * @param key the key of the tune, where it is known; names are spelled in it
   */
  public static List<String> of(CarriedThrough carried, Optional<Key> key) {
    int chordColumns = 0;
    boolean heldShorter = false;
    for (Saying saying : carried.sayings()) {
      chordColumns = Math.max(chordColumns, chords(saying).length());
      heldShorter |= saying.heldShorter();
    }
    List<String> lines = new ArrayList<>();
    for (Saying saying : carried.sayings()) {
      for (int i = 0; i < saying.choices().size(); i++) {
        Adaptation choice = saying.choices().get(i);
        lines.add(
            padded(i == 0 ? "bar " + saying.bar() : "    or", BAR_COLUMNS)
                + padded(i == 0 ? chords(saying) : "", chordColumns)
                + BESIDE
                + names(SayingNames.of(saying, choice, key)));
        lines.addAll(indented(choice.why()));
      }
    }
    if (heldShorter) {
      lines.add("");
      lines.add("Hold the last note a little shorter where the next chord comes soon.");
    }
    return lines;
  }

  private static String chords(Saying saying) {
    return saying.chords().stream()
        .map(ChordSpan::harmony)
        .map(Harmony::display)
        .collect(Collectors.joining(" "));
  }

  private static String names(List<SpelledPitch> pitches) {
    return pitches.stream().map(SpelledPitch::display).collect(Collectors.joining(" "));
  }

  private static String padded(String text, int columns) {
    return text + " ".repeat(Math.max(0, columns - text.length()));
  }

  private static List<String> indented(String sentence) {
    String indent = " ".repeat(BAR_COLUMNS);
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(indent);
    for (String word : sentence.split(" ", -1)) {
      if (line.length() > BAR_COLUMNS) {
        if (line.length() + 1 + word.length() > WIDTH) {
          lines.add(line.toString());
          line = new StringBuilder(indent);
        } else {
          line.append(' ');
        }
      }
      line.append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
