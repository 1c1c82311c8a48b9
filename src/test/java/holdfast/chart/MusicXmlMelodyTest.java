package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.theory.Spelling;
import holdfast.time.Metre;
import java.io.ByteArrayInputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.audiveris.proxymusic.AccidentalValue;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.Beam;
import org.audiveris.proxymusic.Harmony;
import org.audiveris.proxymusic.Root;
import org.audiveris.proxymusic.ScorePartwise;
import org.audiveris.proxymusic.StartStop;
import org.audiveris.proxymusic.util.Marshalling;
import org.junit.jupiter.api.Test;

/**
 * Our melodies read by someone else: proxymusic 4.0.3, a binding of the MusicXML 4.0 schema that
 * knows nothing of us, and held against the W3C's own schema. Note values are worked out from the
 * schema's words: a dot adds half, a time modification says how many take the time of how many.
 */
class MusicXmlMelodyTest {

  private static final int SEEDS = 150;

  private static Chart chart(String head, String bars) {
    return ChartText.parse("title: T\n" + head + "\n\n" + bars + "\n", "test");
  }

  private static MelodySheet sheet(Chart chart, List<Note> line) {
    List<MelodySheet.NamedNote> named =
        line.stream()
            .map(
                note ->
                    new MelodySheet.NamedNote(
                        note,
                        new Spelling(chart.key(), chart.changes().at(note.onsetBeats()).harmony())
                            .name(note.pitch())))
            .toList();
    return new MelodySheet(
        chart.title(), chart.form(), chart.key(), chart.tempo(), named, List.of());
  }

  private static String xml(Chart chart, String line) {
    return MusicXmlMelody.write(sheet(chart, IdeaNotation.parse(line)));
  }

  /** What someone else reads: notes in quarters from bar 1, and chord roots at their places. */
  private static final class Reading {
    private final List<Note> notes = new ArrayList<>();
    private final List<String> roots = new ArrayList<>();
    private final List<Double> barQuarters = new ArrayList<>();
    private int tuplets;

