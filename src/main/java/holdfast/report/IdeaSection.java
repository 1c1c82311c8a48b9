package holdfast.report;

import static j2html.TagCreator.div;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.span;
import static j2html.TagCreator.strong;
import static j2html.TagCreator.text;

import holdfast.chart.WrittenFor;
import holdfast.motif.Motif;
import holdfast.report.picture.Palette;
import holdfast.report.picture.StaffPainter;
import holdfast.session.JudgedTake;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import j2html.tags.DomContent;
import java.util.Optional;

/** The idea in notes, as a shape, and in words to say. */
final class IdeaSection {

  private static final int SHAPE_WIDTH = 200;
  private static final int SHAPE_HEIGHT = 84;

  /** The size of a staff space in CSS pixels; smaller where the idea would get too wide. */
  private static final double SPACE = 8;

  private static final double WIDEST_STAFF = 640;

  private IdeaSection() {}

  static DomContent of(JudgedTake take, Occasion occasion, Pictures pictures) {
    if (take.idea().isEmpty()) {
      return text("");
    }
    Motif idea = take.idea().get();
    IdeaStaff staff = IdeaStaff.of(take, occasion.reader(), occasion.clef()).orElseThrow();
    String names = String.join(" ", staff.names());
    return section(
            h2("The idea"),
            staff(staff, names, pictures),
            div(
                    pictures.idea(
                        "idea",
                        "The shape of the idea: " + names,
                        SHAPE_WIDTH,
                        SHAPE_HEIGHT,
                        idea.notes()),
                    div(
                            p(strong(names), span(over(take, occasion.reader()))),
                            p("Say it: " + RhythmWords.of(idea.notes())),
                            reading(occasion.reader(), staff.key()))
                        .withClass("beside"))
                .withClass("pair"))
        .withClass("idea");
  }

  private static DomContent staff(IdeaStaff staff, String names, Pictures pictures) {
    StaffPainter painter = new StaffPainter(staff.staff());
    double space = Math.min(SPACE, WIDEST_STAFF / painter.width());
    return div(pictures.of(
            "staff",
            "The idea in notes: " + names + ", " + RhythmWords.of(staff.notes()),
            painter.width() * space,
            painter.height() * space,
            g -> painter.paint(g, 0, 0, space, Palette.LIGHT)))
        .withClass("staff");
  }

  private static String over(JudgedTake take, WrittenFor reader) {
    return take.idea()
        .flatMap(Motif::chord)
        .map(chord -> reader.isConcert() ? chord : chord.transpose(reader.fromSoundingToWritten()))
        .map(Harmony::display)
        .map(chord -> " over " + chord)
        .orElse("");
  }

  private static DomContent reading(WrittenFor reader, Optional<Key> key) {
    if (reader.isConcert()) {
      return span();
    }
    String written = key.map(k -> ", in " + k.display()).orElse("");
    return p("Written for an instrument in "
            + reader.pitch().display()
            + written
            + ". All else on this page is named as it sounds.")
        .withClass("quiet");
  }
}
