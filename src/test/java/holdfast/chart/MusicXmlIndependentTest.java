package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.theory.Harmony;
import holdfast.theory.PitchClassSet;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.BackwardForward;
import org.audiveris.proxymusic.Barline;
import org.audiveris.proxymusic.Bass;
import org.audiveris.proxymusic.Degree;
import org.audiveris.proxymusic.Forward;
import org.audiveris.proxymusic.Kind;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.Root;
import org.audiveris.proxymusic.ScorePartwise;
import org.audiveris.proxymusic.StartStopDiscontinue;
import org.audiveris.proxymusic.util.Marshalling;
import org.junit.jupiter.api.Test;

/**
 * Our scores read by someone else: proxymusic 4.0.3, a binding of the MusicXML 4.0 schema that
 * knows nothing of us. What its kinds and degrees sound like is worked out here from the schema's
 * words.
 */
class MusicXmlIndependentTest {

  private static final Map<String, PitchClassSet> KINDS = kinds();

  /** Where a chord stands, in quarter notes from its bar's start, and what it sounds like. */
  record Heard(double quarters, PitchClassSet pitchClasses, int bass) {}

  private static Map<String, PitchClassSet> kinds() {
    Map<String, PitchClassSet> kinds = new HashMap<>();
    for (List<String> row : Facts.rows("musicxml-kinds.txt")) {
      int[] semitones =
          java.util.Arrays.stream(row.get(2).split(" ", -1)).mapToInt(Integer::parseInt).toArray();
      kinds.put(row.get(0), PitchClassSet.of(semitones));
    }
    kinds.put("none", PitchClassSet.EMPTY);
    return kinds;
  }

