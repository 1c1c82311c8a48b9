package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.theory.Harmony;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The charts that travel with the program, against the facts of demo-charts.txt (keys, bars, marks
 * and tempo ranges that were worked out before any of this code).
 */
class ShippedChartsTest {

  record Known(
      String title,
      String key,
      String metre,
      double slowest,
      double fastest,
      Set<Integer> unexpected,
      List<List<String>> bars) {

    static Known of(List<String> fields) {
      String[] tempi = fields.get(3).split("-", -1);
      return new Known(
          fields.get(0),
          fields.get(1),
          fields.get(2),
          Double.parseDouble(tempi[0]),
          Double.parseDouble(tempi[1]),
          Arrays.stream(fields.get(4).split(" ", -1))
              .map(Integer::valueOf)
              .collect(Collectors.toSet()),
          Arrays.stream(fields.get(5).split(" \\| ", -1))
              .map(bar -> List.of(bar.split(" ", -1)))
              .toList());
    }

    @Override
    public String toString() {
      return title;
    }
  }

  static List<Known> facts() {
    return Facts.rows("demo-charts.txt").stream().map(Known::of).toList();
  }

  @Test
  void all_ten_are_listed() {
    assertEquals(
        facts().stream().map(Known::title).sorted().toList(),
        ChartLibrary.names().stream()
            .map(name -> ChartLibrary.open(name).title())
            .sorted()
            .toList());
  }

  @Test
  void every_chart_in_the_folder_is_in_the_index() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("backing"))) {
      assertEquals(
          files
              .map(file -> file.getFileName().toString())
              .filter(name -> name.endsWith(".txt"))
              .map(name -> name.substring(0, name.length() - 4))
              .collect(Collectors.toCollection(TreeSet::new)),
          new TreeSet<>(ChartLibrary.names()));
    }
  }

  @ParameterizedTest
  @MethodSource("facts")
  void has_the_key_the_metre_and_a_tempo_in_reach(Known facts) {
    Chart chart = ChartLibrary.open(facts.title());
    assertEquals(facts.key(), chart.key().orElseThrow().text());
    assertEquals(facts.metre(), chart.metre().text());
    assertTrue(chart.tempo() >= facts.slowest() && chart.tempo() <= facts.fastest());
  }

  @ParameterizedTest
  @MethodSource("facts")
  void has_the_chords_bar_by_bar(Known facts) {
    Chart chart = ChartLibrary.open(facts.title());
    List<List<Harmony>> chords =
        chart.form().bars().stream()
            .map(bar -> bar.chords().stream().map(ChordSpan::harmony).toList())
            .toList();
    List<List<Harmony>> expected =
        facts.bars().stream().map(bar -> bar.stream().map(Harmony::parse).toList()).toList();
    assertEquals(expected, chords);
  }

  @ParameterizedTest
  @MethodSource("facts")
  void marks_the_unexpected_bars(Known facts) {
    assertEquals(facts.unexpected(), ChartLibrary.open(facts.title()).unexpectedBars());
  }

  @ParameterizedTest
  @MethodSource("facts")
  void is_printed_as_it_is_shipped(Known facts) throws IOException {
    String name = facts.title().toLowerCase(java.util.Locale.ROOT).replace(' ', '-');
    String text = Files.readString(Path.of("backing", name + ".txt"));
    assertEquals(text, ChartText.print(ChartText.parse(text, name)));
  }
}
