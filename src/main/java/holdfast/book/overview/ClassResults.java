package holdfast.book.overview;

import holdfast.book.Student;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The lines of a class, put together by student and by bar. Keeps a short line a take and nothing
 * else, whatever the takes are.
 *
 * @param students in the order of their names
 * @param charts for each chart, by its title, what its bars did to the ideas
 * @param troubles files that could not be judged, a sentence each, by file
 * @param takes how many were judged
 */
record ClassResults(
    List<OfStudent> students,
    Map<String, List<HardBar>> charts,
    Map<String, String> troubles,
    int takes) {

  /** Below this share of carried phrases in the newest take somebody would be glad of a word. */
  private static final double GLAD_OF_A_WORD = 0.4;

  /** Fewer phrases say too little of a take. */
  private static final int LEAST_PHRASES = 3;

  /** A bar is hard for all where the idea was let go once in so many takes, or more often. */
  private static final int ONCE_IN_TAKES = 4;

  /** What happened in fewer takes was not hard for all. */
  private static final int LEAST_TAKES = 3;

  /** More bars in a list are no list of hard bars. */
  private static final int MOST_HARD_BARS = 8;

  /** Copies. */
  ClassResults {
    students = List.copyOf(students);
  }

  /**
   * A student.
   *
   * @param name as the newest take has it
   * @param takes the oldest first
   */
  record OfStudent(String name, List<Line> takes) {

    /** Copies. */
    OfStudent {
      takes = List.copyOf(takes);
    }

    Line newest() {
      return takes.get(takes.size() - 1);
    }

    /** The bar at which the idea was let go most often, in all takes of the newest chart. */
    Optional<Integer> hardestBar() {
      Map<Integer, Integer> lost = new TreeMap<>();
      String chart = newest().outcome().chart();
      for (Line take : takes) {
        if (take.outcome().chart().equals(chart)) {
          take.outcome().lostBars().forEach(bar -> lost.merge(bar, 1, Integer::sum));
        }
      }
      return lost.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey);
    }

    /** Why this student would be glad of a word; empty where all goes its way. */
    Optional<String> word() {
      Line.Outcome last = newest().outcome();
      if (last.phrases() < LEAST_PHRASES) {
        return Optional.of("Only a little was to be heard; did all go well with the recording?");
      }
      if (last.carried() < GLAD_OF_A_WORD * last.phrases()) {
        return Optional.of(
            hardestBar()
                .map(
                    bar ->
                        "The idea kept slipping away, most at bar "
                            + bar
                            + "; look at it together.")
                .orElse("The idea kept slipping away; a shorter one may hold better."));
      }
      return Optional.empty();
    }
  }

  /**
   * A bar at which ideas were let go.
   *
   * @param bar of the form
   * @param times how often, in all takes of this chart
   * @param takes how many takes of this chart there are
   */
  record HardBar(int bar, int times, int takes) {}

  /** Reads the lines in a folder. */
  static ClassResults read(Path overview) {
    Map<String, Line> byFile = new LinkedHashMap<>();
    Ledger.read(overview, line -> byFile.put(line.file(), line));
    Map<String, Line> byTake = new LinkedHashMap<>();
    byFile.values().forEach(line -> byTake.merge(line.take(), line, ClassResults::later));
    Map<String, List<Line>> byStudent = new TreeMap<>();
    Map<String, Map<Integer, Integer>> lost = new TreeMap<>();
    Map<String, Integer> takesOver = new HashMap<>();
    Map<String, String> troubles = new TreeMap<>();
    for (Line line : byTake.values()) {
      if (line.outcome().trouble().isPresent()) {
        troubles.put(line.file(), line.outcome().trouble().get());
        continue;
      }
      byStudent
          .computeIfAbsent(folded(line.outcome().student()), name -> new ArrayList<>())
          .add(line);
      String chart = line.outcome().chart();
      takesOver.merge(chart, 1, Integer::sum);
      Map<Integer, Integer> bars = lost.computeIfAbsent(chart, title -> new TreeMap<>());
      line.outcome().lostBars().forEach(bar -> bars.merge(bar, 1, Integer::sum));
    }
    List<OfStudent> students = new ArrayList<>();
    for (List<Line> takes : byStudent.values()) {
      takes.sort(
          Comparator.comparing((Line take) -> take.outcome().started())
              .thenComparing(take -> take.state().changedMillis())
              .thenComparing(Line::file));
      students.add(new OfStudent(takes.get(takes.size() - 1).outcome().student(), takes));
    }
    Map<String, List<HardBar>> charts = new TreeMap<>();
    lost.forEach(
        (chart, bars) ->
            charts.put(
                chart,
                bars.entrySet().stream()
                    .map(bar -> new HardBar(bar.getKey(), bar.getValue(), takesOver.get(chart)))
                    .filter(bar -> bar.takes() >= LEAST_TAKES)
                    .filter(bar -> bar.times() * ONCE_IN_TAKES >= bar.takes())
                    .sorted(
                        Comparator.comparingInt(HardBar::times)
                            .reversed()
                            .thenComparingInt(HardBar::bar))
                    .limit(MOST_HARD_BARS)
                    .toList()));
    int judged = byTake.size() - troubles.size();
    return new ClassResults(students, charts, troubles, judged);
  }

  /** Of one take in two files, the one that came later: it may have been renamed. */
  private static Line later(Line one, Line other) {
    return other.state().changedMillis() >= one.state().changedMillis() ? other : one;
  }

  private static String folded(String name) {
    String clean =
        name.isBlank() ? "?" : name.length() > Student.LONGEST_NAME ? name : name.strip();
    return Normalizer.normalize(clean, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
  }
}
