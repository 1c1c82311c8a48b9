package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import holdfast.Golden;
import holdfast.chart.ChartText;
import holdfast.motif.Player;
import holdfast.session.Coach;
import holdfast.session.DemoTake;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class JudgementTest {

  private static final DemoTake DEMO = DemoTake.shipped();

  private static JudgedTake demo() {
    return Coach.judge(setting(), DEMO.played(), phrase -> {});
  }

  private static Setting setting() {
    return Setting.of(
        DEMO.chart(), TempoMap.steady(DEMO.tempo()), Player.KEYBOARD, Optional.empty());
  }

  @Test
  void the_demo_take_reads_as_it_did() {
    List<String> lines = new ArrayList<>();
    JudgementText text = new JudgementText(setting());
    JudgedTake take = Coach.judge(setting(), DEMO.played(), text.to(lines::add));
    lines.addAll(text.close(take));
    Golden.holds("demo-take.txt", String.join("\n", lines) + "\n");
  }

  @Test
  void the_demo_take_gives_the_json_it_did() {
    Golden.holds("demo-take.json", JudgementJson.of(demo()) + "\n");
  }

  @Test
  void the_json_keeps_to_its_schema() throws IOException {
    assertEquals(List.of(), errors(JudgementJson.of(demo())));
  }

  @Test
  void an_empty_take_keeps_to_the_schema_too() throws IOException {
    JudgedTake silent = Coach.judge(setting(), List.of(), phrase -> {});
    assertEquals(List.of(), errors(JudgementJson.of(silent)));
  }

  @Test
  void the_schema_notices_what_is_missing() throws IOException {
    assertFalse(errors("{\"chart\": \"Paper Boats\"}").isEmpty());
  }

  @Test
  void text_from_charts_and_people_stays_text_on_the_page() {
    String title = "<script>alert(1)</script> & \"Boats\"";
    Setting hostile =
        Setting.of(
            ChartText.parse("title: " + title + "\nkey: C\n\n| C | F |\n", "hostile"),
            TempoMap.steady(60),
            Player.KEYBOARD,
            Optional.empty());
    String page =
        ReportPage.of(
            Coach.judge(hostile, DEMO.played(), phrase -> {}),
            Occasion.UNKNOWN
                .by(Optional.of("<b>Mira</b> \u5c0f\u96ea"))
                .remarking(List.of("a & b <i>")));

    assertFalse(page.contains("<script>"), "a title must not become a script");
    assertTrue(page.contains("&lt;script&gt;"));
    assertFalse(page.contains("<b>Mira"));
    assertTrue(page.contains("\u5c0f\u96ea"));
  }

  @Test
  void the_page_needs_no_network_and_no_script() {
    String page = ReportPage.of(demo(), Occasion.UNKNOWN);

    assertFalse(page.contains("<script"));
    assertFalse(page.contains("<link"));
    // The SVG namespace is a name, not an address that is fetched.
    String withoutNames =
        page.replace("http://www.w3.org/2000/svg", "")
            .replace("http://www.w3.org/1999/xlink", "")
            .replace("http://www.jfree.org/jfreesvg/svg", "");
    assertFalse(withoutNames.contains("http:") || withoutNames.contains("https:"), "no addresses");
  }

  private static List<Error> errors(String json) throws IOException {
    try (InputStream schema = JudgementJson.class.getResourceAsStream("judgement.schema.json")) {
      Schema loaded =
          SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(schema);
      return loaded.validate(json, InputFormat.JSON);
    }
  }
}
