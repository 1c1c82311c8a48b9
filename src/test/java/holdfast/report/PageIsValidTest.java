package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.ChartText;
import holdfast.chart.WrittenFor;
import holdfast.motif.Family;
import holdfast.motif.Player;
import holdfast.practice.invent.Invented;
import holdfast.report.picture.Clef;
import holdfast.report.picture.Palette;
import holdfast.report.picture.Svg;
import holdfast.session.Coach;
import holdfast.session.DemoTake;
import holdfast.session.JudgedTake;
import holdfast.session.Overruling;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.awt.Color;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import nu.validator.client.EmbeddedValidator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The page against the standards. HTML: the Nu checker 26.5.2 (nu.validator:validator), which is
 * the W3C's own. Contrast: WCAG 2.2 (W3C Recommendation, 5 October 2023), success criteria 1.4.3
 * and 1.4.11, by the definitions of relative luminance and contrast ratio that stand there; no
 * tolerance.
 */
class PageIsValidTest {

  private static final Occasion FULL =
      Occasion.of(Optional.of("Mira & Søn <3 小雪"), Takes.DAY)
          .through("Keys “2”")
          .remarking(List.of("The file has 2 tracks; I took <the first>."))
          .keptAs("2026-11-25 a", List.of("take.mid", "solo of \"all\".musicxml"))
          .heardAs((from, to) -> Optional.of("data:audio/mpeg;base64,AAAA"));

