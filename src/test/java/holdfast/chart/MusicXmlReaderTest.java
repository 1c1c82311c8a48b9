package holdfast.chart;

import static holdfast.chart.MusicXmlSamples.first;
import static holdfast.chart.MusicXmlSamples.harmony;
import static holdfast.chart.MusicXmlSamples.measure;
import static holdfast.chart.MusicXmlSamples.read;
import static holdfast.chart.MusicXmlSamples.rest;
import static holdfast.chart.MusicXmlSamples.score;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Scores as other programs write them. The rules are those of the MusicXML 4.0 schema. */
class MusicXmlReaderTest {

  private static final String C = harmony("C", "major-seventh");
  private static final String G = harmony("G", "dominant");

  /** The rows of a score as our text. */
  private static String bars(String measures) {
    String text = ChartText.print(read(score(measures)).chart());
    return text.substring(text.indexOf("\n\n") + 2).strip();
  }

  @Test
  void places_in_the_bar_come_from_rests_offsets_and_jumps_back() {
    assertEquals("| Cmaj7 / / G7 |", bars(first(C + rest(6) + G + rest(2))));
    String offset = harmony("G", 0, "dominant", "<offset>6</offset>");
    assertEquals("| Cmaj7 / / G7 |", bars(first(C + offset + rest(8))));
    String back = "<backup><duration>4</duration></backup>";
    assertEquals("| Cmaj7 G7 |", bars(first(C + rest(8) + back + G)));
    String on = "<forward><duration>3</duration></forward>";
    assertEquals("| Cmaj7*1.5 G7*2.5 |", bars(first(C + on + G + rest(5))));
  }

  @Test
  void notes_of_a_chord_and_grace_notes_take_no_time() {
    String note =
        "<note>%s<pitch><step>C</step><octave>4</octave></pitch>%s<voice>1</voice></note>";
    String grace = note.formatted("<grace/>", "");
    String melody = note.formatted("", "<duration>4</duration>");
    String chord = note.formatted("<chord/>", "<duration>4</duration>");
    assertEquals("| Cmaj7 G7 |", bars(first(C + grace + melody + chord + G + melody)));
  }

  @Test
  void a_bar_without_chords_lets_the_one_before_go_on() {
    assertEquals(
        "| Cmaj7 | / / / / | / / G7 / |",
        bars(first(C) + measure(2, rest(8)) + measure(3, rest(4) + G + rest(4))));
  }

  @Test
  void before_the_first_chord_there_is_none() {
    assertEquals("| N.C. | / / G7 / |", bars(first(rest(8)) + measure(2, rest(4) + G + rest(4))));
  }

  @Test
  void a_first_measure_that_is_not_counted_is_a_pick_up() {
    String pickup =
        "<measure number=\"0\" implicit=\"yes\"><attributes><divisions>2</divisions>"
            + "<time><beats>4</beats><beat-type>4</beat-type></time></attributes>"
            + G
            + rest(2)
            + "</measure>";
    Chart chart = read(score(pickup + measure(1, C))).chart();
    assertEquals(1, chart.heading().pickupBeats(), 0);
    assertEquals("G7", chart.changes().at(-1).harmony().text());
    assertEquals(1, chart.form().bars().size());
  }

  @Test
  void key_metre_and_tempo_are_taken_over() {
    String head =
        "<measure number=\"1\"><attributes><divisions>4</divisions><key><fifths>-3</fifths>"
            + "<mode>minor</mode></key><time><beats>6</beats><beat-type>8</beat-type></time>"
            + "</attributes><direction><direction-type><metronome><beat-unit>quarter</beat-unit>"
            + "<beat-unit-dot/><per-minute>40</per-minute></metronome></direction-type></direction>"
            + C
            + "</measure>";
    MusicXmlChart.Reading reading = read(score(head));
    assertEquals("Cm", reading.chart().key().orElseThrow().text());
    assertEquals("6/8", reading.chart().metre().text());
    // 40 dotted quarters are 120 eighths.
    assertEquals(120, reading.chart().tempo(), 1e-9);
    assertEquals(List.of(), reading.notes());
  }

  @Test
  void what_a_score_does_not_say_is_supposed_and_told() {
    MusicXmlChart.Reading reading = read(score(measure(1, C)));
    assertEquals("4/4", reading.chart().metre().text());
    assertEquals(60, reading.chart().tempo(), 0);
    assertTrue(reading.chart().key().isEmpty());
    assertEquals(
        List.of(
            "the score names no metre and is read as 4/4",
            "the score names no tempo and is read at 60"),
        reading.notes());
  }

