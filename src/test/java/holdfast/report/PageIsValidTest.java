package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.ChartText;
import holdfast.motif.Player;
import holdfast.report.picture.Palette;
import holdfast.report.picture.Svg;
import holdfast.session.Coach;
import holdfast.session.DemoTake;
import holdfast.session.JudgedTake;
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
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import nu.validator.client.EmbeddedValidator;
import org.junit.jupiter.api.Test;

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

  @Test
  void every_kind_of_report_is_valid_html() throws Exception {
    assertEquals("", remarks(ReportPage.of(Takes.demo(), FULL.after(Takes.progress(false)))));
    assertEquals("", remarks(ReportPage.of(Takes.sung(2, -60), FULL.after(Takes.progress(true)))));
    assertEquals("", remarks(ReportPage.of(Takes.demo(), Occasion.UNKNOWN)));
  }

  @Test
  void the_report_of_silence_is_valid_html_too() throws Exception {
    DemoTake demo = DemoTake.shipped();
    Setting setting =
        Setting.of(demo.chart(), TempoMap.steady(60), Player.KEYBOARD, Optional.empty());
    JudgedTake silent = Coach.judge(setting, List.of(), phrase -> {});
    assertEquals("", remarks(ReportPage.of(silent, FULL)));
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

  @Test
  void headings_go_down_one_level_at_a_time_and_pictures_have_words() {
    String page = ReportPage.of(Takes.sung(2, -60), FULL.after(Takes.progress(true)));
    List<Integer> levels =
        Pattern.compile("<h([1-6])")
            .matcher(page)
            .results()
            .map(m -> Integer.parseInt(m.group(1)))
            .toList();
    assertEquals(1, levels.get(0));
    assertEquals(1, levels.stream().filter(level -> level == 1).count());
    for (int i = 1; i < levels.size(); i++) {
      assertTrue(levels.get(i) <= levels.get(i - 1) + 1, levels.toString());
    }
    assertTrue(page.contains("<html lang=\"en\">"));
    long pictures = Pattern.compile("<svg ").matcher(page).results().count();
    long worded =
        Pattern.compile("role=\"img\" aria-label=\"[^\"]{8,}\"").matcher(page).results().count();
    assertEquals(pictures, worded);
    List<String> ids =
        new ArrayList<>(
            Pattern.compile(" id=\"([^\"]+)\"")
                .matcher(page)
                .results()
                .map(m -> m.group(1))
                .toList());
    assertEquals(new HashSet<>(ids).size(), ids.size(), "an id stands twice");
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
