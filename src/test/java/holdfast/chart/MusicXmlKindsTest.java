package holdfast.chart;

import static holdfast.chart.MusicXmlSamples.first;
import static holdfast.chart.MusicXmlSamples.harmony;
import static holdfast.chart.MusicXmlSamples.read;
import static holdfast.chart.MusicXmlSamples.score;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.theory.ChordKind;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Harmony;
import holdfast.theory.NoteName;
import holdfast.theory.PitchClassSet;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The kinds and degrees of MusicXML 4.0, against what its schema says that they are. */
class MusicXmlKindsTest {

  static Stream<List<String>> kinds() {
    return Facts.rows("musicxml-kinds.txt").stream();
  }

  private static Harmony chord(String harmony) {
    return read(score(first(harmony))).chart().form().changes().get(0).harmony();
  }

  private static PitchClassSet pitchClasses(String semitones) {
    return PitchClassSet.of(
        Arrays.stream(semitones.split(" ", -1)).mapToInt(Integer::parseInt).toArray());
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void a_kind_is_made_of_what_the_schema_says(List<String> row) {
    assertEquals(pitchClasses(row.get(2)), chord(harmony("C", row.get(0))).standardPitchClasses());
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void a_chord_of_a_kind_is_written_with_that_kind_and_no_degrees(List<String> row) {
    Harmony read = chord(harmony("E", -1, row.get(0), ""));
    Chart chart = ChartText.parse("title: T\n| " + read.text() + " |", "test");
    String xml = MusicXmlChart.write(chart);
    assertTrue(xml.contains(">" + row.get(0) + "</kind>"), xml);
    assertTrue(!xml.contains("<degree"), xml);
  }

  @Test
  void every_kind_of_the_chord_table_comes_back_as_itself() {
    for (ChordKind kind : ChordKind.known()) {
      ChordSymbol symbol =
          new ChordSymbol(NoteName.parse("Bb"), kind, Optional.of(NoteName.parse("F#")));
      Chart chart = ChartText.parse("title: T\n| " + symbol.text() + " |", "test");
      assertEquals(
          symbol, read(MusicXmlChart.write(chart)).chart().form().changes().get(0).harmony());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // The degree rules of the schema: an added degree counts against a dominant chord, an
        // altered one against what the kind has.
        "dominant        | add 9 -1                    | 0 4 7 10 1",
        "dominant        | add 9 1, add 5 1, alter 5 -1 | 0 4 6 8 10 3",
        "dominant        | alter 5 1                   | 0 4 8 10",
        "dominant        | subtract 3 0                | 0 7 10",
        "suspended-fourth | add 7 0                    | 0 5 7 10",
        "major           | add 7 1                     | 0 4 7 11",
        "major           | add 9 0                     | 0 4 7 2",
        "dominant-13th   | alter 11 1, alter 9 -1      | 0 4 7 10 1 6 9",
        "major-seventh   | alter 7 -1                  | 0 4 7 10",
        "dominant        | alter 9 -1                  | 0 4 7 10 1",
        "other           | add 3 -1, add 5 -1, add 7 0 | 0 3 6 10"
      })
  void degrees_add_alter_and_subtract(String kind, String degrees, String expected) {
    StringBuilder xml = new StringBuilder();
    for (String degree : degrees.split(",", -1)) {
      String[] words = degree.strip().split(" ", -1);
      xml.append("<degree><degree-value>").append(words[1]).append("</degree-value><degree-alter>");
      xml.append(words[2]).append("</degree-alter><degree-type>").append(words[0]);
      xml.append("</degree-type></degree>");
    }
    assertEquals(
        pitchClasses(expected),
        chord(harmony("C", 0, kind, xml.toString())).standardPitchClasses());
  }

  @Test
  void root_and_bass_have_their_accidentals() {
    String bass = "<bass><bass-step>D</bass-step><bass-alter>-1</bass-alter></bass>";
    assertEquals("Bbm7/Db", chord(harmony("B", -1, "minor-seventh", bass)).text());
    assertEquals("F##7", chord(harmony("F", 2, "dominant", "")).text());
  }

  @Test
  void none_is_no_chord() {
    assertEquals(
        "N.C.",
        chord(
                "<harmony><root><root-step text=\"\">C</root-step></root>"
                    + "<kind text=\"N.C.\">none</kind></harmony>")
            .text());
  }

  @ParameterizedTest
  @CsvSource({
    "dominant, 7alt, C7alt",
    "dominant, 7(b9), C7b9",
    "major, 6/9, C6/9",
    "diminished, °7, C°7",
    "major-seventh, 7, Cmaj7",
    "minor-seventh, min7, Cm7",
    "half-diminished, ø, Cm7b5",
    "other, 7#9, C7#9"
  })
  void what_is_printed_counts_where_it_only_says_more(String kind, String text, String expected) {
    String harmony =
        "<harmony><root><root-step>C</root-step></root><kind text=\""
            + text
            + "\">"
            + kind
            + "</kind></harmony>";
    assertEquals(expected, chord(harmony).text());
  }

  @ParameterizedTest
  @CsvSource({"Neapolitan, C", "German, C7", "French, C7b5", "Tristan, Cm7b5", "pedal, C5"})
  void a_functional_kind_is_read_as_what_sounds_nearest_and_told(String kind, String expected) {
    MusicXmlChart.Reading reading = read(score(first(harmony("C", kind))));
    assertEquals(expected, reading.chart().form().changes().get(0).harmony().text());
    assertEquals(
        List.of("bar 1: a " + kind + " chord is read as what sounds nearest, " + expected),
        reading.notes());
  }

  @Test
  void a_kind_that_nobody_knows_is_told_with_its_bar() {
    ChartException e = assertThrows(ChartException.class, () -> chord(harmony("C", "cosmic")));
    assertTrue(e.getMessage().startsWith("sample.musicxml: bar 1: a chord of the kind “cosmic”"));
  }

  /** The part of the W3C's own schema that lists and explains the kinds. */
  private static String schemaOfKinds() throws IOException {
    try (InputStream in =
        MusicXmlKindsTest.class.getResourceAsStream("/META-INF/jaxb/xsd/musicxml.xsd")) {
      String schema = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      int from = schema.indexOf("<xs:simpleType name=\"kind-value\">");
      return schema.substring(from, schema.indexOf("</xs:simpleType>", from));
    }
  }

  @Test
  void the_table_of_kinds_says_what_the_schema_says() throws IOException {
    String schema = schemaOfKinds();
    for (List<String> row : Facts.rows("musicxml-kinds.txt")) {
      assertTrue(schema.contains(row.get(0) + " (" + row.get(1) + ")"), row.toString());
    }
  }

  @Test
  void all_kinds_of_the_schema_are_read_or_have_a_nearest() throws IOException {
    List<String> kinds =
        Pattern.compile("<xs:enumeration value=\"([^\"]*)\"/>")
            .matcher(schemaOfKinds())
            .results()
            .map(result -> result.group(1))
            .toList();
    assertEquals(33, kinds.size());
    TreeSet<String> unread = new TreeSet<>();
    for (String kind : kinds) {
      try {
        chord(harmony("C", kind));
      } catch (ChartException e) {
        unread.add(kind);
      }
    }
    // "other" is made of its degrees alone; without any it says nothing.
    assertEquals(new TreeSet<>(List.of("other")), unread);
  }
}
