package holdfast.report;

import static j2html.TagCreator.body;
import static j2html.TagCreator.dd;
import static j2html.TagCreator.div;
import static j2html.TagCreator.dl;
import static j2html.TagCreator.document;
import static j2html.TagCreator.dt;
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
import static j2html.TagCreator.strong;
import static j2html.TagCreator.style;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.title;
import static j2html.TagCreator.tr;

import holdfast.harmony.Fit;
import holdfast.motif.Motif;
import holdfast.report.picture.Mark;
import holdfast.report.picture.ShapePainter;
import holdfast.report.picture.Svg;
import holdfast.session.Counts;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import j2html.tags.DomContent;
import j2html.tags.specialized.TrTag;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A judged take as one HTML page that needs nothing else: no network, no script. All text from
 * players and files is escaped by the builder; only our own pictures and style go in as they are.
 */
public final class ReportPage {

  private static final int IDEA_WIDTH = 220;
  private static final int IDEA_HEIGHT = 90;

  private ReportPage() {}

  /** The page as text, in UTF-8 by its own declaration. */
  public static String of(JudgedTake take, Occasion occasion) {
    Setting setting = take.setting();
    String name = setting.chart().title();
    return document(
        html(
                head(
                    meta().withCharset("utf-8"),
                    meta().withName("viewport").withContent("width=device-width, initial-scale=1"),
                    title(name + ": how the idea was carried"),
                    style(rawHtml(stylesheet()))),
                body(
                    header(h1(name), p(line(take, occasion)).withClass("quiet")),
                    main(
                        section(
                                each(TakeSentences.of(take), s -> p(s)),
                                each(TakeSentences.inHindsight(take), s -> p(s).withClass("quiet")))
                            .withClass("told"),
                        ideaCard(take),
                        sheet(take),
                        counts(take.counts()),
                        phraseByPhrase(take),
                        howItWasJudged(occasion)),
                    footer(p(Cautions.FOR_THE_PLAYER)).withClass("quiet")))
            .withLang("en"));
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
    occasion.input().ifPresent(i -> line.append(i).append(" · "));
    setting.changes().key().map(Key::display).ifPresent(k -> line.append(k).append(" · "));
    line.append(Math.round(setting.beats().openingTempo())).append(" beats a minute");
    int choruses = take.choruses();
    line.append(" · ").append(choruses).append(choruses == 1 ? " chorus" : " choruses");
    return line.toString();
  }

  private static DomContent ideaCard(JudgedTake take) {
    if (take.idea().isEmpty()) {
      return section();
    }
    Motif idea = take.idea().get();
    Optional<Key> key = take.setting().changes().key();
    String names =
        idea.notes().stream()
            .map(n -> NoteNames.of(n.pitch(), key))
            .collect(Collectors.joining(" "));
    String picture =
        Svg.of(
            "idea",
            IDEA_WIDTH,
            IDEA_HEIGHT,
            g ->
                ShapePainter.paint(
                    g,
                    new Rectangle2D.Double(0, 0, IDEA_WIDTH, IDEA_HEIGHT),
                    List.of(),
                    idea.notes(),
                    Mark.CARRIED));
    String over = idea.chord().map(Harmony::display).map(c -> " over " + c).orElse("");
    return section(
            h2("The idea"),
            div(rawHtml(picture))
                .withClass("shape")
                .attr("role", "img")
                .attr("aria-label", "The shape of the idea: " + names),
            p(strong(names), span(over)),
            p(RhythmWords.of(idea.notes())).withClass("quiet"))
        .withClass("idea");
  }

  private static DomContent sheet(JudgedTake take) {
    if (take.phrases().isEmpty()) {
      return section();
    }
    return section(h2("The form, chorus by chorus"), legend(), Sheet.of(take)).withClass("wide");
  }

  private static DomContent legend() {
    return p(each(
            List.of(Mark.values()),
            mark ->
                span(
                        rawHtml(
                            Svg.of(
                                "legend_" + mark.word(),
                                16,
                                12,
                                g -> ShapePainter.dot(g, 8, 6, mark))),
                        span(" " + mark.word() + " "))
                    .withClass("legend " + mark.name().toLowerCase(Locale.ROOT))))
        .with(span("! a turn that nobody expects").withClass("legend"));
  }

  private static DomContent counts(Counts counts) {
    return section(
        h2("Counts"),
        dl(
            div(dt("phrases after the idea"), dd(Integer.toString(counts.phrases()))),
            div(dt("restated it"), dd(Integer.toString(counts.restated()))),
            div(dt("varied it"), dd(Integer.toString(counts.varied()))),
            div(dt("new material"), dd(Integer.toString(counts.fresh()))),
            div(dt("longest run"), dd(Integer.toString(counts.longestRun())))),
        table(
            thead(tr(th("chorus"), th("carried"), th("in the chords"))),
            tbody(
                each(
                    counts.choruses(),
                    c ->
                        tr(
                            th(Integer.toString(c.number())).attr("scope", "row"),
                            td(c.carried() + " of " + c.phrases()),
                            td(c.fit().map(Fit::word).map(w -> w.text()).orElse("no chord")))))));
  }

  private static DomContent phraseByPhrase(JudgedTake take) {
    return section(
            h2("Phrase by phrase"),
            table(
                thead(
                    tr(
                        th("where"),
                        th("chord"),
                        th("what happened to the idea"),
                        th("in the chord"),
                        th("how sure"))),
                tbody(each(take.phrases(), phrase -> row(take, phrase)))))
        .withClass("wide");
  }

  private static TrTag row(JudgedTake take, JudgedPhrase phrase) {
    boolean isIdea = phrase.statesTheIdea();
    Mark mark = Sheet.mark(phrase);
    String fit =
        phrase.harmony().fit().map(Fit::word).map(w -> w.text()).orElse("no chord sounded");
    return tr(
        th(phrase.place().words(take.choruses())).attr("scope", "row"),
        td(JudgementText.chords(phrase)),
        td(
            strong(isIdea ? "the idea" : mark.word())
                .withClass(mark.name().toLowerCase(Locale.ROOT)),
            span(isIdea ? "" : ": " + TreatmentWords.of(phrase)),
            div(isIdea ? "" : String.join(" ", OverrulingWords.why(phrase)))
                .withClass("quiet why")),
        td(fit),
        td(isIdea ? "" : JudgementText.sure(phrase)));
  }

  private static DomContent howItWasJudged(Occasion occasion) {
    return section(
        h2("How this was judged"),
        p(
            "Each phrase was held against the idea, note by note and with notes left out or added"
                + " allowed for: is it the same idea, the idea moved, the idea skewed to fit its"
                + " chord, the idea worked on, or something new? A phrase carried the idea when it"
                + " restated it or varied it."),
        p(
            "How a phrase sits in its chord is told from where its long, strong and last notes lie"
                + " and how its other notes lead to them. Good players use notes outside the chord"
                + " half of the time; that is not counted against anybody."),
        p(
            "What this cannot know: what was meant, how it sounded in the room, tone, feeling and"
                + " taste. A teacher's ear decides."),
        each(occasion.remarks(), note -> p(note)));
  }

  private static String stylesheet() {
    try (InputStream css = ReportPage.class.getResourceAsStream("report.css")) {
      if (css == null) {
        throw new IllegalStateException("report.css is missing from the jar");
      }
      return new String(css.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("report.css cannot be read from the jar", e);
    }
  }
}
