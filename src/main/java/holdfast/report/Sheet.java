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

  /** More bars than this stand in several rows of paper. */
  private static final int PAPER_BARS_IN_A_ROW = 8;

  /** As many as a phone shows; where there is room, two tables stand side by side. */
  private static final int BARS_IN_A_ROW = 4;

  private Sheet() {}

  static DomContent of(JudgedTake take, Pictures pictures) {
    List<Bar> bars = take.setting().form().bars();
    int inARow = pictures instanceof Pictures.OnPaper ? PAPER_BARS_IN_A_ROW : BARS_IN_A_ROW;
    int rows = (bars.size() + inARow - 1) / inARow;
    return div(each(
            IntStream.range(0, rows).boxed().toList(),
            row -> {
              int from = row * inARow;
              int to = Math.min(bars.size(), from + inARow);
              return rowOfBars(take, bars.subList(from, to), pictures);
            }))
        .withClass("sheets");
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
                  picture(take, phrase, pictures, PhrasePicture.mark(phrase).word() + ": " + words),
                  span(isIdea ? "idea" : PhrasePicture.mark(phrase).word())
                      .withClass(
                          "word " + PhrasePicture.mark(phrase).name().toLowerCase(Locale.ROOT)))
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
                PhrasePicture.ghost(take.idea(), phrase),
                phrase.notes(),
                PhrasePicture.mark(phrase)));
  }

  private static String chords(Bar bar) {
    return bar.chords().stream()
        .map(span -> span.harmony().display())
        .distinct()
        .collect(Collectors.joining(" "));
  }
}
