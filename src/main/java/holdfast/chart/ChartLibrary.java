package holdfast.chart;

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

/**
 * Finds charts: the ones that travel with the program by their names, all others by their files.
 * Names are forgiving: {@code Lantern Turn}, {@code lantern-turn} and {@code lanternturn} are one.
 */
public final class ChartLibrary {

  private static final String FOLDER = "/backing/";
  private static final String INDEX = "charts.index";

  /** How many near names an error offers. */
  private static final int NEAR_NAMES = 3;

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
    Optional<Chart> shipped = shipped(nameOrFile);
    if (shipped.isPresent()) {
      return shipped.get();
    }
    Optional<Path> file = existing(nameOrFile);
    if (file.isPresent()) {
      return open(file.get());
    }
    if (looksLikeFile(nameOrFile)) {
      throw new ChartException(
          nameOrFile,
          "there is no such file",
          "check the name; `holdfast charts` lists the charts" + " that need no file");
    }
    List<String> near = nearest(nameOrFile);
    throw new ChartException(
        "“" + nameOrFile + "”",
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
    return ChartFile.read(file);
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
      return Optional.empty();
    }
  }

  private static boolean looksLikeFile(String text) {
    return text.matches("(?s).*[/\\\\].*|(?s).*\\.\\p{Alnum}{2,8}");
  }

  /** The names that are like it: half of the letters at most would have to change. */
  private static List<String> nearest(String name) {
    String wanted = plain(name);
    record Near(String name, int distance) {}
    return names().stream()
        .map(known -> new Near(known, EditDistance.between(wanted, plain(known))))
        .filter(near -> 2 * near.distance() <= wanted.length())
        .sorted(Comparator.comparingInt(Near::distance))
        .limit(NEAR_NAMES)
        .map(Near::name)
        .toList();
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
