package holdfast.chart;

import holdfast.mistake.Quoted;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Finds charts: the ones that travel with the program by their names, all others by their files.
 * Names are forgiving: {@code Lantern Turn}, {@code lantern-turn} and {@code lanternturn} are one.
 */
public final class ChartLibrary {

  private static final String FOLDER = "/backing/";
  private static final String INDEX = "charts.index";

  /** How many near names an error offers. */
  private static final int NEAR_NAMES = 3;

  /** So many letters of a name say which one is meant. */
  private static final int SHORTEST_START = 3;

  private ChartLibrary() {}

  /** The names of the charts that travel with the program, in the order in which to learn them. */
  public static List<String> names() {
    return resource(INDEX).lines().map(String::strip).filter(name -> !name.isEmpty()).toList();
  }

  /**
   * The chart of this name, or else the one in this file.
   *
   * @throws ChartException where there is neither, or where the file is no chart
   */
  public static Chart open(String nameOrFile) {
    return open(nameOrFile, note -> {});
  }

  /**
   * As {@link #open(String)}.
   *
   * @param notes is told, in a sentence each, what of another program's chart could not be taken
   *     over as it was
   * @throws ChartException where there is neither, or where the file is no chart
   */
  public static Chart open(String nameOrFile, Consumer<String> notes) {
    Optional<Chart> shipped = shipped(nameOrFile);
    if (shipped.isPresent()) {
      return shipped.get();
    }
    Optional<Path> file = existing(nameOrFile);
    if (file.isPresent()) {
      return ChartFile.read(file.get(), notes);
    }
    if (looksLikeFile(nameOrFile)) {
      throw new ChartException(
          nameOrFile,
          "there is no such file",
          "check the name; `holdfast charts` lists the charts" + " that need no file");
    }
    List<String> near = nearest(nameOrFile);
    throw new ChartException(
        "“" + Quoted.shortly(nameOrFile) + "”",
        "no chart has this name and no file either",
        (near.isEmpty() ? "" : "did you mean " + String.join(" or ", near) + "? ")
            + "`holdfast charts` lists all");
  }

  /**
   * The chart in a file: our text, MusicXML, or compressed MusicXML.
   *
   * @throws ChartException where it is no chart
   */
  public static Chart open(Path file) {
    return ChartFile.read(file, note -> {});
  }

  /** The chart of this name that travels with the program; empty where none does. */
  public static Optional<Chart> shipped(String name) {
    String wanted = plain(name);
    return names().stream()
        .filter(known -> plain(known).equals(wanted))
        .findFirst()
        .map(known -> ChartText.parse(resource(known + ".txt"), known));
  }

  private static Optional<Path> existing(String file) {
    try {
      return Optional.of(Path.of(file)).filter(Files::exists);
    } catch (InvalidPathException e) {
      if (looksLikeFile(file)) {
        throw e;
      }
      return Optional.empty();
    }
  }

  private static boolean looksLikeFile(String text) {
    return text.matches("(?s).*[/\\\\].*|(?s).*\\.\\p{Alnum}{2,8}");
  }

  /** The names that start like it, or that half of its letters at most would have to change for. */
  private static List<String> nearest(String name) {
    String wanted = plain(name);
    record Near(String name, int distance) {}
    return names().stream()
        .map(known -> new Near(known, distance(wanted, plain(known))))
        .filter(near -> 2 * near.distance() <= wanted.length())
        .sorted(Comparator.comparingInt(Near::distance))
        .limit(NEAR_NAMES)
        .map(Near::name)
        .toList();
  }

  private static int distance(String wanted, String known) {
    boolean isStart = wanted.length() >= SHORTEST_START && known.startsWith(wanted);
    return isStart ? 0 : EditDistance.between(wanted, known);
  }

  /** A name without capitals, blanks and signs. */
  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
  }

  private static String resource(String name) {
    try (InputStream in = ChartLibrary.class.getResourceAsStream(FOLDER + name)) {
      if (in == null) {
        throw new IllegalStateException("the program was packed without " + FOLDER + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
