package holdfast.bench.book;

import com.sun.management.OperatingSystemMXBean;
import holdfast.bench.motif.CarriedTakes;
import holdfast.book.overview.ClassPage;
import holdfast.book.overview.ClassWork;
import holdfast.book.overview.Share;
import holdfast.book.overview.Terms;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.listening.alignment.MadeRecording;
import holdfast.listening.midi.MidiTakeWriter;
import holdfast.listening.midi.TakeScore;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * How long a class of many takes makes a teacher wait. Run its main method with the number of
 * takes, a folder to make them in, and perhaps the name of a chart: {@code 2000 /tmp/class "Paper
 * Boats"}. A fourth word, {@code sound}, makes recordings of three minutes, with the backing in
 * them.
 */
public final class ClassBench {

  private static final int CHORUSES = 2;
  private static final int STUDENTS = 200;
  private static final int TOUCH = 80;

  private ClassBench() {}

  /** Makes the takes where they are not there yet, judges what is new, and measures. */
  public static void main(String[] args) throws IOException, InterruptedException {
    int takes = Integer.parseInt(args[0]);
    Path folder = Path.of(args[1]);
    Chart chart = ChartLibrary.open(args.length > 2 ? args[2] : "Paper Boats");
    boolean sound = args.length > 3 && args[3].equals("sound");
    for (int i = 0; i < takes; i++) {
      if (sound) {
        record(folder, chart, i);
      } else {
        make(folder, chart, i);
      }
    }
    Terms terms = Terms.over(chart);
    Path overview = folder.resolve("overview");
    int cores = Runtime.getRuntime().availableProcessors();
    long cpu = cpuNanos();
    long from = System.nanoTime();
    int judged = new ClassWork(folder, overview, terms, Share.ALL).run(cores, step -> {});
    int told = ClassPage.write(overview).takes();
    System.out.printf(
        Locale.ROOT,
        "%d takes judged, %d told: %.1f s, %.1f s of CPU; most heap %d MB%n",
        judged,
        told,
        (System.nanoTime() - from) / 1e9,
        (cpuNanos() - cpu) / 1e9,
        ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == java.lang.management.MemoryType.HEAP)
                .map(MemoryPoolMXBean::getPeakUsage)
                .mapToLong(java.lang.management.MemoryUsage::getUsed)
                .sum()
            >> 20);
  }

  private static long cpuNanos() {
    return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }

  /** Loudspeakers and recorders of several kinds. */
  private static void record(Path folder, Chart chart, int number) throws IOException {
    Path student = folder.resolve("Student " + (1 + number));
    if (!Files.exists(student.resolve("take.wav"))) {
      MadeRecording.usual(chart.title())
          .lasting(180)
          .backing(-22 - number % 9)
          .clock(1 + 1e-5 * (number % 11))
          .write(Files.createDirectories(student));
    }
  }

  private static void make(Path folder, Chart chart, int number) throws IOException {
    Path student = folder.resolve("Student " + (1 + number % STUDENTS));
    Path file = student.resolve("take " + (1 + number / STUDENTS) + ".mid");
    if (Files.exists(file)) {
      return;
    }
    Files.createDirectories(student);
    TempoMap tempo = TempoMap.steady(chart.tempo());
    List<TakeScore.Stroke> strokes =
        CarriedTakes.line(chart, CHORUSES, number).stream()
            .map(note -> new TakeScore.Stroke(note, TOUCH))
            .toList();
    TakeScore score =
        new TakeScore(
            chart.title(),
            chart.metre(),
            chart.changes().key(),
            tempo,
            List.of(new TakeScore.BeatMark(0, "Bar 1")),
            List.of(TakeScore.Voice.inBeats("Line", 1, OptionalInt.of(0), strokes, tempo)));
    MidiTakeWriter.write(score.take(), file);
  }
}
