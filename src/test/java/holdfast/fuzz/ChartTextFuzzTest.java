package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.chart.Chart;
import holdfast.chart.ChartText;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Assertions;

/** Charts in our own text. */
class ChartTextFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_chart_text(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    Hostile.read(
        bytes,
        () -> {
          Chart chart = ChartText.parse(text, "x.chart");
          Assertions.assertEquals(chart, ChartText.parse(ChartText.print(chart), "printed"));
          return chart.form();
        });
  }
}
