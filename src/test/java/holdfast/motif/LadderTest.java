package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.theory.PitchClassSet;
import org.junit.jupiter.api.Test;

/** Steps of scales, as anybody counts them. */
class LadderTest {

  private static final Ladder C_MAJOR = Ladder.of(Lines.C_MAJOR);

  @Test
  void from_c_to_the_c_above_are_seven_steps() {
    assertEquals(7, C_MAJOR.step(72) - C_MAJOR.step(60));
    assertEquals(2, C_MAJOR.step(64) - C_MAJOR.step(60), "C to E");
    assertEquals(-1, C_MAJOR.step(59) - C_MAJOR.step(60), "C down to B");
    assertEquals(7, C_MAJOR.rungsInOctave());
    for (int pitch = 0; pitch <= 127; pitch++) {
      assertEquals(pitch, C_MAJOR.pitch(C_MAJOR.step(pitch)) + C_MAJOR.above(pitch));
    }
  }

  @Test
  void a_note_between_is_the_lower_step_and_a_semitone() {
    assertEquals(C_MAJOR.step(60), C_MAJOR.step(61));
    assertEquals(1, C_MAJOR.above(61));
    assertEquals(0, C_MAJOR.above(62));
  }

  @Test
  void below_the_lowest_rung_of_the_octave_lies_the_highest_of_the_one_below() {
    Ladder pentatonic = Ladder.of(PitchClassSet.of(2, 4, 7, 9, 11)); // G major pentatonic
    assertEquals(pentatonic.step(59), pentatonic.step(60), "C stands on the B below");
    assertEquals(1, pentatonic.above(60));
    assertEquals(2, pentatonic.above(61));
    for (int pitch = 0; pitch <= 127; pitch++) {
      assertEquals(pitch, pentatonic.pitch(pentatonic.step(pitch)) + pentatonic.above(pitch));
    }
  }

  @Test
  void alongside_one_another_the_same_step_is_the_note_with_the_same_letter() {
    Ladder aFlat = Ladder.of(PitchClassSet.of(8, 10, 0, 1, 3, 5, 7)).alongside(C_MAJOR);
    assertEquals(63, aFlat.pitch(C_MAJOR.step(64)), "E becomes E flat");
    assertEquals(70, aFlat.pitch(C_MAJOR.step(71)), "B becomes B flat");
    assertEquals(61, aFlat.pitch(C_MAJOR.step(62)), "D becomes D flat");
    Ladder e = Ladder.of(PitchClassSet.of(4, 6, 8, 9, 11, 1, 3)).alongside(C_MAJOR);
    assertEquals(61, e.pitch(C_MAJOR.step(60)), "C becomes C sharp");
    assertEquals(66, e.pitch(C_MAJOR.step(65)), "F becomes F sharp");
    Ladder gFlat = Ladder.of(PitchClassSet.of(6, 8, 10, 11, 1, 3, 5)).alongside(C_MAJOR);
    assertEquals(59, gFlat.pitch(C_MAJOR.step(60)), "C becomes C flat");
    assertEquals(C_MAJOR.step(60), gFlat.step(59));
  }
}
