package holdfast.report;

import static j2html.TagCreator.a;
import static j2html.TagCreator.caption;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.span;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import holdfast.chart.Bar;
import holdfast.melody.Note;
import holdfast.motif.Verdict;
import holdfast.report.picture.Mark;
import holdfast.report.picture.ShapePainter;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import j2html.tags.DomContent;
import j2html.tags.specialized.TdTag;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The form as a sheet: bars across, choruses down, and in each cell the shape that was played there
 * over the idea's dashed ghost.
 */
final class Sheet {

  private static final int CELL_WIDTH = 92;
  private static final int CELL_HEIGHT = 56;

  /** Eight cells and the number of the chorus go side by side on A4. */
  private static final int PAPER_CELL_WIDTH = 74;

  private static final int PAPER_CELL_HEIGHT = 42;

  /** More bars than this stand in several rows of the page. */
  private static final int BARS_IN_A_ROW = 8;

  private Sheet() {}

  static DomContent of(JudgedTake take, Pictures pictures) {
    List<Bar> bars = take.setting().form().bars();
    int rows = (bars.size() + BARS_IN_A_ROW - 1) / BARS_IN_A_ROW;
    return div(
        each(
            IntStream.range(0, rows).boxed().toList(),
            row -> {
              int from = row * BARS_IN_A_ROW;
              int to = Math.min(bars.size(), from + BARS_IN_A_ROW);
              return rowOfBars(take, bars.subList(from, to), pictures);
            }));
  }

  /** How a phrase is marked. */
  static Mark mark(JudgedPhrase phrase) {
    return switch (phrase.verdict().family()) {
      case RESTATED -> Mark.CARRIED;
      case VARIED -> Mark.VARIED;
      case NEW -> Mark.NEW;
    };
  }

  private static DomContent rowOfBars(JudgedTake take, List<Bar> bars, Pictures pictures) {
    int first = bars.get(0).number();
    int last = bars.get(bars.size() - 1).number();
    return table(
            caption("Bars " + first + " to " + last),
            thead(
                tr(
                    th("chorus").attr("scope", "col").withClass("chorus"),
                    each(
                        bars,
                        bar ->
                            th(
                                    span((bar.unexpected() ? "! " : "") + chords(bar)),
                                    span(" " + bar.number()).withClass("quiet"))
                                .attr("scope", "col")
                                .withClass(bar.unexpected() ? "turn" : "")))),
            tbody(
                each(
                    IntStream.rangeClosed(1, take.choruses()).boxed().toList(),
                    chorus ->
                        tr(
                            th(Integer.toString(chorus)).attr("scope", "row"),
                            each(bars, bar -> cell(take, chorus, bar, pictures))))))
        .withClass("sheet");
  }

  private static TdTag cell(JudgedTake take, int chorus, Bar bar, Pictures pictures) {
    List<JudgedPhrase> here =
        take.phrases().stream()
            .filter(p -> p.place().chorus() == chorus && p.place().bar() == bar.number())
            .toList();
    TdTag cell = td();
    if (bar.unexpected()) {
      cell.withClass("turn");
    }
    for (JudgedPhrase phrase : here) {
      boolean isIdea = phrase.statesTheIdea();
      String words = isIdea ? "the idea" : TreatmentWords.of(phrase);
      cell.with(
          a(
                  picture(take, phrase, pictures, mark(phrase).word() + ": " + words),
                  span(isIdea ? "idea" : mark(phrase).word())
                      .withClass("word " + mark(phrase).name().toLowerCase(Locale.ROOT)))
              .withHref("#" + PhraseTable.anchor(phrase))
              .withTitle(isIdea ? words : String.join(" ", OverrulingWords.why(phrase))));
    }
    return cell;
  }

  private static DomContent picture(
      JudgedTake take, JudgedPhrase phrase, Pictures pictures, String alt) {
    boolean onPaper = pictures instanceof Pictures.OnPaper;
    int width = onPaper ? PAPER_CELL_WIDTH : CELL_WIDTH;
    int height = onPaper ? PAPER_CELL_HEIGHT : CELL_HEIGHT;
    return pictures.of(
        "p" + phrase.index(),
        alt,
        width,
        height,
        g ->
            ShapePainter.paint(
                g,
                new Rectangle2D.Double(0, 0, width, height),
                ghost(take, phrase),
                phrase.notes(),
                mark(phrase)));
  }

  /** The idea laid where the phrase starts, moved and stretched as the phrase was. */
  private static List<Note> ghost(JudgedTake take, JudgedPhrase phrase) {
    if (take.idea().isEmpty()) {
      return List.of();
    }
    List<Note> idea = take.idea().get().notes();
    Verdict verdict = phrase.verdict();
    double start = idea.get(0).onsetBeats();
    int move = phrase.carries() ? verdict.transposition() : 0;
    return idea.stream()
        .map(
            n ->
                new Note(
                    phrase.startBeat() + (n.onsetBeats() - start) * verdict.timeScale(),
                    n.durationBeats(),
                    Math.max(0, Math.min(127, n.pitch() + move))))
        .toList();
  }

  private static String chords(Bar bar) {
    return bar.chords().stream()
        .map(span -> span.harmony().display())
        .distinct()
        .collect(Collectors.joining(" "));
  }
}
