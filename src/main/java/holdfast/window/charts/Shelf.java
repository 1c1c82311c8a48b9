package holdfast.window.charts;

import holdfast.chart.Chart;
import holdfast.chart.ChartException;
import holdfast.chart.ChartLibrary;
import holdfast.disk.WholeFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * All charts that can be chosen: the user's own, and ours.
 *
 * @param folder the user's folder
 */
public record Shelf(Path folder) {

  private static final Logger LOG = LoggerFactory.getLogger(Shelf.class);

  private static final String ENDING = ".txt";

  /**
   * A chart on the shelf.
   *
   * @param file where it is kept; one of ours is kept in the program
   */
  public record Entry(Chart chart, Optional<Path> file) {}

  /** The user's own in the order of their names, then ours in the order to learn them. */
  public List<Entry> all() {
    List<Entry> all = new ArrayList<>(own());
    Set<String> titles = new HashSet<>();
    all.forEach(entry -> titles.add(entry.chart().title()));
    ChartLibrary.names().stream()
        .flatMap(name -> ChartLibrary.shipped(name).stream())
        .filter(chart -> !titles.contains(chart.title()))
        .forEach(chart -> all.add(new Entry(chart, Optional.empty())));
    return List.copyOf(all);
  }

  private List<Entry> own() {
    Path charts = folder.resolve("charts");
    List<Entry> own = new ArrayList<>();
    if (!Files.isDirectory(charts)) {
      return own;
    }
    try (Stream<Path> files = Files.list(charts)) {
      for (Path file : files.filter(f -> f.toString().endsWith(ENDING)).sorted().toList()) {
        try {
          own.add(new Entry(ChartLibrary.open(file), Optional.of(file)));
        } catch (ChartException e) {
          LOG.warn("left out: {}", e.getMessage());
        }
      }
    } catch (IOException e) {
      LOG.warn("{} cannot be read: {}", charts, e.getMessage());
    }
    return own;
  }

  /**
   * Keeps a chart's text under its title, or in its old file.
   *
   * @throws holdfast.mistake.UserMistake where it cannot be written
   */
  public Path keep(String title, String text, Optional<Path> old) throws IOException {
    Path charts = folder.resolve("charts");
    Files.createDirectories(charts);
    String plain =
        title.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
    Path file = old.orElse(charts.resolve((plain.isEmpty() ? "chart" : plain) + ENDING));
    WholeFile.write(file, text);
    return file;
  }
}