  private static ScorePartwise score(String xml) throws Exception {
    return (ScorePartwise)
        Marshalling.unmarshal(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
  }

  /** Semitones above C of a scale degree of C major. */
  private static int natural(int degree) {
    return List.of(0, 2, 4, 5, 7, 9, 11).get((degree - 1) % 7);
  }

  private static int pitchClass(String step, BigDecimal alter) {
    int letter = List.of(0, 2, 4, 5, 7, 9, 11).get("CDEFGAB".indexOf(step));
    return Math.floorMod(letter + (alter == null ? 0 : alter.intValueExact()), 12);
  }

  private static List<Heard> heard(ScorePartwise.Part.Measure measure, int[] divisions) {
    List<Heard> heard = new ArrayList<>();
    double at = 0;
    for (Object child : measure.getNoteOrBackupOrForward()) {
      if (child instanceof Attributes attributes && attributes.getDivisions() != null) {
        divisions[0] = attributes.getDivisions().intValueExact();
      } else if (child instanceof Note note) {
        at += note.getDuration().doubleValue() / divisions[0];
      } else if (child instanceof Forward forward) {
        at += forward.getDuration().doubleValue() / divisions[0];
      } else if (child instanceof org.audiveris.proxymusic.Harmony harmony) {
        heard.add(heard(harmony, at));
      }
    }
    return heard;
  }

  private static Heard heard(org.audiveris.proxymusic.Harmony harmony, double at) {
    int root = 0;
    int bass = -1;
    PitchClassSet above = PitchClassSet.EMPTY;
    for (Object child : harmony.getHarmonyChord()) {
      if (child instanceof Root written) {
        root =
            pitchClass(
                written.getRootStep().getValue().name(),
                written.getRootAlter() == null ? null : written.getRootAlter().getValue());
      } else if (child instanceof Kind kind) {
        above = KINDS.get(kind.getValue().value());
      } else if (child instanceof Bass written) {
        bass =
            pitchClass(
                written.getBassStep().getValue().name(),
                written.getBassAlter() == null ? null : written.getBassAlter().getValue());
      } else if (child instanceof Degree degree) {
        above = changed(above, degree);
      }
    }
    return new Heard(at, above.transpose(root), bass < 0 && !above.isEmpty() ? root : bass);
  }

  private static PitchClassSet changed(PitchClassSet above, Degree degree) {
    int number = degree.getDegreeValue().getValue().intValueExact();
    int alter = degree.getDegreeAlter().getValue().intValueExact();
    PitchClassSet plain = PitchClassSet.of(natural(number));
    return switch (degree.getDegreeType().getValue()) {
      case ADD -> above.union(PitchClassSet.of(natural(number) + alter - (number == 7 ? 1 : 0)));
      // All degrees that our table alters are natural in their kinds.
      case ALTER -> above.minus(plain).union(PitchClassSet.of(natural(number) + alter));
      case SUBTRACT -> above.minus(plain);
    };
  }

  /** What the chart says of each bar of the page, the first time it is played. */
  private static List<List<Heard>> expected(Chart chart) {
    Map<Integer, Bar> bars = new java.util.TreeMap<>();
    Form form = chart.formAsWritten();
    form.pickup().ifPresent(bar -> bars.put(0, bar));
    form.bars().forEach(bar -> bars.putIfAbsent(bar.writtenNumber(), bar));
    double quarters = chart.metre().quartersPerBeat();
    return bars.values().stream()
        .map(
            bar ->
                bar.chords().stream()
                    .map(c -> heard(c.harmony(), (c.startBeat() - bar.startBeat()) * quarters))
                    .toList())
        .toList();
  }

  private static Heard heard(Harmony harmony, double at) {
    int bass = harmony.chord().map(chord -> chord.lowest().pitchClass()).orElse(-1);
    return new Heard(at, harmony.standardPitchClasses(), bass);
  }

  private static void assertSameChords(Chart chart) throws Exception {
    ScorePartwise score = score(MusicXmlChart.write(chart));
    List<List<Heard>> expected = expected(chart);
    List<ScorePartwise.Part.Measure> measures = score.getPart().get(0).getMeasure();
    int[] divisions = {1};
    assertEquals(expected.size(), measures.size());
    for (int i = 0; i < measures.size(); i++) {
      List<Heard> heard = heard(measures.get(i), divisions);
      List<Heard> bar = expected.get(i);
      // A chord that goes on from the bar before is not written again.
      int goingOn = bar.size() - heard.size();
      assertEquals(bar.subList(goingOn, bar.size()), heard, chart.title() + " bar " + i);
      assertEquals(goingOn, goesOn(chart, i), chart.title() + " bar " + i);
    }
  }

  /** 1 where a measure's first chord goes on from the one before. */
  private static int goesOn(Chart chart, int measure) {
    int before = 0;
    for (WrittenBar bar : chart.writtenBars()) {
      int after = before + bar.contents().barCount();
      if (measure < after) {
        return bar.contents() instanceof BarContents.Chords chords
                && chords.chords().get(0).harmony().isEmpty()
            ? 1
            : 0;
      }
      before = after;
    }
    throw new AssertionError("no measure " + measure);
  }

  @Test
  void reads_the_same_chords_at_the_same_places_in_the_shipped_charts() throws Exception {
    for (String name : ChartLibrary.names()) {
      assertSameChords(ChartLibrary.open(name));
    }
  }

  @Test
  void reads_the_same_chords_at_the_same_places_in_any_chart() throws Exception {
    for (int seed = 0; seed < 100; seed++) {
      assertSameChords(Charts.ofSeed(seed));
    }
  }

  @Test
  void reads_the_same_repeats_and_endings() throws Exception {
    Chart chart = ChartText.parse("title: T\n|: C |1,2. D :|3. E || F |: G :|4x A |", "test");
    List<String> signs = new ArrayList<>();
    for (var measure : score(MusicXmlChart.write(chart)).getPart().get(0).getMeasure()) {
      StringBuilder text = new StringBuilder();
      for (Object child : measure.getNoteOrBackupOrForward()) {
        if (child instanceof Barline line) {
          if (line.getRepeat() != null) {
            boolean forward = line.getRepeat().getDirection() == BackwardForward.FORWARD;
            text.append(forward ? "|:" : ":|");
            text.append(line.getRepeat().getTimes() == null ? "" : line.getRepeat().getTimes());
          }
          if (line.getEnding() != null) {
            boolean start = line.getEnding().getType() == StartStopDiscontinue.START;
            text.append(start ? "[" + line.getEnding().getNumber() : "]");
          }
        }
      }
      signs.add(text.toString());
    }
    assertEquals(List.of("|:", "[1, 2:|]", "[3]", "", "|::|4", ""), signs);
  }

  @Test
  void what_it_writes_itself_we_read_as_the_same_chart() throws Exception {
    for (String name : ChartLibrary.names()) {
      Chart chart = ChartLibrary.open(name);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      Marshalling.marshal(score(MusicXmlChart.write(chart)), out, true, 2);
      MusicXmlChart.Reading reading = MusicXmlChart.read(out.toByteArray(), name + ".musicxml");
      assertEquals(chart, reading.chart());
    }
  }
}
