package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.theory.Harmony;
import holdfast.theory.Interval;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import holdfast.theory.PitchClassSet;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TranspositionTest {

  /** The tonics that charts are written in. */
  private static final List<String> TONICS =
      List.of("C", "Db", "D", "Eb", "E", "F", "F#", "Gb", "G", "Ab", "A", "Bb", "B");

  private static Chart inKey(String key) {
    return ChartText.parse("title: T\nkey: " + key + "\n| C |", "test");
  }

  private static String bars(Chart chart) {
    String text = ChartText.print(chart);
    return text.substring(text.indexOf('|')).strip();
  }

  static Stream<List<String>> instruments() {
    return Facts.rows("transposing-instruments.txt").stream();
  }

  @ParameterizedTest
  @MethodSource("instruments")
  void a_chart_is_written_for_an_instrument_in_its_key(List<String> row) {
    WrittenFor instrument = new WrittenFor(NoteName.parse(row.get(0)));
    int down = -instrument.fromSoundingToWritten().semitones();
    assertEquals(Math.floorMod(Integer.parseInt(row.get(1)), 12), Math.floorMod(down, 12));
    List<String> sounding = List.of("C", "F", "Ab");
    for (int i = 0; i < sounding.size(); i++) {
      Chart written = Transposition.writtenFor(inKey(sounding.get(i)), instrument);
      assertEquals(row.get(2 + i), written.key().orElseThrow().text());
      assertEquals(instrument, written.heading().writtenFor());
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '>',
      value = {
        // Common practice, no source: each worked out by hand, letter by letter.
        "Eb > C  > | Ebmaj7 C7 | Fm7 Bb7 | Gb7/Bb B7 | Am7b5 D7b9 | > "
            + "| Cmaj7 A7 | Dm7 G7 | Eb7/G G#7 | F#m7b5 B7b9 |",
        "C  > Gb > | Cmaj7 Am7 | Dm7 G7 | Em7 A7/C# |               > "
            + "| Gbmaj7 Ebm7 | Abm7 Db7 | Bbm7 Eb7/G |",
        "C  > F# > | Cmaj7 Am7 | Dm7 G7 | Em7 A7/C# |               > "
            + "| F#maj7 D#m7 | G#m7 C#7 | A#m7 D#7/G |",
        "Cm > Am > | Cm7 Abmaj7 | Dbmaj7 G7alt |                    > "
            + "| Am7 Fmaj7 | Bbmaj7 E7alt |",
        "F  > Db > | Fmaj7 N.C. | Dbmaj7 (C7) | %% |                > "
            + "| Dbmaj7 N.C. | Amaj7 (Ab7) | %% |"
      })
  void chords_move_by_letters_with_their_key(String from, String to, String bars, String expected) {
    Chart chart = ChartText.parse("title: T\nkey: " + from.strip() + "\n" + bars, "test");
    Chart there = Transposition.to(chart, Key.parse(to.strip()).tonic());
    assertEquals(to.strip(), there.key().orElseThrow().text());
    // A root with a double flat is written as players read it: A for Bbb.
    assertEquals(expected.strip(), bars(there));
  }

  @Test
  void every_shipped_chart_comes_back_from_every_key() {
    for (String name : ChartLibrary.names()) {
      Chart chart = ChartLibrary.open(name);
      NoteName home = chart.key().orElseThrow().tonic();
      for (String tonic : TONICS) {
        Chart there = Transposition.to(chart, NoteName.parse(tonic));
        int up = NoteName.parse(tonic).pitchClass() - home.pitchClass();
        assertEquals(
            pitchClasses(chart).map(set -> set.transpose(up)).toList(),
            pitchClasses(there).toList(),
            name + " in " + tonic);
        Chart back = Transposition.to(there, home);
        assertEquals(pitchClasses(chart).toList(), pitchClasses(back).toList());
        boolean plain =
            roots(there).noneMatch(root -> Math.abs(root.alter()) > 1)
                && isWithinSpelling(chart, there);
        if (plain) {
          assertEquals(chart, back, name + " by way of " + tonic);
        }
      }
    }
  }

  /** Whether every root kept its distance in letters, none being respelled past a double sign. */
  private static boolean isWithinSpelling(Chart chart, Chart there) {
    Interval way =
        Interval.up(chart.key().orElseThrow().tonic(), there.key().orElseThrow().tonic());
    List<NoteName> from = roots(chart).toList();
    List<NoteName> to = roots(there).toList();
    for (int i = 0; i < from.size(); i++) {
      if (from.get(i).letter().plus(way.letterSteps()) != to.get(i).letter()) {
        return false;
      }
    }
    return true;
  }

  private static Stream<PitchClassSet> pitchClasses(Chart chart) {
    return chart.form().changes().stream().map(ChordSpan::harmony).map(Harmony::pitchClasses);
  }

  private static Stream<NoteName> roots(Chart chart) {
    return chart.form().changes().stream()
        .flatMap(span -> span.harmony().chord().stream())
        .map(chord -> chord.root());
  }

  @Test
  void what_sounds_stays_when_a_chart_is_written_for_another_instrument() {
    for (String name : ChartLibrary.names()) {
      Chart chart = ChartLibrary.open(name);
      for (WrittenFor instrument : List.of(WrittenFor.B_FLAT, WrittenFor.E_FLAT, WrittenFor.F)) {
        Chart written = Transposition.writtenFor(chart, instrument);
        assertEquals(chart, written.sounding(), name + " for " + instrument.pitch().text());
        assertEquals(chart.changes(), written.changes());
        assertEquals(
            Transposition.writtenFor(chart, WrittenFor.F),
            Transposition.writtenFor(written, WrittenFor.F));
        assertTrue(Math.abs(written.key().orElseThrow().fifths()) <= 6);
      }
    }
  }

  @Test
  void a_chart_without_a_key_moves_by_intervals_only() {
    Chart chart = ChartText.parse("title: T\n| Dm7 | G7/B |", "test");
    assertEquals("| Fm7 | Bb7/D |", bars(Transposition.by(chart, Interval.MINOR_THIRD)));
    assertThrows(
        IllegalArgumentException.class, () -> Transposition.to(chart, NoteName.parse("F")));
  }
}
