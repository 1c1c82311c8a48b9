package holdfast.report;

import static j2html.TagCreator.body;
import static j2html.TagCreator.div;
import static j2html.TagCreator.document;
import static j2html.TagCreator.each;
import static j2html.TagCreator.footer;
import static j2html.TagCreator.h1;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.head;
import static j2html.TagCreator.header;
import static j2html.TagCreator.html;
import static j2html.TagCreator.main;
import static j2html.TagCreator.meta;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.section;
import static j2html.TagCreator.span;
import static j2html.TagCreator.style;
import static j2html.TagCreator.text;
import static j2html.TagCreator.title;

import holdfast.practice.invent.Invented;
import holdfast.report.picture.Mark;
import holdfast.report.picture.Palette;
import holdfast.report.picture.Svg;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.theory.Key;
import j2html.tags.DomContent;
import j2html.tags.specialized.HtmlTag;
import j2html.tags.specialized.MainTag;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A judged take as one HTML page that needs nothing else: no network, no script. All text from
 * players and files is escaped by the builder; only our own pictures and style go in as they are.
 */
public final class ReportPage {

  /** The signs that the terminal uses, too. */
  private static final Map<Mark, String> SIGNS =
      Map.of(Mark.CARRIED, "●", Mark.VARIED, "■", Mark.NEW, "○");

  /** The style of every page, read once. */
  private static final class Style {
    private static final String SHEET = readStylesheet();

    private Style() {}
  }

  /** A longer sheet stands behind what is read in a minute. */
  private static final int SHORT_LINES = 9;

  private ReportPage() {}

  /** The page as text, in UTF-8 by its own declaration. */
  public static String of(JudgedTake take, Occasion occasion) {
    return document(page(take, occasion, Pictures.inThePage(), stylesheet()));
  }

  /** The page with its pictures in any form; on paper without what only a screen can do. */
  static HtmlTag page(JudgedTake take, Occasion occasion, Pictures pictures, String css) {
    Setting setting = take.setting();
    String name = setting.chart().title();
    return html(
            head(
                meta().withCharset("utf-8"),
                meta().withName("viewport").withContent("width=device-width, initial-scale=1"),
                title(
                    name
                        + occasion
                            .invented()
                            .map(i -> ": ideas")
                            .orElse(": how the idea was carried")),
                style(rawHtml(css))),
            body(
                header(h1(name), p(line(take, occasion)).withClass("quiet")),
                occasion
                    .invented()
                    .map(session -> invented(take, session, occasion, pictures))
                    .orElseGet(() -> carried(take, occasion, pictures)),
                footer(p(Cautions.FOR_THE_PLAYER)).withClass("quiet")))
        .withLang("en");
  }

  private static MainTag invented(
      JudgedTake take, Invented session, Occasion occasion, Pictures pictures) {
    Listening listening =
        pictures instanceof Pictures.OnPaper ? Listening.NOTHING : occasion.listening();
    return main(
        div(each(InventedSection.sentences(session), s -> p(s))).withClass("told"),
        InventedSection.of(take, session, listening, pictures));
  }

  private static MainTag carried(JudgedTake take, Occasion occasion, Pictures pictures) {
    boolean onPaper = pictures instanceof Pictures.OnPaper;
    DomContent form = sheet(take, pictures);
    boolean isLong = linesOfForm(take) > SHORT_LINES;
    return main(
        div(
                each(TakeSentences.of(take), s -> p(s)),
                each(TakeSentences.foremostInHindsight(take), s -> p(s).withClass("quiet")))
            .withClass("told"),
        IdeaSection.of(take, occasion, pictures),
        isLong ? text("") : form,
        PracticeSection.of(take, occasion),
        TimelineSection.of(take, occasion.sung(), pictures),
        CountsSection.of(take),
        ProgressSection.of(take, occasion, pictures),
        isLong && !onPaper ? form : text(""),
        onPaper ? text("") : PhraseTable.of(take, occasion.listening()),
        JudgedSection.of(take, occasion),
        isLong && onPaper ? form : text(""));
  }

  private static String line(JudgedTake take, Occasion occasion) {
    Setting setting = take.setting();
    StringBuilder line = new StringBuilder();
    occasion.student().ifPresent(s -> line.append(s).append(" · "));
    occasion
        .day()
        .ifPresent(
            d ->
                line.append(DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH).format(d))
                    .append(" · "));
    setting
        .changes()
        .key()
        .map(Key::display)
        .ifPresent(k -> line.append("in ").append(k).append(" · "));
    line.append(Math.round(setting.beats().openingTempo())).append(" beats a minute");
    int choruses = take.choruses();
    line.append(" · ").append(choruses).append(choruses == 1 ? " chorus" : " choruses");
    occasion.input().ifPresent(i -> line.append(" · heard through ").append(i));
    return line.toString();
  }

  /** How many lines of shapes the form takes where eight bars stand side by side. */
  private static int linesOfForm(JudgedTake take) {
    return take.choruses() * ((take.setting().form().bars().size() + 7) / 8);
  }

  private static DomContent sheet(JudgedTake take, Pictures pictures) {
    if (take.phrases().isEmpty()) {
      return text("");
    }
    return section(h2("The form, chorus by chorus"), legend(), Sheet.of(take, pictures))
        .withClass("form");
  }

  private static DomContent legend() {
    return p(
            each(
                List.of(Mark.values()),
                mark ->
                    span(SIGNS.get(mark) + " " + mark.word() + " ")
                        .withClass("legend " + mark.name().toLowerCase(Locale.ROOT))),
            span("- - the idea's own shape ").withClass("legend"),
            span("! a turn that nobody expects").withClass("legend"))
        .withClass("legends");
  }

  /** The style of the page, with its colours. */
  static String stylesheet() {
    return Style.SHEET;
  }

  private static String readStylesheet() {
    try (InputStream css = ReportPage.class.getResourceAsStream("report.css")) {
      if (css == null) {
        throw new IllegalStateException("report.css is missing from the jar");
      }
      return new String(css.readAllBytes(), StandardCharsets.UTF_8)
          .replace("/* light */", Svg.declarations(Palette.LIGHT))
          .replace("/* dark */", Svg.declarations(Palette.DARK));
    } catch (IOException e) {
      throw new IllegalStateException("report.css cannot be read from the jar", e);
    }
  }
}