  @Test
  void a_transposing_part_sounds_in_concert_pitch() {
    String head =
        "<measure number=\"1\"><attributes><divisions>1</divisions><key><fifths>0</fifths>"
            + "<mode>major</mode></key><transpose><diatonic>-5</diatonic><chromatic>-9</chromatic>"
            + "</transpose></attributes>"
            + C
            + "</measure>";
    Chart chart = read(score(head)).chart();
    assertEquals(WrittenFor.E_FLAT, chart.heading().writtenFor());
    assertEquals("Ebmaj7", chart.changes().at(0).harmony().text());
    assertEquals("Eb", chart.changes().key().orElseThrow().text());
    Chart bare = read(score(head.replace("<diatonic>-5</diatonic>", ""))).chart();
    assertEquals(WrittenFor.E_FLAT, bare.heading().writtenFor());
  }

  @Test
  void repeats_and_endings_are_taken_over() {
    String open = "<barline location=\"left\"><repeat direction=\"forward\"/></barline>";
    String one =
        "<barline location=\"left\"><ending number=\"1,2\" type=\"start\"/></barline>"
            + G
            + "<barline location=\"right\"><ending number=\"1,2\" type=\"stop\"/>"
            + "<repeat direction=\"backward\"/></barline>";
    String two =
        "<barline location=\"left\"><ending number=\"3\" type=\"start\"/></barline>"
            + C
            + "<barline location=\"right\"><bar-style>light-light</bar-style>"
            + "<ending number=\"3\" type=\"discontinue\"/></barline>";
    assertEquals(
        "|: Cmaj7 |1,2. G7 :|3. Cmaj7 ||",
        bars(first(open + C) + measure(2, one) + measure(3, two)));
    String times = C + "<barline><repeat direction=\"backward\" times=\"4\"/></barline>";
    assertEquals("| Cmaj7 :|4x G7 |", bars(first(times) + measure(2, G)));
  }

  @Test
  void a_repeat_that_starts_in_a_bar_without_chords_names_the_one_that_goes_on() {
    String open = "<barline location=\"left\"><repeat direction=\"forward\"/></barline>";
    String close = "<barline location=\"right\"><repeat direction=\"backward\"/></barline>";
    assertEquals(
        "| Cmaj7 |: Cmaj7 | G7 :|",
        bars(first(C) + measure(2, open + rest(8)) + measure(3, G + close)));
  }

  @Test
  void signs_for_bars_of_the_same_are_taken_over() {
    String start =
        "<attributes><measure-style><measure-repeat type=\"start\">%d</measure-repeat>"
            + "</measure-style></attributes>";
    String stop =
        "<attributes><measure-style><measure-repeat type=\"stop\"/></measure-style></attributes>";
    assertEquals(
        "| Cmaj7 G7 | % | Cmaj7 | %% |",
        bars(
            first(C + rest(4) + G + rest(4))
                + measure(2, start.formatted(1))
                + measure(3, stop + C)
                + measure(4, start.formatted(2))
                + measure(5, "")));
  }

  @Test
  void rehearsal_marks_name_sections_and_new_systems_start_rows() {
    String mark =
        "<direction><direction-type><rehearsal>B</rehearsal></direction-type></direction>";
    String system = "<print new-system=\"yes\"/>";
    assertEquals(
        "| Cmaj7 | G7 |\n| Cmaj7 |\n\n[B]\n| G7 |",
        bars(first(C) + measure(2, G) + measure(3, system + C) + measure(4, mark + G)));
    assertEquals(
        "| Cmaj7 | G7 | Cmaj7 | G7 |\n| Cmaj7 |",
        bars(first(C) + measure(2, G) + measure(3, C) + measure(4, G) + measure(5, C)));
  }

  @Test
  void the_first_part_with_chords_is_read() {
    String two =
        score(first(rest(8)))
            .replace(
                "<score-part id=\"P1\">",
                "<score-part id=\"P0\"><part-name/></score-part>" + "<score-part id=\"P1\">")
            .replace("</part>", "</part><part id=\"P2\">" + measure(1, G) + "</part>");
    MusicXmlChart.Reading reading = read(two);
    assertEquals("G7", reading.chart().changes().at(0).harmony().text());
  }

