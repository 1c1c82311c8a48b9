package holdfast.report;

import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.strong;
import static j2html.TagCreator.text;

import holdfast.report.picture.Palette;
import holdfast.report.picture.SmallMultiple;
import holdfast.session.JudgedTake;
import j2html.tags.DomContent;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/** This take beside the student's earlier ones of the same chart: small multiples. */
final class ProgressSection {

  private static final double WIDTH = 124;
  private static final double HEIGHT = 50;
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

  /** More takes than this nobody tells apart; the newest are shown. */
  private static final int MOST_TAKES = 24;

  private record Value(
      String id,
      String name,
      double low,
      double high,
      Function<Progress.Take, Double> of,
      Function<Double, String> words) {}

  private ProgressSection() {}

  static DomContent of(JudgedTake take, Occasion occasion, Pictures pictures) {
    if (occasion.progress().earlier().isEmpty() || take.counts().phrases() == 0) {
      return text("");
    }
    List<Progress.Take> takes = new ArrayList<>(occasion.progress().earlier());
    takes.add(Progress.Take.of(occasion.day().orElse(LocalDate.EPOCH), take));
    List<Progress.Take> shown = takes.subList(Math.max(0, takes.size() - MOST_TAKES), takes.size());
    return section(
            h2("Beside your earlier takes of this chart"),
            p("From "
                    + DAY.format(shown.get(0).day())
                    + " to this take, "
                    + shown.size()
                    + " takes; the full dot is this one. More is not always better: a new idea or a"
                    + " faster tempo starts again.")
                .withClass("quiet"),
            div(each(values(shown), value -> multiple(value, shown, pictures)))
                .withClass("multiples"))
        .withClass("progress");
  }

  private static List<Value> values(List<Progress.Take> takes) {
    double most = takes.stream().mapToInt(Progress.Take::longestRun).max().orElse(1);
    double fast = takes.stream().mapToDouble(Progress.Take::tempo).max().orElse(60);
    double slow = takes.stream().mapToDouble(Progress.Take::tempo).min().orElse(60);
    List<Value> values = new ArrayList<>();
    values.add(
        new Value(
            "carried",
            "phrases that carried the idea",
            0,
            1,
            Progress.Take::carriedShare,
            share -> Math.round(100 * share) + " in 100"));
    values.add(
        new Value(
            "run",
            "longest run",
            0,
            Math.max(1, most),
            t -> (double) t.longestRun(),
            run -> Math.round(run) + (Math.round(run) == 1 ? " phrase" : " phrases")));
    values.add(
        new Value(
            "fit",
            "how it sat in the chords",
            0.6,
            1,
            t -> t.fit().orElse(Double.NaN),
            fit -> String.format(Locale.ROOT, "%.2f of 1", fit)));
    values.add(
        new Value(
            "tempo",
            "tempo",
            slow - 5,
            fast + 5,
            Progress.Take::tempo,
            tempo -> Math.round(tempo) + " beats a minute"));
    if (takes.stream().anyMatch(t -> t.driftCents().isPresent())) {
      values.add(
          new Value(
              "drift",
              "tuning moved by",
              -100,
              100,
              t -> t.driftCents().orElse(Double.NaN),
              cents -> String.format(Locale.ROOT, "%+.0f cents", cents).replace('-', '−')));
    }
    return values;
  }

  private static DomContent multiple(Value value, List<Progress.Take> takes, Pictures pictures) {
    List<Double> numbers = takes.stream().map(value.of()).toList();
    String first = words(value, numbers.get(0));
    String last = words(value, numbers.get(numbers.size() - 1));
    return div(
            pictures.of(
                "progress_" + value.id(),
                value.name() + ", take after take: from " + first + " to " + last,
                WIDTH,
                HEIGHT,
                g ->
                    SmallMultiple.paint(
                        g, 0, 0, WIDTH, HEIGHT, numbers, value.low(), value.high(), Palette.LIGHT)),
            p(strong(value.name())),
            p(first + " → " + last).withClass("quiet"))
        .withClass("multiple");
  }

  private static String words(Value value, double number) {
    return Double.isNaN(number) ? "not measured" : value.words().apply(number);
  }
}
