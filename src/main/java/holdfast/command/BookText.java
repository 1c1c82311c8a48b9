package holdfast.command;

import holdfast.book.Entry;
import java.nio.charset.Charset;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Takes as lines of a terminal.
 *
 * @param blocks eight heights from low to tall; letters where a terminal has no blocks
 */
record BookText(String blocks) {

  static final BookText BLOCKS = new BookText("▁▂▃▄▅▆▇█");
  static final BookText LETTERS = new BookText("._-~=+*#");

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  /** A picture as wide as a terminal. */
  private static final int MOST_TAKES = 60;

  /** Blocks where the terminal's character set has them. */
  static BookText forThisTerminal() {
    String set = System.getProperty("stdout.encoding", Charset.defaultCharset().name());
    return Charset.isSupported(set) && Charset.forName(set).newEncoder().canEncode('█')
        ? BLOCKS
        : LETTERS;
  }

  /** One take. */
  String line(Entry entry) {
    StringBuilder line = new StringBuilder();
    line.append(DAY.format(entry.started())).append("  ");
    entry.student().ifPresent(name -> line.append(name).append(", "));
    line.append(entry.chart());
    if (entry.fluency().isPresent()) {
      line.append(": ").append(told(entry.fluency().get()));
      return line.append(after(entry)).toString();
    }
    entry.way().ifPresent(way -> line.append(" (").append(way).append(')'));
    line.append(": ");
    if (entry.phrases() == 0) {
      line.append("nothing after the idea");
    } else {
      line.append(entry.carried()).append(" of ").append(entry.phrases()).append(" carried ");
      line.append(picture(entry.families()));
    }
    return line.append(after(entry)).toString();
  }

  /** How it felt, what was overruled, its name and its notes. */
  private static String after(Entry entry) {
    StringBuilder line = new StringBuilder();
    entry.feeling().ifPresent(feeling -> line.append(", felt ").append(feeling.word()));
    if (entry.overruled() > 0) {
      line.append(", overruled: ").append(entry.overruled());
    }
    line.append("\n    ").append(entry.take());
    if (!entry.notes().isEmpty()) {
      line.append("\n    ").append(entry.notes().replaceAll("\\s+", " "));
    }
    return line.toString();
  }

  private static String told(Entry.Fluency ideas) {
    return String.format(
        Locale.ROOT,
        "%d different %s of %d, in %.1f minutes",
        ideas.different(),
        ideas.different() == 1 ? "idea" : "ideas",
        ideas.said(),
        ideas.minutes());
  }

  /** Phrase by phrase: tall restated, middle varied, low new. */
  private String picture(String families) {
    StringBuilder picture = new StringBuilder();
    for (int i = 0; i < Math.min(MOST_TAKES, families.length()); i++) {
      int height =
          switch (families.charAt(i)) {
            case 'r' -> 7;
            case 'v' -> 4;
            default -> 0;
          };
      picture.append(blocks.charAt(height));
    }
    return picture.toString();
  }

  /** A student's takes, the newest first, as a line for each chart. */
  List<String> progress(List<Entry> takes) {
    Map<String, StringBuilder> pictures = new LinkedHashMap<>();
    Map<String, Entry> newest = new LinkedHashMap<>();
    for (Entry take : takes.stream().filter(entry -> entry.fluency().isEmpty()).toList()) {
      newest.putIfAbsent(take.chart(), take);
      StringBuilder picture = pictures.computeIfAbsent(take.chart(), chart -> new StringBuilder());
      OptionalDouble share = take.share();
      if (share.isPresent() && picture.length() < MOST_TAKES) {
        picture.append(blocks.charAt((int) Math.min(7, share.getAsDouble() * 8)));
      }
    }
    return newest.values().stream()
        .map(
            last ->
                String.format(
                    Locale.ROOT,
                    "%s  %s  last: %d of %d carried, longest run %d",
                    last.chart(),
                    pictures.get(last.chart()).reverse(),
                    last.carried(),
                    last.phrases(),
                    last.longestRun()))
        .toList();
  }

  /**
   * A student's sessions of inventing, the newest take first, as a line: a block for each, as tall
   * as the different ideas a minute beside the best session; empty where there was none.
   */
  Optional<String> fluency(List<Entry> takes) {
    List<Entry.Fluency> sessions =
        takes.stream().flatMap(take -> take.fluency().stream()).limit(MOST_TAKES).toList();
    double best = sessions.stream().mapToDouble(Entry.Fluency::perMinute).max().orElse(0);
    if (sessions.isEmpty()) {
      return Optional.empty();
    }
    StringBuilder picture = new StringBuilder();
    for (Entry.Fluency session : sessions) {
      int height = best > 0 ? (int) Math.round(7 * session.perMinute() / best) : 0;
      picture.append(blocks.charAt(height));
    }
    Entry.Fluency last = sessions.get(0);
    return Optional.of(
        String.format(
            Locale.ROOT,
            "Inventing  %s  last: %s, %.1f a minute",
            picture.reverse(),
            told(last),
            last.perMinute()));
  }
}