  @Test
  void what_cannot_be_taken_over_is_told() {
    String jump =
        "<direction><direction-type><words>D.C.</words></direction-type>"
            + "<sound dacapo=\"yes\"/></direction>";
    String key = "<attributes><key><fifths>2</fifths></key></attributes>";
    String alternate = C.replace("<harmony>", "<harmony type=\"alternate\">");
    assertEquals(
        List.of(
            "bar 1: an alternate chord is left out",
            "bar 1: of two chords at one place the second, Am7, is left out",
            "bar 2: the key changes; the chart keeps the first one",
            "D.C., D.S. and coda signs are not followed; the bars are read once, in their order"),
        read(score(
                first(C + alternate + harmony("A", "minor-seventh")) + measure(2, key + G + jump)))
            .notes());
  }

  private static ChartException mistake(String xml) {
    return assertThrows(ChartException.class, () -> read(xml));
  }

  @Test
  void what_cannot_be_a_chart_is_told_with_the_mend() {
    String metre = "<attributes><time><beats>3</beats><beat-type>4</beat-type></time></attributes>";
    assertTrue(
        mistake(score(first(C) + measure(2, metre + G)))
            .getMessage()
            .startsWith("sample.musicxml: bar 2: the metre changes from 4/4 to 3/4"));
    assertTrue(mistake(score(first(rest(8)))).wrong().contains("no chord symbols"));
    assertTrue(mistake("<html><body/></html>").wrong().contains("no score"));
    assertTrue(mistake("<score-timewise/>").wrong().contains("ordered by time"));
    String numeral =
        "<harmony><numeral><numeral-root>2</numeral-root></numeral><kind>minor</kind>"
            + "</harmony>";
    assertTrue(mistake(score(first(numeral))).wrong().contains("Roman numeral"));
    String late = harmony("G", 0, "dominant", "<offset>9</offset>");
    assertTrue(mistake(score(first(C + late))).wrong().contains("stands after its end"));
    String close = "<barline><repeat direction=\"backward\"/></barline>";
    String end = "<barline location=\"left\"><ending number=\"1\" type=\"start\"/></barline>";
    assertTrue(
        mistake(score(first(C) + measure(2, end + G + close)))
            .wrong()
            .startsWith("bar 2: there is a first ending and no second"));
  }

  @Test
  void broken_xml_is_told_with_its_line() {
    ChartException e = mistake(score(first(C)).replace("</measure>", ""));
    assertTrue(e.line() > 1, e.getMessage());
    assertTrue(e.wrong().contains("not well-formed"), e.getMessage());
    String whole = score(first(C));
    // What follows the part with the chords is not looked at.
    for (int length = 0; length <= whole.indexOf("</part>"); length += 7) {
      String cut = whole.substring(0, length);
      assertThrows(ChartException.class, () -> read(cut));
    }
  }

  @Test
  void nothing_outside_the_file_is_read(@TempDir Path folder) throws IOException {
    Path secret = folder.resolve("secret.txt");
    Files.writeString(secret, "SECRET");
    String evil =
        score(first(C))
            .replaceFirst(
                "<!DOCTYPE[^>]*>",
                "<!DOCTYPE score-partwise [<!ENTITY x SYSTEM \"" + secret.toUri() + "\">]>")
            .replace("Sample", "&x;");
    try {
      assertFalse(ChartText.print(read(evil).chart()).contains("SECRET"));
    } catch (ChartException e) {
      assertTrue(e.wrong().contains("not well-formed"), e.getMessage());
    }
  }

  @Test
  void entities_that_swell_are_not_expanded() {
    StringBuilder bombs = new StringBuilder("<!ENTITY b0 \"lol\">");
    for (int i = 1; i < 40; i++) {
      bombs.append("<!ENTITY b%d \"&b%d;&b%d;&b%d;\">".formatted(i, i - 1, i - 1, i - 1));
    }
    String evil =
        score(first(C))
            .replaceFirst("<!DOCTYPE[^>]*>", "<!DOCTYPE score-partwise [" + bombs + "]>")
            .replace("Sample", "&b39;");
    try {
      assertTrue(read(evil).chart().title().length() < 100);
    } catch (ChartException e) {
      assertTrue(e.wrong().contains("not well-formed"), e.getMessage());
    }
  }

