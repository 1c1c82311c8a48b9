package holdfast.book.overview;

import static j2html.TagCreator.a;
import static j2html.TagCreator.each;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.span;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.tr;
import static j2html.TagCreator.ul;

import holdfast.disk.WholeFile;
import j2html.tags.DomContent;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The overview of a class: one HTML page without network or script, and one table as CSV (RFC
 * 4180). Written row by row, so that ten thousand takes need no more memory than ten.
 */
public final class ClassPage {

  /** The page's file, in the folder of the overview. */
  public static final String PAGE = "class.html";

  /** The table's file, in the folder of the overview. */
  public static final String TABLE = "class.csv";

  private static final int BAR_WIDTH = 5;
  private static final int TALLEST = 16;

  /** Older takes are in the table; a row stays a row. */
  private static final int MOST_LINKS = 12;

  /** More phrases than this do not fit into a picture the size of a word. */
  private static final int MOST_BARS = 48;

  private static final String STYLE =
      "body{font-family:system-ui,sans-serif;margin:2rem;max-width:70rem;line-height:1.4}"
          + "table{border-collapse:collapse}th,td{text-align:left;padding:.3rem .8rem;"
          + "border-bottom:1px solid #8884}thead th{position:sticky;top:0;background:Canvas}"
          + ".quiet{opacity:.7}rect{fill:currentColor}:root{color-scheme:light dark}"
          + "@media print{thead th{position:static}}"
          // On a phone each student is a card: what stood over the columns stands in front.
          + "@media(max-width:40rem){body{margin:1rem}table,tbody{display:block}thead{display:none}"
          + "tr{display:block;border-bottom:1px solid #8884;padding:.6rem 0}"
          + "th,td{display:block;border:0;padding:.1rem 0}td:empty{display:none}"
          + "td::before{content:attr(data-is)' ';opacity:.7}}";

  private ClassPage() {}

  /**
   * What a page tells of.
   *
   * @param takes that were judged
   * @param troubles files that could not be
   */
  public record Counts(int takes, int troubles) {}

  /** Writes page and table from the lines in a folder. */
  public static Counts write(Path overview) {
    ClassResults results = ClassResults.read(overview);
    WholeFile.write(overview.resolve(PAGE), fresh -> write(fresh, out -> page(results, out)));
    WholeFile.write(overview.resolve(TABLE), fresh -> write(fresh, out -> table(results, out)));
    return new Counts(results.takes(), results.troubles().size());
  }

  /** Somebody who writes text. */
  private interface Text {
    void to(Writer out) throws IOException;
  }