  private static String remarks(String page) throws Exception {
    EmbeddedValidator checker = new EmbeddedValidator();
    checker.setOutputFormat(EmbeddedValidator.OutputFormat.GNU);
    return checker
        .validate(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)))
        .strip();
  }

  /** Every kind of page that there is, by a name for it. */
  static Stream<Arguments> pages() {
    JudgedTake demo = Takes.demo();
    JudgedTake sung = Takes.sung(2, -60);
    JudgedTake overruled =
        demo.overruledBy(
            List.of(
                Overruling.of(
                    demo.counts().lost().get(0), Family.VARIED, Optional.of("I <hear> it & so"))));
    Occasion silent = FULL.heardAs(Listening.NOTHING);
    Invented ideas =
        new Invented(
            List.of("Fmaj7", "C7"),
            1.5,
            3,
            new TreeMap<>(
                Map.of(1, demo.phrases().get(0).notes(), 3, demo.phrases().get(5).notes())));
    return Stream.of(
        Arguments.of("as it is judged from a file", ReportPage.of(demo, Occasion.UNKNOWN)),
        Arguments.of("to be heard", ReportPage.of(demo, FULL.after(Takes.progress(false)))),
        Arguments.of("silent", ReportPage.of(demo, silent)),
        Arguments.of("sung", ReportPage.of(sung, FULL.after(Takes.progress(true)))),
        Arguments.of("sung, with the voice", ReportPage.of(sung, FULL.sungAt(voice()))),
        Arguments.of("overruled", ReportPage.of(overruled, FULL)),
        Arguments.of("overruled and silent", ReportPage.of(overruled, silent)),
        Arguments.of("for E♭", ReportPage.of(demo, written(WrittenFor.E_FLAT, Clef.TREBLE))),
        Arguments.of("bass clef", ReportPage.of(demo, written(WrittenFor.CONCERT, Clef.BASS))),
        Arguments.of("only the idea", ReportPage.of(playing(5), FULL)),
        Arguments.of("nothing played", ReportPage.of(playing(0), FULL)),
        Arguments.of("nothing restated", ReportPage.of(Takes.unrelated(), FULL)),
        Arguments.of("half an hour", ReportPage.of(Takes.long_(30), silent)),
        Arguments.of("invented", ReportPage.of(demo, FULL.inventing(Optional.of(ideas)))),
        Arguments.of(
            "nothing invented",
            ReportPage.of(
                playing(0),
                silent.inventing(
                    Optional.of(new Invented(List.of("Dm7"), 0, 0, new TreeMap<>()))))));
  }

  private static Occasion written(WrittenFor reader, Clef clef) {
    return FULL.writtenFor(reader, Optional.of(clef));
  }

  private static Optional<PitchTrace> voice() {
    float[] heights = new float[3000];
    for (int i = 0; i < heights.length; i++) {
      heights[i] = i % 70 > 50 ? Float.NaN : 55 + (float) Math.sin(i / 9.0);
    }
    return Optional.of(PitchTrace.of(0, heights));
  }

  private static JudgedTake playing(int notes) {
    DemoTake demo = DemoTake.shipped();
    Setting setting =
        Setting.of(demo.chart(), TempoMap.steady(60), Player.KEYBOARD, Optional.empty());
    return Coach.judge(setting, demo.played().subList(0, notes), phrase -> {});
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pages")
  void every_page_is_valid_html_with_headings_in_order_and_words_for_its_pictures(
      String kind, String page) throws Exception {
    assertEquals("", remarks(page));
    assertTrue(page.contains("<html lang=\"en\">"));
    List<Integer> levels =
        Pattern.compile("<h([1-6])")
            .matcher(page)
            .results()
            .map(m -> Integer.parseInt(m.group(1)))
            .toList();
    assertEquals(1, levels.get(0), kind);
    assertEquals(1, levels.stream().filter(level -> level == 1).count());
    for (int i = 1; i < levels.size(); i++) {
      assertTrue(levels.get(i) <= levels.get(i - 1) + 1, levels.toString());
    }
    long pictures = Pattern.compile("<svg ").matcher(page).results().count();
    long worded =
        Pattern.compile("role=\"img\" aria-label=\"[^\"]{8,}\"").matcher(page).results().count();
    assertEquals(pictures, worded);
    long sounds = Pattern.compile("<audio ").matcher(page).results().count();
    long named =
        Pattern.compile("<audio [^>]*aria-label=\"[^\"]{8,}\"").matcher(page).results().count();
    assertEquals(sounds, named);
    List<String> ids =
        new ArrayList<>(
            Pattern.compile(" id=\"([^\"]+)\"")
                .matcher(page)
                .results()
                .map(m -> m.group(1))
                .toList());
    assertEquals(new HashSet<>(ids).size(), ids.size(), "an id stands twice");
    for (MatchResult link :
        Pattern.compile("href=\"#([^\"]+)\"").matcher(page).results().toList()) {
      assertTrue(ids.contains(link.group(1)), link.group() + " leads nowhere");
    }
  }

  /** Nobody who invents is told that the idea was lost. */
  @Test
  void a_session_of_inventing_tells_its_ideas_and_no_loss() {
    String page =
        pages()
            .filter(p -> p.get()[0].equals("invented"))
            .map(p -> (String) p.get()[1])
            .findFirst()
            .orElseThrow();
    assertTrue(page.contains("You found 2 different ideas over Fmaj7 and C7."));
    assertTrue(page.contains("One of them you said once more."));
    assertTrue(page.contains("C5 A4 G4 A4 F4"), "the first idea by its notes");
    assertTrue(page.contains("Beside number 1: another "), "what makes it different");
    assertTrue(page.contains("--invented 3"), "by the number that was told");
    assertTrue(page.contains("<li value=\"3\">"), page);
    assertFalse(page.contains("let it go") || page.contains("did not come back"));
  }

  @Test
  void hostile_titles_and_names_leave_the_page_valid_and_stay_text() throws Exception {
    String title = "<script>alert(1)</script>\" onload=\"x & \u202e 🎷";
    Setting setting =
        Setting.of(
            ChartText.parse("title: " + title + "\nkey: C\n\n| C | F |\n", "hostile"),
            TempoMap.steady(60),
            Player.KEYBOARD,
            Optional.empty());
    JudgedTake take = Coach.judge(setting, DemoTake.shipped().played(), phrase -> {});
    String page = ReportPage.of(take, FULL.keptAs("\"><img src=x>", List.of("\"><img src=x>.mid")));
    assertEquals("", remarks(page));
    assertFalse(page.contains("<script") || page.contains("<img"), "text became an element");
  }

  @Test
  void the_checker_notices_what_is_wrong() throws Exception {
    String page = ReportPage.of(Takes.demo(), FULL);
    assertFalse(remarks(page.replace("<main>", "<main><p><h2>x</p>")).isEmpty());
  }

  @Test
  void words_can_be_read_on_what_they_stand_on_in_both_schemes() {
    for (Palette palette : List.of(Palette.LIGHT, Palette.DARK)) {
      Map<String, Color> colours = Svg.colours(palette);
      List<Color> grounds =
          List.of(colours.get("--paper"), colours.get("--card"), colours.get("--band"));
      for (String words :
          List.of(
              "--ink", "--quiet", "--carried-word", "--varied-word", "--new-word", "--played")) {
        for (int i = 0; i < (words.equals("--ink") ? 3 : 2); i++) {
          double contrast = contrast(colours.get(words), grounds.get(i));
          assertTrue(contrast >= 4.5, words + " on ground " + i + " is " + contrast);
        }
      }
      for (String line :
          List.of("--ghost", "--carried-line", "--varied-line", "--new-line", "--quiet")) {
        double contrast = contrast(colours.get(line), colours.get("--card"));
        assertTrue(contrast >= 3, line + " is " + contrast);
      }
    }
  }

  /** Every colour in the style sheet is one of those that are measured above. */
  @Test
  void the_style_names_no_colour_of_its_own() {
    String css = ReportPage.stylesheet();
    String rules = css.substring(css.indexOf("* {"), css.indexOf("@media screen"));
    List<String> own =
        Pattern.compile("#[0-9a-fA-F]{3,8}\\b|rgb\\(")
            .matcher(rules)
            .results()
            .map(MatchResult::group)
            .toList();
    assertEquals(List.of(), own);
    for (MatchResult used :
        Pattern.compile("var\\((--[a-z-]+)\\)").matcher(css).results().toList()) {
      assertTrue(Svg.colours(Palette.LIGHT).containsKey(used.group(1)), used.group());
    }
  }

  /** The published pair: black on white is 21 : 1 (WCAG 2.2, definition of contrast ratio). */
  @Test
  void black_on_white_is_21_to_1() {
    assertEquals(21, contrast(Color.BLACK, Color.WHITE), 1e-9);
  }

  private static double contrast(Color one, Color other) {
    double a = luminance(one) + 0.05;
    double b = luminance(other) + 0.05;
    return Math.max(a, b) / Math.min(a, b);
  }

  private static double luminance(Color colour) {
    return 0.2126 * linear(colour.getRed())
        + 0.7152 * linear(colour.getGreen())
        + 0.0722 * linear(colour.getBlue());
  }

  private static double linear(int eightBits) {
    double value = eightBits / 255.0;
    return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
  }
}
