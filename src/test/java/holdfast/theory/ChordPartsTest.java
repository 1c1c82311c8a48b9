package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Intervals, signs for no chord, and chords whose names say a function. */
class ChordPartsTest {

  @Test
  void a_fifth_and_a_fourth_are_an_octave_and_a_third_and_a_third_a_fifth() {
    Interval octave = Interval.up(NoteName.parse("C"), NoteName.parse("G")).plus(fourth());
    assertEquals(new Interval(7, 12), octave);
    Interval minorThird = Interval.up(NoteName.parse("E"), NoteName.parse("G"));
    Interval majorThird = Interval.up(NoteName.parse("C"), NoteName.parse("E"));
    assertEquals(Interval.PERFECT_FIFTH, majorThird.plus(minorThird));
    assertEquals(new Interval(0, 0), majorThird.plus(majorThird.reversed()));
  }

  private static Interval fourth() {
    return Interval.up(NoteName.parse("G"), NoteName.parse("C"));
  }

  /** Chord kinds of MusicXML 4.0 that name a function, by the notes that theory books give them. */
  @ParameterizedTest
  @CsvSource({
    "Neapolitan, ''",
    "Italian, 7",
    "German, 7",
    "French, 7b5",
    "Tristan, m7b5",
    "pedal, 5"
  })
  void a_kind_that_names_a_function_sounds_like(String kind, String suffix) {
    assertEquals(ChordKind.read(suffix), MusicXmlKind.nearestSound(kind));
  }

  @Test
  void a_kind_that_names_its_notes_needs_no_nearest_sound() {
    assertEquals(Optional.empty(), MusicXmlKind.nearestSound("dominant"));
    assertEquals(
        ChordKind.read("5"),
        MusicXmlKind.read("other", List.of(new DegreeChange(DegreeChange.Type.ADD, 5, 0))));
  }

  /** Harte and others (ISMIR 2005): N where no chord sounds, X where nobody knows. */
  @Test
  void no_chord_and_an_unknown_one_have_labels_of_their_own() {
    assertSame(NoChord.SILENT, HarteLabel.parse("N"));
    assertSame(NoChord.UNKNOWN, HarteLabel.parse(" X "));
    assertEquals("N", HarteLabel.of(NoChord.SILENT));
    assertEquals("X", HarteLabel.of(NoChord.UNKNOWN));
    assertFalse(NoChord.SILENT.hasChord());
    assertTrue(Harmony.parse("C7").hasChord());
    assertSame(NoChord.SILENT, NoChord.SILENT.transpose(fourth()));
  }
}