  private static void write(Path fresh, Text text) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(fresh)) {
      text.to(out);
    }
  }

  private static void page(ClassResults results, Writer out) throws IOException {
    out.write("<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\">");
    out.write("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
    out.write("<title>How the class carried its ideas</title><style>" + STYLE + "</style></head>");
    out.write("<body><h1>How the class carried its ideas</h1>");
    int students = results.students().size();
    out.write(
        p(number(results.takes(), "take") + " of " + number(students, "student") + ".").render());
    long glad = results.students().stream().filter(s -> s.word().isPresent()).count();
    if (glad > 0) {
      out.write(
          p((glad == 1 ? "One student" : glad + " students")
                  + " would be glad of a word; the row says why.")
              .render());
    }
    for (Map.Entry<String, List<ClassResults.HardBar>> chart : results.charts().entrySet()) {
      if (!chart.getValue().isEmpty()) {
        out.write(hardBars(chart.getKey(), chart.getValue()).render());
      }
    }
    out.write("<h2>Student by student</h2><table><thead><tr><th>student</th><th>takes</th>");
    out.write("<th>the newest take, phrase by phrase</th><th>carried</th>");
    out.write("<th>let go most at</th><th>a word?</th></tr></thead><tbody>");
    for (ClassResults.OfStudent student : results.students()) {
      out.write(row(student).render());
    }
    out.write("</tbody></table>");
    out.write(
        p("A tall bar restates the idea, a middle one varies it, a low one is new material. What a"
                + " take cannot tell is what was meant, and how it sounded in the room.")
            .withClass("quiet")
            .render());
    out.write(
        p(span("The same for a spreadsheet: "), a(TABLE).withHref(TABLE))
            .withClass("quiet")
            .render());
    if (!results.troubles().isEmpty()) {
      out.write("<h2>Files that could not be judged</h2><ul>");
      for (Map.Entry<String, String> trouble : results.troubles().entrySet()) {
        out.write(li(trouble.getKey() + ": " + trouble.getValue()).render());
      }
      out.write("</ul>");
    }
    out.write("</body></html>\n");
  }

  private static String number(int count, String what) {
    return count + " " + what + (count == 1 ? "" : "s");
  }

  private static DomContent hardBars(String chart, List<ClassResults.HardBar> bars) {
    return span(
        rawHtml("<h2>"),
        span("Where “" + chart + "” was hard for all"),
        rawHtml("</h2>"),
        ul(
            each(
                bars,
                bar ->
                    li(
                        "Bar "
                            + bar.bar()
                            + ": the idea was let go "
                            + number(bar.times(), "time")
                            + " in "
                            + number(bar.takes(), "take")
                            + "."))));
  }

  private static DomContent row(ClassResults.OfStudent student) {
    Line.Outcome newest = student.newest().outcome();
    List<Line> takes = student.takes();
    List<Line> linked = takes.subList(Math.max(0, takes.size() - MOST_LINKS), takes.size());
    return tr(
        th(a(student.name()).withHref(newest.report())).attr("scope", "row"),
        td(each(
                linked,
                take ->
                    span(
                        a(Integer.toString(1 + takes.indexOf(take)))
                            .withHref(take.outcome().report()),
                        span(" "))))
            .attr("data-is", "takes"),
        td(rawHtml(sparkline(newest.families()))).attr("data-is", "the newest"),
        td(newest.carried() + " of " + newest.phrases()).attr("data-is", "carried"),
        td(student.hardestBar().map(bar -> "bar " + bar).orElse(""))
            .attr("data-is", "let go most at"),
        td(student.word().orElse("")));
  }

  /** A bar for each phrase: the small picture is made of numbers of ours alone. */
  private static String sparkline(String families) {
    String shown = families.substring(Math.max(0, families.length() - MOST_BARS));
    StringBuilder svg = new StringBuilder();
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg width=\"%d\" height=\"%d\" role=\"img\" aria-label=\"%d restated, %d varied, %d"
                + " new\">",
            Math.max(1, shown.length()) * (BAR_WIDTH + 1),
            TALLEST,
            count(shown, 'r'),
            count(shown, 'v'),
            count(shown, 'n')));
    for (int i = 0; i < shown.length(); i++) {
      int height =
          switch (shown.charAt(i)) {
            case 'r' -> TALLEST;
            case 'v' -> TALLEST * 2 / 3;
            default -> 2;
          };
      svg.append(
          String.format(
              Locale.ROOT,
              "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\"/>",
              i * (BAR_WIDTH + 1),
              TALLEST - height,
              BAR_WIDTH,
              height));
    }
    return svg.append("</svg>").toString();
  }

  private static long count(String families, char family) {
    return families.chars().filter(c -> c == family).count();
  }

  private static void table(ClassResults results, Writer out) throws IOException {
    out.write(
        "student,chart,started,phrases,carried,longest run,phrase by phrase,bars let go,report,"
            + "file\r\n");
    for (ClassResults.OfStudent student : results.students()) {
      for (Line take : student.takes()) {
        Line.Outcome outcome = take.outcome();
        out.write(
            String.join(
                    ",",
                    cell(outcome.student()),
                    cell(outcome.chart()),
                    cell(outcome.started()),
                    Integer.toString(outcome.phrases()),
                    Integer.toString(outcome.carried()),
                    Integer.toString(outcome.longestRun()),
                    cell(outcome.families()),
                    cell(
                        outcome.lostBars().stream()
                            .map(String::valueOf)
                            .collect(Collectors.joining(" "))),
                    cell(outcome.report()),
                    cell(take.file()))
                + "\r\n");
      }
    }
  }

  /** RFC 4180; a text that a spreadsheet would take for a formula is kept from being one. */
  private static String cell(String text) {
    boolean formula = !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0;
    String plain = formula ? "'" + text : text;
    return plain.matches("(?s).*[\",\r\n].*") ? "\"" + plain.replace("\"", "\"\"") + "\"" : plain;
  }
}
