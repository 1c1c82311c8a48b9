package holdfast.report;

import static j2html.TagCreator.audio;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.section;
import static j2html.TagCreator.span;
import static j2html.TagCreator.strong;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.text;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import holdfast.harmony.Fit;
import holdfast.report.picture.Mark;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import j2html.tags.DomContent;
import j2html.tags.specialized.TrTag;
import java.util.Locale;
import java.util.Optional;

/** Every phrase with its verdict, why, how sure, and its sound. */
final class PhraseTable {

  /** What is heard before a phrase, so that one finds the place, in seconds. */
  private static final double LEAD_IN_SECONDS = 0.6;

  /** What rings on after it. */
  private static final double RING_OUT_SECONDS = 0.9;

  private PhraseTable() {}

  static DomContent of(JudgedTake take, Listening listening) {
    if (take.phrases().isEmpty()) {
      return text("");
    }
    return section(
            h2("Phrase by phrase"),
            table(
                    thead(
                        tr(
                            th("where").attr("scope", "col"),
                            th("chord").attr("scope", "col"),
                            th("what happened to the idea").attr("scope", "col"),
                            th("in the chord").attr("scope", "col"),
                            th("how sure").attr("scope", "col"))),
                    tbody(each(take.phrases(), phrase -> row(take, phrase, listening))))
                .withClass("phrases"))
        .withClass("details");
  }

  private static TrTag row(JudgedTake take, JudgedPhrase phrase, Listening listening) {
    boolean isIdea = phrase.statesTheIdea();
    Mark mark = PhrasePicture.mark(phrase);
    String fit =
        phrase.harmony().fit().map(Fit::word).map(w -> w.text()).orElse("no chord sounded");
    String where = phrase.place().words(take.choruses());
    return tr(
            th(span((phrase.index() + 1) + ". ").withClass("quiet"), span(where))
                .attr("scope", "row"),
            td(JudgementText.chords(phrase)),
            td(
                strong(isIdea ? "the idea" : mark.word())
                    .withClass(mark.name().toLowerCase(Locale.ROOT)),
                span(isIdea ? "" : ": " + TreatmentWords.of(phrase)),
                isIdea
                    ? span()
                    : div(String.join(" ", OverrulingWords.why(phrase))).withClass("quiet why"),
                sound(phrase, where, listening)),
            td(fit),
            td(isIdea ? "" : JudgementText.sure(phrase)).withClass("sure"))
        .withId(anchor(phrase));
  }

  static String anchor(JudgedPhrase phrase) {
    return "phrase-" + (phrase.index() + 1);
  }

  static DomContent sound(JudgedPhrase phrase, String where, Listening listening) {
    double end = phrase.played().stream().mapToDouble(n -> n.endSeconds()).max().orElseThrow();
    Optional<String> address =
        listening.address(phrase.startSeconds() - LEAD_IN_SECONDS, end + RING_OUT_SECONDS);
    return address
        .map(
            source ->
                (DomContent)
                    audio()
                        .attr("controls")
                        .attr("preload", "none")
                        .withSrc(source)
                        .attr("aria-label", "Phrase " + (phrase.index() + 1) + ", " + where))
        .orElseGet(j2html.TagCreator::span);
  }
}