    Reading(String xml) throws Exception {
      ScorePartwise score =
          (ScorePartwise)
              Marshalling.unmarshal(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
      int divisions = 1;
      Map<String, Integer> signature = Map.of();
      List<ScorePartwise.Part.Measure> measures = score.getPart().get(0).getMeasure();
      double at = 0;
      for (ScorePartwise.Part.Measure measure : measures) {
        double barStart = at;
        Map<String, Integer> printed = new HashMap<>();
        for (Object child : measure.getNoteOrBackupOrForward()) {
          if (child instanceof Attributes attributes) {
            divisions = attributes.getDivisions().intValueExact();
            signature =
                attributes.getKey().isEmpty()
                    ? Map.of()
                    : signature(attributes.getKey().get(0).getFifths().intValueExact());
          } else if (child instanceof Harmony harmony) {
            double offset =
                harmony.getOffset() == null
                    ? 0
                    : harmony.getOffset().getValue().doubleValue() / divisions;
            roots.add(root(harmony) + "@" + (at + offset));
          } else if (child instanceof org.audiveris.proxymusic.Note note) {
            double quarters = note.getDuration().doubleValue() / divisions;
            checkValue(note, quarters);
            if (note.getPitch() != null) {
              take(note, at, quarters, signature, printed);
            }
            at += quarters;
          }
        }
        barQuarters.add(at - barStart);
      }
      assertEquals(0, tuplets, "every tuplet that starts stops");
      if (measures.get(0).getNumber().equals("0")) {
        shift(-barQuarters.get(0));
      }
    }

    private void shift(double quarters) {
      notes.replaceAll(n -> new Note(n.onsetBeats() + quarters, n.durationBeats(), n.pitch()));
      roots.replaceAll(
          r -> {
            int place = r.indexOf('@') + 1;
            return r.substring(0, place) + (Double.parseDouble(r.substring(place)) + quarters);
          });
    }

    private static String root(Harmony harmony) {
      return harmony.getHarmonyChord().stream()
          .filter(child -> child instanceof Root)
          .map(child -> ((Root) child).getRootStep().getValue().name())
          .findFirst()
          .orElseThrow();
    }

    private void checkValue(org.audiveris.proxymusic.Note note, double quarters) {
      if (note.getType() == null) {
        return;
      }
      double value =
          switch (note.getType().getValue()) {
            case "whole" -> 4;
            case "half" -> 2;
            case "quarter" -> 1;
            case "eighth" -> 0.5;
            case "16th" -> 0.25;
            case "32nd" -> 0.125;
            case "64th" -> 0.0625;
            case "128th" -> 0.03125;
            default -> throw new AssertionError(note.getType().getValue());
          };
      double dotted = note.getDot().isEmpty() ? value : 1.5 * value;
      double sounds =
          note.getTimeModification() == null
              ? dotted
              : dotted
                  * note.getTimeModification().getNormalNotes().doubleValue()
                  / note.getTimeModification().getActualNotes().doubleValue();
      assertEquals(sounds, quarters, 1e-9);
      note.getNotations().stream()
          .flatMap(n -> n.getTiedOrSlurOrTuplet().stream())
          .filter(n -> n instanceof org.audiveris.proxymusic.Tuplet)
          .map(n -> ((org.audiveris.proxymusic.Tuplet) n).getType())
          .forEach(type -> tuplets += type == StartStop.START ? 1 : -1);
    }

    private void take(
        org.audiveris.proxymusic.Note note,
        double at,
        double quarters,
        Map<String, Integer> signature,
        Map<String, Integer> printed) {
      String step = note.getPitch().getStep().name();
      BigDecimal alter = note.getPitch().getAlter();
      int sounding = alter == null ? 0 : alter.intValueExact();
      int pitch =
          12 * (note.getPitch().getOctave() + 1)
              + List.of(0, 2, 4, 5, 7, 9, 11).get("CDEFGAB".indexOf(step))
              + sounding;
      boolean goesOn = note.getTie().stream().anyMatch(t -> t.getType() == StartStop.STOP);
      if (goesOn) {
        Note before = notes.remove(notes.size() - 1);
        assertEquals(before.endBeats(), at, 1e-9);
        assertEquals(before.pitch(), pitch);
        notes.add(new Note(before.onsetBeats(), before.durationBeats() + quarters, pitch));
        return;
      }
      notes.add(new Note(at, quarters, pitch));
      // Read from paper, by signature and accidentals alone, the note is the same.
      String line = step + note.getPitch().getOctave();
      if (note.getAccidental() != null) {
        printed.put(line, alter(note.getAccidental().getValue()));
      }
      int read = printed.getOrDefault(line, signature.getOrDefault(step, 0));
      assertEquals(sounding, read, "as printed");
    }

    private static int alter(AccidentalValue value) {
      return switch (value) {
        case FLAT -> -1;
        case NATURAL -> 0;
        case SHARP -> 1;
        default -> throw new AssertionError(value);
      };
    }

    private static Map<String, Integer> signature(int fifths) {
      Map<String, Integer> signature = new HashMap<>();
      for (int i = 0; i < Math.abs(fifths); i++) {
        signature.put(
            (fifths > 0 ? "FCGDAEB" : "BEADGCF").substring(i, i + 1), fifths > 0 ? 1 : -1);
      }
      return signature;
    }
  }

  private static void assertSame(List<Note> line, Metre metre, Reading reading, String name) {
    double quarters = metre.quartersPerBeat();
    assertEquals(line.size(), reading.notes.size(), name);
    for (int i = 0; i < line.size(); i++) {
      Note read = reading.notes.get(i);
      assertEquals(line.get(i).pitch(), read.pitch(), name);
      assertEquals(line.get(i).onsetBeats() * quarters, read.onsetBeats(), 1e-9, name);
      assertEquals(line.get(i).durationBeats() * quarters, read.durationBeats(), 1e-9, name);
    }
  }

