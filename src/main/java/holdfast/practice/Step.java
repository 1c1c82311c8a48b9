package holdfast.practice;

import holdfast.backing.BarRange;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One thing to practise next, ready to start.
 *
 * @param way how
 * @param chart the chart's name or file, as it is opened
 * @param key the key that the chart is moved to, as it is typed; empty for the chart's own
 * @param bars which bars of the form; empty for all
 * @param tempo in beats a minute, 30 to 240
 * @param idea the idea to take along, in beats from its own bar line; empty where the student
 *     brings one
 * @param why the reason, in one sentence to the student
 */
public record Step(
    Way way,
    String chart,
    Optional<String> key,
    Optional<BarRange> bars,
    double tempo,
    Optional<List<Note>> idea,
    String why) {

  /** Copies the idea. */
  public Step {
    idea = idea.map(List::copyOf);
  }

  /** What it is, in a few words: {@code Climb, bars 5 to 6, at 48 beats a minute}. */
  public String what() {
    String where = bars.map(b -> ", " + b.words()).orElse("");
    return way.title() + where + ", at " + number(tempo) + " beats a minute";
  }

  /** The words behind the program's name that start it. */
  public List<String> arguments() {
    List<String> words = new ArrayList<>(List.of("practise", way.word(), chart));
    key.ifPresent(k -> words.addAll(List.of("--key", k)));
    bars.ifPresent(b -> words.addAll(List.of("--bars", b.first() + ".." + b.last())));
    words.addAll(List.of("--tempo", number(tempo)));
    idea.ifPresent(notes -> words.addAll(List.of("--idea", IdeaNotation.print(notes))));
    return List.copyOf(words);
  }

  /** The line that starts it, to be copied into a terminal of any system. */
  public String command() {
    StringBuilder line = new StringBuilder("holdfast");
    for (String word : arguments()) {
      boolean isPlain = word.matches("[\\p{L}\\p{N}._:/\\\\-]+");
      line.append(' ').append(isPlain ? word : "\"" + word + "\"");
    }
    return line.toString();
  }

  private static String number(double tempo) {
    return tempo == Math.rint(tempo)
        ? Long.toString(Math.round(tempo))
        : String.format(Locale.ROOT, "%.1f", tempo);
  }
}
