package holdfast.command;

import holdfast.chart.Chart;
import holdfast.chart.ChartGrid;
import holdfast.chart.ChartLibrary;
import holdfast.chart.ChartText;
import holdfast.chart.MusicXmlChart;
import holdfast.chart.Transposition;
import holdfast.chart.WrittenFor;
import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lists charts, shows one, and writes it in other keys and formats. */
@Command(
    name = "charts",
    mixinStandardHelpOptions = true,
    description = {
      "Lists the charts that come with Holdfast; or shows one, in any key, for any instrument,"
          + " and writes it to a file of yours."
    },
    footerHeading = "%nFor instance:%n",
    footer = {
      "  holdfast charts",
      "  holdfast charts lantern-turn --key F --for Bb",
      "  holdfast charts my-tune.musicxml --to my-tune.txt",
      "  holdfast charts my-tune.txt --mark 6,14 --to my-marked-tune.txt",
      "  holdfast charts my-tune.txt --find-turns --unmark 3 --to my-marked-tune.txt"
    })
final class ChartsCommand implements Runnable {

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "CHART",
      description =
          "A chart by name, or a file: our text, MusicXML (.musicxml, .xml, .mxl)."
              + " Without it, all names are listed.")
  private Optional<String> name;

  @Option(
      names = "--key",
      paramLabel = "KEY",
      description = "Move it to this key, as it sounds: F, Eb, Am. The mode stays.")
  private Optional<String> key;

  @Option(
      names = "--for",
      paramLabel = "PITCH",
      description = "Write it for an instrument in this pitch: Bb, Eb, F; C is as it sounds.")
  private Optional<String> instrument;

  @Option(
      names = "--mark",
      split = ",",
      paramLabel = "BAR",
      description = "Mark bars, as counted on the page, that the ear does not expect.")
  private List<Integer> mark = List.of();

  @Option(
      names = "--unmark",
      split = ",",
      paramLabel = "BAR",
      description = "Take the mark off these bars.")
  private List<Integer> unmark = List.of();

  @Option(
      names = "--find-turns",
      description = "Mark every bar that I find the ear does not expect.")
  private boolean findTurns;

  @Option(names = "--played", description = "Show it played out, repeats and endings in turn.")
  private boolean played;

  @Option(names = "--text", description = "Show the text that it is typed as.")
  private boolean text;

  @Option(
      names = "--to",
      paramLabel = "FILE",
      description = "Write it to a new file: .txt, .musicxml (or .xml), or .mxl.")
  private Optional<Path> file;

  @Override
  public void run() {
    PrintWriter out = spec.commandLine().getOut();
    if (name.isEmpty()) {
      list(out);
      return;
    }
    PrintWriter err = spec.commandLine().getErr();
    Chart chart = changed(ChartLibrary.open(name.get(), note -> err.println("note: " + note)));
    if (file.isPresent()) {
      write(chart, file.get());
      out.println("wrote " + file.get());
      tellTurns(chart, out);
    } else {
      out.print(shown(chart));
      if (!text) {
        tellTurns(chart, out);
      }
    }
    out.flush();
  }

  private static void tellTurns(Chart chart, PrintWriter out) {
    List<String> turns = TurnsFound.of(chart);
    if (!turns.isEmpty()) {
      out.println();
      out.println("Turns ahead:");
      turns.forEach(out::println);
    }
  }

  private static void list(PrintWriter out) {
    List<String> names = ChartLibrary.names();
    int width = names.stream().mapToInt(String::length).max().orElse(0);
    for (String chartName : names) {
      Chart chart = ChartLibrary.open(chartName);
      out.printf(
          Locale.ROOT,
          "%-" + width + "s  %2d bars  %-4s  %s%n",
          chartName,
          chart.form().bars().size(),
          chart.key().map(k -> k.tonic().text() + (k.mode().hasMinorThird() ? "m" : "")).orElse(""),
          chart.heading().about().orElse(""));
    }
  }

  private Chart changed(Chart chart) {
    Chart changed = findTurns ? TurnsFound.marked(chart) : chart;
    for (int bar : mark) {
      changed = marked(changed, bar, true);
    }
    for (int bar : unmark) {
      changed = marked(changed, bar, false);
    }
    WrittenFor reader = instrument.map(ChartsCommand::pitch).orElse(chart.heading().writtenFor());
    if (key.isPresent()) {
      changed = inKey(changed.sounding(), key.get());
    }
    return Transposition.writtenFor(changed, reader);
  }

  private Chart marked(Chart chart, int bar, boolean unexpected) {
    try {
      return chart.marked(bar, unexpected);
    } catch (IllegalArgumentException e) {
      throw new UserMistake(
          (unexpected ? "--mark " : "--unmark ") + bar + ": " + e.getMessage(), e);
    }
  }

  private static Chart inKey(Chart chart, String key) {
    try {
      return Transposition.to(chart, Key.parse(key).tonic());
    } catch (IllegalArgumentException e) {
      throw new UserMistake("--key " + key + ": " + e.getMessage(), e);
    }
  }

  private static WrittenFor pitch(String text) {
    return NoteName.read(text)
        .map(WrittenFor::new)
        .orElseThrow(
            () ->
                new UserMistake(
                    "--for " + text + ": no instrument has this pitch; say Bb, Eb or F"));
  }

  private String shown(Chart chart) {
    if (text) {
      return ChartText.print(chart);
    }
    ChartGrid.Signs signs = screenHasFlats() ? ChartGrid.Signs.PRINTED : ChartGrid.Signs.TYPED;
    return played ? ChartGrid.played(chart, signs) : ChartGrid.written(chart, signs);
  }

  /** Whether what is written to the terminal can hold the sign for a flat. */
  private static boolean screenHasFlats() {
    String encoding = System.getProperty("stdout.encoding", Charset.defaultCharset().name());
    return Charset.isSupported(encoding) && Charset.forName(encoding).newEncoder().canEncode('♭');
  }

  private static void write(Chart chart, Path file) {
    if (Files.exists(file)) {
      throw new UserMistake(file + ": it is there already; choose a new name");
    }
    WholeFile.write(file, bytes(chart, file));
  }

  private static byte[] bytes(Chart chart, Path file) {
    String fileName = file.toString().toLowerCase(Locale.ROOT);
    if (fileName.endsWith(".txt")) {
      return ChartText.print(chart).getBytes(StandardCharsets.UTF_8);
    }
    if (fileName.endsWith(".musicxml") || fileName.endsWith(".xml")) {
      return MusicXmlChart.write(chart).getBytes(StandardCharsets.UTF_8);
    }
    if (fileName.endsWith(".mxl")) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      try {
        MusicXmlChart.writeCompressed(chart, out);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return out.toByteArray();
    }
    throw new UserMistake(
        file + ": the name does not say in which format; end it in .txt, .musicxml or .mxl");
  }
}