  /** A line of plain values, dots and tuplets, now and then with a rest or a pick-up. */
  private static List<Note> line(Random random, Chart chart) {
    double quarters = chart.metre().quartersPerBeat();
    double[] cuts = {0.25, 0.5, 0.75, 1, 1, 1.5, 2, 3.5};
    int[] tuplets = {3, 3, 5, 7};
    List<Note> line = new ArrayList<>();
    double at = random.nextBoolean() ? 0 : -Math.min(1, chart.metre().beats() * quarters);
    double end = chart.form().lengthBeats() * quarters;
    while (at < end - 5) {
      boolean onBeat = Math.abs(at / quarters - Math.rint(at / quarters)) < 1e-9;
      if (onBeat && random.nextInt(4) == 0) {
        int tuplet = tuplets[random.nextInt(tuplets.length)];
        double start = Math.rint(at / quarters) * quarters;
        for (int i = 0; i < tuplet; i++) {
          if (random.nextInt(5) > 0) {
            line.add(note(random, start + i * quarters / tuplet, quarters / tuplet, quarters));
          }
        }
        at = start + quarters;
      } else {
        double length = cuts[random.nextInt(cuts.length)];
        if (random.nextInt(4) > 0) {
          line.add(note(random, at, length, quarters));
        }
        at += length;
      }
    }
    return line;
  }

  private static Note note(Random random, double at, double length, double quartersPerBeat) {
    return new Note(at / quartersPerBeat, length / quartersPerBeat, 55 + random.nextInt(25));
  }

  @Test
  void someone_else_reads_the_same_notes_in_bars_that_are_full() throws Exception {
    MusicXmlSchema schema = new MusicXmlSchema();
    List<String> metres = List.of("4/4", "3/4", "6/8", "2/2", "12/8", "5/4", "7/8", "2/4");
    for (int seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      String metre = metres.get(seed % metres.size());
      List<String> keys = List.of("Eb", "C#m", "F", "Gb", "D", "Am", "B");
      Chart chart =
          chart(
              "metre: " + metre + "\nkey: " + keys.get(seed % keys.size()),
              "| C | Ebmaj7 | F#m7b5 | B7 | Db7 | Am7 | D7alt | G6 |");
      List<Note> line = line(random, chart);
      String xml = MusicXmlMelody.write(sheet(chart, line));
      schema.validate(xml);
      Reading reading = new Reading(xml);
      assertSame(line, chart.metre(), reading, "seed " + seed);
      double bar = chart.metre().beats() * chart.metre().quartersPerBeat();
      List<Double> full =
          reading.barQuarters.subList(reading.barQuarters.size() - 8, reading.barQuarters.size());
      full.forEach(quarters -> assertEquals(bar, quarters, 1e-9));
    }
  }

  @Test
  void chords_stand_at_their_places_over_held_notes_too() throws Exception {
    Chart chart = chart("key: C\nmetre: 4/4", "| Dm7 G7 | C6 A7 |");
    Reading reading = new Reading(xml(chart, "D5/3 E5 G4/4"));
    assertEquals(List.of("D@0.0", "G@2.0", "C@4.0", "A@6.0"), reading.roots);
  }

  @Test
  void what_is_off_the_beat_is_tied_over_it_and_so_is_the_bar_line() throws Exception {
    Chart chart = chart("key: C\nmetre: 4/4", "| Dm7 | G7 |");
    String xml = xml(chart, "-/0.5 D5 E5 F5/2.5 G4/2");
    // D and E over the beats, F over the third and the bar line: four ties.
    assertEquals(4, xml.split("<tie type=\"start\"/>", -1).length - 1);
    assertSame(
        IdeaNotation.parse("-/0.5 D5 E5 F5/2.5 G4/2"), chart.metre(), new Reading(xml), "ties");
  }