  @Test
  void elements_without_end_are_refused() {
    assertTrue(mistake(score(first(C + "<x>".repeat(5000)))).wrong().contains("nest too deep"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16", "UTF-16LE", "ISO-8859-1"})
  void any_encoding_that_xml_names_is_read(String encoding) {
    String xml = score(first(C)).replace("Sample", "Säge").replace("UTF-8", encoding);
    byte[] bytes = xml.getBytes(Charset.forName(encoding));
    assertTrue(MusicXmlChart.looksLikeOne(bytes));
    assertEquals("Säge", MusicXmlChart.read(bytes, "x").chart().title());
  }

  @Test
  void bytes_that_are_no_text_are_told_in_one_sentence_and_nothing_else() {
    byte[] xml = bytes(score(first(C)).replace("Sample", "S\nam\u00C4ple"));
    int at = new String(xml, StandardCharsets.ISO_8859_1).indexOf("am\u00C3") + 2;
    PrintStream err = System.err;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    System.setErr(new PrintStream(printed, true, StandardCharsets.UTF_8));
    try {
      // RFC 3629, section 3: these octets never appear; a continuation needs its beginning.
      for (int wrong : new int[] {0xC0, 0xC1, 0xF5, 0xFF, 0x80}) {
        byte[] broken = xml.clone();
        broken[at] = (byte) wrong;
        ChartException e = assertThrows(ChartException.class, () -> readBytes(broken));
        int line = (int) new String(xml, 0, at, StandardCharsets.UTF_8).lines().count();
        assertEquals(line, e.line(), e.getMessage());
        assertEquals(3, e.column(), e.getMessage());
        assertEquals("it is not well-formed XML: no text in UTF-8", e.wrong());
      }
      byte[] cut = Arrays.copyOf(xml, at + 1);
      assertThrows(ChartException.class, () -> readBytes(cut));
    } finally {
      System.setErr(err);
    }
    assertEquals("", printed.toString(StandardCharsets.UTF_8));
  }

  @Test
  void a_byte_order_mark_goes_before_what_is_declared_and_unknown_encodings_are_named() {
    String xml = score(first(C)).replace("Sample", "Säge");
    assertEquals("Säge", readBytes(bytes("\uFEFF" + xml)).chart().title());
    byte[] little = ("\uFEFF" + xml).getBytes(StandardCharsets.UTF_16LE);
    assertEquals("Säge", readBytes(little).chart().title());
    ChartException e = mistake(xml.replace("UTF-8", "quaver-8"));
    assertEquals("its encoding quaver-8 is not known", e.wrong());
  }

  private static MusicXmlChart.Reading readBytes(byte[] xml) {
    return MusicXmlChart.read(xml, "x");
  }

  private static byte[] zip(Object... namesAndBytes) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (int i = 0; i < namesAndBytes.length; i += 2) {
        zip.putNextEntry(new ZipEntry((String) namesAndBytes[i]));
        zip.write((byte[]) namesAndBytes[i + 1]);
      }
    }
    return out.toByteArray();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void a_zip_names_its_score_in_the_container() throws IOException {
    String container =
        "<container><rootfiles><rootfile full-path=\"in/lead.xml\"/></rootfiles></container>";
    byte[] good =
        zip("META-INF/container.xml", bytes(container), "in/lead.xml", bytes(score(first(G))));
    assertEquals("G7", MusicXmlChart.read(good, "x.mxl").chart().changes().at(0).harmony().text());
    byte[] missing = zip("META-INF/container.xml", bytes(container));
    assertTrue(mistake(missing).wrong().contains("in/lead.xml is missing"));
    assertTrue(
        mistake(zip("a.txt", bytes("a"))).wrong().contains("without META-INF/container.xml"));
    byte[] unnamed = zip("META-INF/container.xml", bytes("<container/>"));
    assertTrue(mistake(unnamed).wrong().contains("names no score"));
    byte[] cut = Arrays.copyOf(good, good.length / 2);
    assertThrows(ChartException.class, () -> MusicXmlChart.read(cut, "x.mxl"));
  }

  private static ChartException mistake(byte[] file) {
    return assertThrows(ChartException.class, () -> MusicXmlChart.read(file, "x.mxl"));
  }

  @Test
  void a_zip_that_swells_is_refused() throws IOException {
    byte[] zeros = new byte[40 << 20];
    byte[] bomb = zip("META-INF/container.xml", zeros);
    assertTrue(bomb.length < 1 << 20);
    assertTrue(mistake(bomb).wrong().contains("unpacks to more than a score can be"));
  }
}
