package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.xml.sax.SAXException;

class MusicXmlWriterTest {

  private static final int CHARTS = 200;

  private static Chart chart(String text) {
    return ChartText.parse(text, "test");
  }

  @Test
  void what_is_written_keeps_the_rules_of_the_schema() throws Exception {
    MusicXmlSchema schema = new MusicXmlSchema();
    for (String name : ChartLibrary.names()) {
      schema.validate(MusicXmlChart.write(ChartLibrary.open(name)));
    }
    for (int seed = 0; seed < CHARTS; seed++) {
      schema.validate(MusicXmlChart.write(Charts.ofSeed(seed)));
    }
  }

  @Test
  void the_schema_that_we_hold_it_against_finds_what_is_wrong() throws Exception {
    String good = MusicXmlChart.write(ChartLibrary.open("Lantern Turn"));
    String bad = good.replace("major-seventh", "major-eighth");
    MusicXmlSchema schema = new MusicXmlSchema();
    assertThrows(SAXException.class, () -> schema.validate(bad));
  }

  /** A chart as MusicXML can hold it: remarks are for readers of the text. */
  private static Chart withoutRemarks(Chart chart) {
    Heading h = chart.heading();
    Heading heading =
        new Heading(
            h.title(),
            h.about(),
            h.key(),
            h.metre(),
            h.tempo(),
            h.feel(),
            h.pickupBeats(),
            h.writtenFor(),
            List.of());
    List<ChartLine> lines = new ArrayList<>();
    for (ChartLine line : chart.lines()) {
      if (line instanceof ChartLine.Row row) {
        lines.add(new ChartLine.Row(row.bars(), Optional.empty()));
      } else if (line instanceof ChartLine.SectionName section) {
        // Of two names without a bar between them the last one holds.
        if (!lines.isEmpty() && lines.get(lines.size() - 1) instanceof ChartLine.SectionName) {
          lines.remove(lines.size() - 1);
        }
        lines.add(new ChartLine.SectionName(section.name(), Optional.empty()));
      }
    }
    return new Chart(heading, lines);
  }

  @Test
  void what_is_written_reads_back_as_the_same_chart() {
    for (int seed = 0; seed < CHARTS; seed++) {
      Chart chart = withoutRemarks(Charts.ofSeed(seed));
      boolean rows = chart.lines().stream().filter(l -> l instanceof ChartLine.Row).count() > 1;
      MusicXmlChart.Reading reading = MusicXmlSamples.read(MusicXmlChart.write(chart));
      if (rows) {
        assertEquals(ChartText.print(chart), ChartText.print(reading.chart()), "seed " + seed);
        assertEquals(chart, reading.chart(), "seed " + seed);
        assertEquals(List.of(), reading.notes(), "seed " + seed);
      } else {
        assertEquals(chart.form().changes(), reading.chart().form().changes(), "seed " + seed);
      }
    }
  }

  @Test
  void a_bar_of_the_same_carries_its_chords_unprinted() {
    String xml = MusicXmlChart.write(chart("title: T\n| Dm7 G7 | % |"));
    assertTrue(xml.contains("<measure-repeat type=\"start\">1</measure-repeat>"));
    assertEquals(2, xml.split("<harmony print-object=\"no\">", -1).length - 1);
  }

  @Test
  void a_slow_six_eight_is_marked_in_dotted_quarters_and_sounds_in_quarters() {
    String xml = MusicXmlChart.write(chart("title: T\nmetre: 6/8\ntempo: 150\n| Dm7 |"));
    assertTrue(xml.contains("<per-minute>50</per-minute>"));
    assertTrue(xml.contains("<beat-unit-dot/>"));
    // The schema: tempo is in quarter notes a minute. 150 eighths are 75 quarters.
    assertTrue(xml.contains("<sound tempo=\"75\"/>"));
  }

  @Test
  void a_title_of_any_signs_is_written_so_that_it_reads_back() {
    Heading heading = Heading.of("\"A\" & <B> ♭\u0001\uD834\uDD1E", Optional.empty());
    Chart chart = new Chart(heading, chart("title: T\n| C |").lines());
    assertEquals(
        "\"A\" & <B> ♭\uD834\uDD1E",
        MusicXmlSamples.read(MusicXmlChart.write(chart)).chart().title());
  }

  @Test
  void the_compressed_form_starts_with_its_type_and_reads_back() throws IOException {
    Chart chart = ChartLibrary.open("Slow Ferry");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    MusicXmlChart.writeCompressed(chart, out);
    byte[] mxl = out.toByteArray();
    assertEquals(chart, MusicXmlChart.read(mxl, "slow.mxl").chart());
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(mxl))) {
      ZipEntry first = zip.getNextEntry();
      assertEquals("mimetype", first.getName());
      assertEquals(ZipEntry.STORED, first.getMethod());
      assertEquals(
          "application/vnd.recordare.musicxml",
          new String(zip.readAllBytes(), StandardCharsets.US_ASCII));
    }
    ByteArrayOutputStream again = new ByteArrayOutputStream();
    MusicXmlChart.writeCompressed(chart, again);
    assertEquals(List.of(mxl.length), List.of(again.size()));
  }
}