  @Test
  void a_pick_up_stands_in_a_short_bar_before_bar_one() throws Exception {
    Chart chart = chart("key: C\nmetre: 4/4", "| Am7 | D7 |");
    String xml = xml(chart, "G4/0.5 | A4/0.75 C5/0.25 A4 G4/1.5");
    assertTrue(xml.contains("<measure number=\"0\" implicit=\"yes\">"));
    Reading reading = new Reading(xml);
    assertEquals(List.of(0.5, 4.0, 4.0), reading.barQuarters);
    assertEquals(List.of("A@0.0", "D@4.0"), reading.roots);
    assertEquals(-0.5, reading.notes.get(0).onsetBeats());
  }

  @Test
  void a_solo_of_two_choruses_goes_on_counting_bars() throws Exception {
    Chart chart = chart("key: C\nmetre: 4/4", "| Am7 | D7 |");
    Reading reading = new Reading(xml(chart, "A4/4 D4/4 E4/4 F#4/4"));
    assertEquals(4, reading.barQuarters.size());
    assertEquals(List.of("A@0.0", "D@4.0", "A@8.0", "D@12.0"), reading.roots);
  }

  @Test
  void played_notes_are_written_in_the_rhythm_that_was_meant() throws Exception {
    Chart chart = chart("key: C\nmetre: 4/4", "| Am7 | D7 |");
    List<Note> played =
        List.of(new Note(0.03, 0.43, 69), new Note(0.52, 0.5, 72), new Note(0.98, 1.1, 74));
    Reading reading = new Reading(MusicXmlMelody.write(sheet(chart, played)));
    assertSame(IdeaNotation.parse("A4/0.5 C5/0.5 D5"), chart.metre(), reading, "played");
  }

  @Test
  void eighths_of_a_beat_are_beamed_and_a_sixteenth_hooks_back() throws Exception {
    Chart chart = chart("key: C\nmetre: 4/4", "| Am7 |");
    String xml = xml(chart, "A4/0.75 C5/0.25 D5/0.5 E5/0.5 A4");
    ScorePartwise score =
        (ScorePartwise)
            Marshalling.unmarshal(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    List<List<String>> beams = new ArrayList<>();
    for (Object child : score.getPart().get(0).getMeasure().get(0).getNoteOrBackupOrForward()) {
      if (child instanceof org.audiveris.proxymusic.Note note && note.getPitch() != null) {
        beams.add(note.getBeam().stream().map(Beam::getValue).map(v -> v.value()).toList());
      }
    }
    assertEquals(
        List.of(
            List.of("begin"),
            List.of("end", "backward hook"),
            List.of("begin"),
            List.of("end"),
            List.of()),
        beams);
  }

  @Test
  void words_stand_above_their_beat_and_the_schema_holds_them() throws Exception {
    Chart chart = chart("key: C\nmetre: 4/4", "[A]\n| Am7 | D7 |");
    MelodySheet plain = sheet(chart, IdeaNotation.parse("A4/4 D4/4"));
    String xml =
        MusicXmlMelody.write(
            new MelodySheet(
                "a & b",
                plain.form(),
                plain.key(),
                plain.tempo(),
                plain.notes(),
                List.of(new MelodySheet.Words(5, "sequence"))));
    new MusicXmlSchema().validate(xml);
    assertTrue(xml.contains("<words>sequence</words>"));
    assertTrue(xml.contains("<rehearsal>A</rehearsal>"));
    assertTrue(xml.contains("<work-title>a &amp; b</work-title>"));
  }

  @Test
  void notes_out_of_order_and_wrong_names_are_refused() {
    Chart chart = chart("key: C\nmetre: 4/4", "| Am7 |");
    assertThrows(
        IllegalArgumentException.class,
        () -> sheet(chart, List.of(new Note(1, 1, 60), new Note(0, 1, 60))));
    assertThrows(
        IllegalArgumentException.class, () -> sheet(chart, List.of(new Note(-4.5, 1, 60))));
    assertThrows(
        IllegalArgumentException.class,
        () -> new MelodySheet.NamedNote(new Note(0, 1, 60), holdfast.theory.NoteName.parse("D")));
  }
}
