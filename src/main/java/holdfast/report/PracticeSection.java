package holdfast.report;

import static j2html.TagCreator.code;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.li;
import static j2html.TagCreator.ol;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.strong;

import holdfast.practice.Plan;
import holdfast.session.JudgedTake;
import j2html.tags.DomContent;

/** What to practise next: each step with its reason and the exact command. */
final class PracticeSection {

  private PracticeSection() {}

  static DomContent of(JudgedTake take, Occasion occasion) {
    Plan plan = occasion.plan().orElseGet(() -> Plan.after(take, take.setting().chart().title()));
    return section(
            h2("Next practice"),
            ol(
                each(
                    plan.steps(),
                    step ->
                        li(
                            strong(step.what() + "."),
                            p(step.why() + " " + step.way().explanation()),
                            div(code(step.command())).withClass("command")))))
        .withClass("next");
  }
}
