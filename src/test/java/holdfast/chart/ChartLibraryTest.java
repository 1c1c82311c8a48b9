package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChartLibraryTest {

  private static final String TEXT = "title: Äpfel\nkey: E♭\n| E♭maj7 |\n";

  @TempDir Path folder;

  private static ChartException mistake(String nameOrFile) {
    return assertThrows(ChartException.class, () -> ChartLibrary.open(nameOrFile));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"lantern turn", "lantern-turn", "Lantern Turn", "LANTERNTURN", " lantern_turn "})
  void a_name_may_be_typed_in_many_ways(String name) {
    assertEquals("Lantern Turn", ChartLibrary.open(name).title());
  }

  @Test
  void an_unknown_name_is_told_with_the_nearest_and_where_to_look() {
    assertEquals(
        "“lantern tern”: no chart has this name and no file either; did you mean lantern-turn?"
            + " `holdfast charts` lists all",
        mistake("lantern tern").getMessage());
    assertEquals("`holdfast charts` lists all", mistake("xyz").mend());
    assertTrue(mistake("Last Bus").mend().startsWith("did you mean last-bus-north?"));
  }

  @Test
  void a_file_that_is_not_there_is_told_as_a_file() {
    assertTrue(
        mistake("my/tune.txt").getMessage().startsWith("my/tune.txt: there is no such file"));
    assertTrue(mistake("tune.musicxml").wrong().contains("no such file"));
  }

  @Test
  void charts_come_from_text_and_from_musicxml_whatever_the_file_is_called() throws IOException {
    Path text = folder.resolve("one.music");
    Files.writeString(text, TEXT);
    Chart chart = ChartLibrary.open(text.toString());
    assertEquals("Äpfel", chart.title());
    Path xml = folder.resolve("two");
    Files.writeString(xml, MusicXmlChart.write(chart));
    assertEquals(chart, ChartLibrary.open(xml));
    Path mxl = folder.resolve("three.bin");
    try (OutputStream out = Files.newOutputStream(mxl)) {
      MusicXmlChart.writeCompressed(chart, out);
    }
    assertEquals(chart, ChartLibrary.open(mxl));
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16"})
  void text_is_read_in_the_encodings_of_common_editors(String encoding) throws IOException {
    Path file = folder.resolve("chart.txt");
    Files.write(file, TEXT.getBytes(Charset.forName(encoding)));
    assertEquals("Äpfel", ChartLibrary.open(file).title());
  }

  @Test
  void text_in_another_encoding_is_told_with_the_mend() throws IOException {
    Path file = folder.resolve("chart.txt");
    Files.write(file, "title: Äpfel\n| C |".getBytes(StandardCharsets.ISO_8859_1));
    ChartException e = assertThrows(ChartException.class, () -> ChartLibrary.open(file));
    assertEquals(
        file + ": it is not text in UTF-8; save it from your editor as UTF-8", e.getMessage());
  }

  @Test
  void folders_and_huge_files_are_refused() throws IOException {
    assertTrue(
        assertThrows(ChartException.class, () -> ChartLibrary.open(folder))
            .wrong()
            .contains("folder"));
    Path huge = folder.resolve("huge.txt");
    Files.write(huge, new byte[9 << 20]);
    assertTrue(
        assertThrows(ChartException.class, () -> ChartLibrary.open(huge))
            .wrong()
            .contains("too long"));
  }

  @Test
  void an_empty_file_and_one_of_zeros_are_told() throws IOException {
    Path file = folder.resolve("empty.txt");
    Files.write(file, new byte[0]);
    assertTrue(
        assertThrows(ChartException.class, () -> ChartLibrary.open(file))
            .wrong()
            .contains("no title"));
    Files.write(file, new byte[1000]);
    assertThrows(ChartException.class, () -> ChartLibrary.open(file));
  }
}
