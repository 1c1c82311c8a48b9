package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Keys, spelling and transposition: rules of notation that every handbook of theory prints. */
class KeyTest {

  @ParameterizedTest
  @CsvSource({
    "C,0",
    "G,1",
    "D,2",
    "A,3",
    "E,4",
    "B,5",
    "F#,6",
    "C#,7",
    "F,-1",
    "Bb,-2",
    "Eb,-3",
    "Ab,-4",
    "Db,-5",
    "Gb,-6",
    "Cb,-7",
    "Am,0",
    "Em,1",
    "Bm,2",
    "F#m,3",
    "C#m,4",
    "G#m,5",
    "D#m,6",
    "Dm,-1",
    "Gm,-2",
    "Cm,-3",
    "Fm,-4",
    "Bbm,-5",
    "Ebm,-6",
    "Dm (Dorian),0",
    "E Phrygian,0",
    "F Lydian,0",
    "G Mixolydian,0",
    "B Locrian,0",
    "Gm (Dorian),-1",
    "A minor,0",
    "Eb major,-3",
    "E♭,-3"
  })
  void a_key_has_its_signature_on_the_circle_of_fifths(String text, int fifths) {
    assertEquals(fifths, Key.parse(text).fifths());
  }

  @ParameterizedTest
  @ValueSource(strings = {"Eb", "Cm", "Dm (Dorian)", "F (Lydian)", "F#m", "Bb (Mixolydian)"})
  void a_key_prints_as_it_is_typed(String text) {
    assertEquals(text, Key.parse(text).text());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "H", "Cmm", "C (Klingon)", "Cm (Lydian)", "7", "Ebmaj7"})
  void a_text_that_is_no_key_is_refused_in_a_sentence(String text) {
    String message =
        assertThrows(IllegalArgumentException.class, () -> Key.parse(text)).getMessage();
    assertTrue(message.startsWith("“" + text + "” is no key; write "), message);
  }

  @ParameterizedTest
  @CsvSource({
    "C,C D E F G A B",
    "Eb,Eb F G Ab Bb C D",
    "E,E F# G# A B C# D#",
    "Gb,Gb Ab Bb Cb Db Eb F",
    "Cm,C D Eb F G Ab Bb",
    "C#m,C# D# E F# G# A B",
    "Dm (Dorian),D E F G A B C",
    "B (Locrian),B C D E F G A",
    "F#,F# G# A# B C# D# E#"
  })
  void a_key_spells_its_scale_with_each_letter_once(String key, String names) {
    Key read = Key.parse(key);
    assertEquals(
        List.of(names.split(" ", -1)).stream().sorted().toList(),
        read.scale().stream().mapToObj(read::spell).map(NoteName::text).sorted().toList());
  }

  @ParameterizedTest
  @CsvSource({"C,6,F#", "C,10,Bb", "Cm,11,B", "Am,8,G#", "Eb,9,A", "E,2,D", "Db,11,Cb", "Db,2,D"})
  void a_note_foreign_to_the_key_takes_the_name_that_its_chords_give_it(
      String key, int pitchClass, String name) {
    assertEquals(name, Key.parse(key).spell(pitchClass).text());
  }

  @Test
  void no_key_needs_a_double_accidental_for_a_note() {
    for (String tonic : "C Db D Eb E F F# Gb G Ab A Bb B C#".split(" ", -1)) {
      for (Mode mode : Mode.values()) {
        Key key = new Key(NoteName.parse(tonic), mode);
        IntStream.range(0, 12)
            .forEach(
                pc -> {
                  assertEquals(pc, key.spell(pc).pitchClass());
                  assertTrue(Math.abs(key.spell(pc).alter()) <= 1);
                });
      }
    }
  }

  @Test
  void up_a_minor_third_from_e_flat_is_g_flat() {
    assertEquals("Gb", NoteName.parse("Eb").transpose(Interval.MINOR_THIRD).text());
    assertEquals("F#", NoteName.parse("D#").transpose(Interval.MINOR_THIRD).text());
    assertEquals("Gb7", ChordSymbol.parse("Eb7").transpose(Interval.MINOR_THIRD).text());
  }

  @Test
  void a_transposed_chord_avoids_double_accidentals() {
    assertEquals("A7", ChordSymbol.parse("Gb7").transpose(Interval.MINOR_THIRD).text());
    assertEquals("A7/C#", ChordSymbol.parse("Gb7/Bb").transpose(Interval.MINOR_THIRD).text());
  }

  @Test
  void an_interval_and_back_is_home_again() {
    for (Letter from : Letter.values()) {
      for (Letter to : Letter.values()) {
        for (int alter = -1; alter <= 1; alter++) {
          NoteName start = new NoteName(from, alter);
          Interval way = Interval.up(start, new NoteName(to, -alter));
          assertEquals(new NoteName(to, -alter), start.transpose(way));
          assertEquals(start, start.transpose(way).transpose(way.reversed()));
        }
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "D,MINOR_THIRD,F",
    "B,MAJOR_SECOND,Db",
    "Gb,MAJOR_SECOND,Ab",
    "Cm,MAJOR_SIXTH,Am",
    "Ab,MAJOR_SIXTH,F",
    "G#m,MAJOR_SECOND,Bbm",
    "E,MAJOR_SIXTH,Db"
  })
  void a_transposed_key_takes_the_smaller_signature(String from, String interval, String to)
      throws ReflectiveOperationException {
    Interval way = (Interval) Interval.class.getField(interval).get(null);
    assertEquals(Key.parse(to), Key.parse(from).transpose(way));
  }

  @ParameterizedTest
  @CsvSource({
    // The substitute dominant of E flat is typed E7#11; a chart in E writes it F7#11, not E#7#11.
    "E7#11,Eb,E,F7#11", "E7#11,Eb,C,C#7#11", "E7#11,Eb,F,F#7#11", "B7/D#,E,F#,C#7/E#",
    "Dm7b5,Eb,F#,E#m7b5", "Abmaj7,Eb,Gb,Cbmaj7", "Fm7,Eb,Db,Ebm7", "N.C.,C,D,N.C.",
    "(E7),C,D,(F#7)", "Gb7,Eb,Db,E7"
  })
  void a_chord_is_spelled_as_a_chart_in_its_new_key_would(
      String chord, String from, String to, String there) {
    Key key = Key.parse(to);
    Interval way = Interval.up(Key.parse(from).tonic(), key.tonic());
    assertEquals(there, Harmony.parse(chord).transpose(way, key).text());
  }

  @ParameterizedTest
  @CsvSource({
    "B_FLAT,Eb,F",
    "E_FLAT,Eb,C",
    "F,Eb,Bb",
    "CONCERT,Eb,Eb",
    "E_FLAT,D,B",
    "B_FLAT,E,F#"
  })
  void a_transposing_instrument_reads_its_own_key(
      WrittenPitch instrument, String sounding, String written) {
    assertEquals(Key.parse(written), Key.parse(sounding).transpose(instrument.aboveSounding()));
  }

  @ParameterizedTest
  @CsvSource({
    "C,Abmaj7,63,Eb4",
    "C,E7,68,G#4",
    "C,Dm7,61,C#4",
    "Eb,Abm6,71,B4",
    "Eb,Fm7,68,Ab4",
    "G,D#°7,63,D#4",
    "C,G7b9,68,Ab4",
    "Gb,Cbmaj7,71,Cb5",
    "C,N.C.,66,F#4"
  })
  void a_melody_note_is_named_by_its_key_then_by_its_chord(
      String key, String chord, int midi, String name) {
    Spelling spelling = new Spelling(Optional.of(Key.parse(key)), Harmony.parse(chord));
    // The C flat of A flat minor sixth over a key of E flat: the chord calls it C flat.
    String expected = chord.equals("Abm6") ? "Cb5" : name;
    assertEquals(expected, spelling.pitch(midi).text());
    assertEquals(midi, spelling.pitch(midi).midi());
  }

  @ParameterizedTest
  @CsvSource({"C4,60", "A4,69", "Eb4,63", "B#3,60", "Cb4,59", "C-1,0", "G9,127", "F#2,42"})
  void a_spelled_pitch_is_a_midi_note_with_middle_c_at_60(String text, int midi) {
    // Scientific pitch notation, with C4 = 60 as MusicXML and most makers count it.
    assertEquals(midi, SpelledPitch.parse(text).midi());
    assertEquals(text, SpelledPitch.parse(text).text());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "H4", "C", "C10", "G#9", "Cb-1", "4", "Eb 4"})
  void a_text_that_is_no_pitch_is_refused(String text) {
    assertThrows(IllegalArgumentException.class, () -> SpelledPitch.parse(text));
  }
}
