package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.chart.MusicXmlChart;

/** MusicXML, plain and compressed. */
class MusicXmlFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_musicxml(byte[] bytes) {
    Hostile.read(bytes, () -> MusicXmlChart.read(bytes, "x.musicxml").chart().form());
  }
}
