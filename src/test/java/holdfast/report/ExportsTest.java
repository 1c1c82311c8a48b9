package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.MusicXmlMelody;
import holdfast.chart.MusicXmlSchema;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.SoundFile;
import holdfast.melody.Note;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import java.io.ByteArrayInputStream;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.audiveris.proxymusic.ScorePartwise;
import org.audiveris.proxymusic.Slur;
import org.audiveris.proxymusic.StartStop;
import org.audiveris.proxymusic.StartStopContinue;
import org.audiveris.proxymusic.Tie;
import org.audiveris.proxymusic.util.Marshalling;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What lies beside the report, read back by somebody else's library. */
class ExportsTest {

  private static final JudgedTake DEMO = Takes.demo();

  /** The schema: musicxml.xsd 4.0, W3C Music Notation Community Group. */
  @Test
  void the_solo_keeps_to_the_schema_of_musicxml() throws Exception {
    new MusicXmlSchema().validate(MusicXmlMelody.write(SoloSheet.of(DEMO)));
    new MusicXmlSchema().validate(MusicXmlMelody.write(SoloSheet.of(Takes.sung(2, -60))));
  }

  /** The reader: proxymusic 4.0.3, which knows nothing of us. */
  @Test
  void the_solo_reads_back_with_the_same_notes_and_every_phrase_is_told() throws Exception {
    String xml = MusicXmlMelody.write(SoloSheet.of(DEMO));
    ScorePartwise score =
        (ScorePartwise)
            Marshalling.unmarshal(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    List<Integer> pitches = new ArrayList<>();
    int words = 0;
    for (ScorePartwise.Part.Measure measure : score.getPart().get(0).getMeasure()) {
      for (Object child : measure.getNoteOrBackupOrForward()) {
        if (child instanceof org.audiveris.proxymusic.Note note
            && note.getPitch() != null
            && starts(note.getTie())) {
          pitches.add(midi(note));
        }
        if (child instanceof org.audiveris.proxymusic.Direction direction) {
          words +=
              direction.getDirectionType().stream()
                  .mapToInt(type -> type.getWordsOrSymbol().size())
                  .sum();
        }
      }
    }
    List<Integer> played =
        DEMO.phrases().stream().flatMap(p -> p.notes().stream()).map(Note::pitch).toList();
    assertEquals(played, pitches);
    assertEquals(DEMO.phrases().size(), words);
  }

  /** Read by proxymusic: a slur from the first note of each phrase to its last. */
  @Test
  void every_phrase_stands_under_a_slur() throws Exception {
    String xml = MusicXmlMelody.write(SoloSheet.of(DEMO));
    ScorePartwise score =
        (ScorePartwise)
            Marshalling.unmarshal(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    List<Integer> ends = new ArrayList<>();
    List<StartStopContinue> types = new ArrayList<>();
    for (ScorePartwise.Part.Measure measure : score.getPart().get(0).getMeasure()) {
      for (Object child : measure.getNoteOrBackupOrForward()) {
        if (child instanceof org.audiveris.proxymusic.Note note) {
          note.getNotations().stream()
              .flatMap(notations -> notations.getTiedOrSlurOrTuplet().stream())
              .filter(Slur.class::isInstance)
              .forEach(
                  slur -> {
                    types.add(((Slur) slur).getType());
                    ends.add(midi(note));
                  });
        }
      }
    }
    List<Integer> wanted = new ArrayList<>();
    for (JudgedPhrase phrase : DEMO.phrases()) {
      wanted.add(phrase.notes().get(0).pitch());
      wanted.add(phrase.notes().get(phrase.notes().size() - 1).pitch());
    }
    assertEquals(wanted, ends);
    for (int i = 0; i < types.size(); i++) {
      assertEquals(
          i % 2 == 0 ? StartStopContinue.START : StartStopContinue.STOP, types.get(i), "slur " + i);
    }
  }

  private static boolean starts(List<Tie> ties) {
    return ties.stream().noneMatch(tie -> tie.getType() == StartStop.STOP);
  }

  private static int midi(org.audiveris.proxymusic.Note note) {
    int letter =
        List.of(0, 2, 4, 5, 7, 9, 11).get("CDEFGAB".indexOf(note.getPitch().getStep().name()));
    int alter = note.getPitch().getAlter() == null ? 0 : note.getPitch().getAlter().intValueExact();
    return 12 * (note.getPitch().getOctave() + 1) + letter + alter;
  }

  /** RFC 4180, section 2: CRLF ends a line, quotes are doubled, every line has as many fields. */
  @Test
  void the_table_keeps_to_rfc_4180() {
    String csv = PhrasesCsv.of(DEMO);
    List<List<String>> rows = fields(csv);
    assertEquals(DEMO.phrases().size() + 1, rows.size());
    rows.forEach(row -> assertEquals(rows.get(0).size(), row.size(), row.toString()));
    assertEquals("new", rows.get(6).get(rows.get(0).indexOf("family")));
    assertTrue(
        rows.get(2).get(rows.get(0).indexOf("why")).startsWith("You played your idea again, "));
  }

  /** A reader of the grammar in RFC 4180, section 2, written from that text. */
  private static List<List<String>> fields(String csv) {
    List<List<String>> rows = new ArrayList<>();
    List<String> row = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < csv.length(); i++) {
      char c = csv.charAt(i);
      if (quoted && c == '"' && i + 1 < csv.length() && csv.charAt(i + 1) == '"') {
        field.append(c);
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (!quoted && (c == ',' || c == '\r')) {
        row.add(field.toString());
        field.setLength(0);
        if (c == '\r') {
          assertEquals('\n', csv.charAt(++i));
          rows.add(List.copyOf(row));
          row.clear();
        }
      } else {
        field.append(c);
      }
    }
    return rows;
  }

  @Test
  void the_pdf_holds_the_same_words_on_two_a4_pages() throws Exception {
    Occasion occasion =
        Occasion.of(java.util.Optional.of("Mira Søn"), Takes.DAY).after(Takes.progress(false));
    try (PDDocument pdf = Loader.loadPDF(ReportPdf.of(DEMO, occasion))) {
      assertEquals(2, pdf.getNumberOfPages());
      // A4: 210 by 297 mm (ISO 216), in points of 1/72 inch; half a point of tolerance.
      assertEquals(595.28, pdf.getPage(0).getMediaBox().getWidth(), 0.5);
      assertEquals(841.89, pdf.getPage(0).getMediaBox().getHeight(), 0.5);
      assertEquals("en", pdf.getDocumentCatalog().getLanguage());
      String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
      for (String sentence : TakeSentences.of(DEMO)) {
        assertTrue(text.contains(sentence), sentence);
      }
      assertTrue(text.contains("Mira Søn"));
      assertTrue(text.contains("holdfast practise"));
    }
  }

  /** U+5C0F is in no font of ours; a font is made that has it, and has not U+96EA. */
  @Test
  void a_pdf_of_hostile_text_is_still_a_pdf_and_drops_no_sign(@TempDir Path folder)
      throws Exception {
    Path font = Files.write(folder.resolve("other.ttf"), withSign(0x5C0F));
    Files.writeString(folder.resolve("broken.ttf"), "no font at all");
    List<URI> fonts = List.of(folder.resolve("broken.ttf").toUri(), font.toUri());
    Occasion occasion =
        Occasion.UNKNOWN
            .by(java.util.Optional.of("<b>]]>&\u0000\u000b 小雪 Ana 🎷"))
            .remarking(List.of("<script>"));
    try (PDDocument pdf = Loader.loadPDF(ReportPdf.of(DEMO, occasion, () -> fonts))) {
      String text = new PDFTextStripper().getText(pdf);
      assertTrue(text.contains("<b>]]>&"));
      String name = text.substring(text.indexOf("<b>]]>&"), text.indexOf("beats a minute"));
      assertTrue(name.contains("小\uFFFD Ana \uFFFD"), name);
    }
  }

  /** OpenType 1.9, "Font Collections"; the collection is put together here from that text. */
  @Test
  void a_font_out_of_a_collection_writes_a_name_and_a_broken_collection_does_no_harm(
      @TempDir Path folder) throws Exception {
    byte[] own = withSign(0x96EA);
    byte[] all = collection(own, withSign(0x5C0F));
    Path good = Files.write(folder.resolve("all.ttc"), all);
    Path cut = Files.write(folder.resolve("cut.ttc"), Arrays.copyOf(all, all.length / 3));
    byte[] many = all.clone();
    ByteBuffer.wrap(many).putInt(8, Integer.MAX_VALUE);
    Path wrong = Files.write(folder.resolve("many.ttc"), many);
    Path empty = Files.write(folder.resolve("empty.ttc"), new byte[0]);
    List<URI> fonts = Stream.of(empty, wrong, cut, good).map(Path::toUri).toList();
    Occasion occasion = Occasion.UNKNOWN.by(java.util.Optional.of("Ana 小雪"));
    try (PDDocument pdf = Loader.loadPDF(ReportPdf.of(DEMO, occasion, () -> fonts))) {
      assertTrue(new PDFTextStripper().getText(pdf).contains("Ana 小雪"));
    }
  }

  /** Fonts one behind the other; the offsets in their directories count from the file's begin. */
  private static byte[] collection(byte[]... fonts) {
    int head = 12 + 4 * fonts.length;
    ByteBuffer all =
        ByteBuffer.allocate(
            head + Arrays.stream(fonts).mapToInt(f -> (f.length + 3) / 4 * 4).sum());
    all.put("ttcf".getBytes(StandardCharsets.US_ASCII)).putInt(0x10000).putInt(fonts.length);
    int at = head;
    for (byte[] font : fonts) {
      all.putInt(at);
      ByteBuffer moved = ByteBuffer.wrap(font.clone());
      for (int table = 0; table < moved.getShort(4); table++) {
        int entry = 12 + 16 * table + 8;
        moved.putInt(entry, moved.getInt(entry) + at);
      }
      System.arraycopy(moved.array(), 0, all.array(), at, font.length);
      at += (font.length + 3) / 4 * 4;
    }
    return all.array();
  }

  /**
   * Our own font with one sign more, for whose sake the last of its groups goes. OpenType 1.9,
   * "cmap", format 12: 16 bytes of head, then groups of first sign, last sign and first glyph.
   */
  private static byte[] withSign(int sign) throws Exception {
    byte[] font;
    try (var in = ReportPdf.class.getResourceAsStream("fonts/DejaVuSans.ttf")) {
      font = in.readAllBytes();
    }
    ByteBuffer bytes = ByteBuffer.wrap(font);
    for (int table = 0; table < bytes.getShort(4); table++) {
      int entry = 12 + 16 * table;
      if (bytes.getInt(entry) == 0x636d6170) {
        int cmap = bytes.getInt(entry + 8);
        for (int i = 0; i < bytes.getShort(cmap + 2); i++) {
          int part = cmap + bytes.getInt(cmap + 4 + 8 * i + 4);
          if (bytes.getShort(part) == 12) {
            int last = part + 16 + 12 * (bytes.getInt(part + 12) - 1);
            bytes.putInt(last, sign).putInt(last + 4, sign);
          }
        }
      }
    }
    return font;
  }

  /** The reader is the JDK's service for MP3 that takes are read with, not the encoder's own. */
  @Test
  void a_phrase_is_heard_again_from_the_page_at_its_pitch(@TempDir Path folder) throws Exception {
    float[] tone = new float[2 * 16_000];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = (float) (0.5 * Math.sin(2 * Math.PI * 440 * i / 16_000));
    }
    PhraseSounds sounds = new PhraseSounds(EarSound.of(tone), 0.5);
    String address = sounds.address(0, 1).orElseThrow();
    assertTrue(address.startsWith("data:audio/mpeg;base64,"));
    byte[] mp3 = Base64.getDecoder().decode(address.substring(address.indexOf(',') + 1));
    // A second at 32 kbit/s is 4 kB, and a frame or two are padding.
    assertEquals(4000, mp3.length, 700);
    Path file = folder.resolve("phrase.mp3");
    Files.write(file, mp3);
    float[] heard = SoundFile.read(file).atEarRate();
    int crossings = 0;
    for (int i = 4001; i < 12_001; i++) {
      crossings += heard[i - 1] < 0 && heard[i] >= 0 ? 1 : 0;
    }
    // Half a second of A = 440 Hz crosses upwards 220 times; one more or less is the edge.
    assertEquals(220, crossings, 1);
  }

  @Test
  void nothing_is_heard_after_the_end_or_without_sound() {
    assertTrue(new PhraseSounds(EarSound.of(new float[16_000]), 0).address(5, 6).isEmpty());
    assertTrue(Listening.NOTHING.address(0, 1).isEmpty());
  }
}
