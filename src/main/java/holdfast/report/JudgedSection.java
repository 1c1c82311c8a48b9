package holdfast.report;

import static j2html.TagCreator.a;
import static j2html.TagCreator.dd;
import static j2html.TagCreator.div;
import static j2html.TagCreator.dl;
import static j2html.TagCreator.dt;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.text;

import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import j2html.tags.ContainerTag;
import j2html.tags.DomContent;
import java.util.List;

/** How this was judged: words, tolerances, sources, what cannot be known, and how to disagree. */
final class JudgedSection {

  /** From this probability on, a verdict is called sure here. */
  private static final double SURE = 0.75;

  private JudgedSection() {}

  static DomContent of(JudgedTake take, Occasion occasion) {
    return section(
            h2("How this was judged"),
            p(
                "Each phrase was held against the idea, note by note, with notes left out or added"
                    + " allowed for. It carried the idea when it restated it or varied it."),
            dl(
                    word(
                        "restated",
                        "the idea again: the same notes, moved as a whole, moved along the scale, or"
                            + " skewed by a step or less where its chord asks for it"),
                    word(
                        "varied",
                        "the idea can be heard and was worked on: its rhythm or its ups and downs kept,"
                            + " turned over, backwards, stretched, shortened, decorated"),
                    word("new", "something else: a scale run, an arpeggio, a melody of its own"),
                    word(
                        "in the chords",
                        "told from long, strong and last notes and from where the others lead. Good"
                            + " players use notes outside the chord half of the time; that is not"
                            + " counted against anybody"),
                    word(
                        "how sure",
                        "a probability: of phrases called 80 % sure, about 80 in a hundred should be"
                            + " right. "
                            + sureness(take)))
                .withClass("words"),
            p(
                "Tolerances: a phrase may come a little early or late, faster or slower as a whole; a"
                    + " singer is given more room in time and pitch than a keyboard, and is judged as"
                    + " tuned. Timing is measured on notes within a sixth of a beat of a beat."),
            p(
                "Sources: the names of treatments as in A. Schoenberg, Fundamentals of Musical"
                    + " Composition, ch. III; how experts sit in chords from solos transcribed in the"
                    + " Weimar Jazz Database; colours after Okabe and Ito, Color Universal Design."),
            p(
                "What this cannot know: what was meant, how it sounded in the room, tone, feeling and"
                    + " taste. A teacher's ear decides."),
            overruling(take),
            each(occasion.remarks(), remark -> p(remark)),
            beside(occasion))
        .withClass("judged");
  }

  private static DomContent word(String word, String meaning) {
    return div(dt(word), dd(meaning));
  }

  private static String sureness(JudgedTake take) {
    List<JudgedPhrase> judged =
        take.phrases().stream().filter(p -> !p.statesTheIdea() && p.overruled().isEmpty()).toList();
    long sure = judged.stream().filter(p -> p.verdict().confidence() >= SURE).count();
    return judged.isEmpty()
        ? ""
        : "Here " + sure + " of " + judged.size() + " phrases were at least 75 % sure.";
  }

  private static DomContent overruling(JudgedTake take) {
    long overruled = take.phrases().stream().filter(p -> p.overruled().isPresent()).count();
    String said =
        overruled == 0
            ? "A teacher who hears a phrase otherwise can overrule it; that word is kept with the"
                + " take and counts everywhere."
            : "Your teacher heard "
                + (overruled == 1 ? "one phrase" : overruled + " phrases")
                + " otherwise; all counts follow the teacher.";
    return p(said);
  }

  private static DomContent beside(Occasion occasion) {
    if (occasion.beside().isEmpty()) {
      return text("");
    }
    ContainerTag<?> line = p("Beside this page: ");
    for (int i = 0; i < occasion.beside().size(); i++) {
      String file = occasion.beside().get(i);
      line.with(text(i > 0 ? " · " : ""), a(file).withHref(Addresses.relative(file)));
    }
    return line;
  }
}
