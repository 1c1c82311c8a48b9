package holdfast.motif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Inversions as theory books define them: by semitones exact, by scale steps tonal. */
class MirrorMapsTest {

  private static final Line IDEA = Lines.even(60, 64, 67, 65);

  private static MirrorMaps mirrors(Ground ground, Line phrase) {
    Ground[] grounds = Lines.everywhere(ground, phrase);
    Scales scales = new Scales();
    return new MirrorMaps(
        phrase,
        grounds,
        new PitchMaps(phrase, grounds, new Intonation(Player.VOICE, 1, true), scales),
        scales);
  }

  private static List<List<Integer>> lines(List<PitchMap> maps, int m) {
    List<List<Integer>> lines = new ArrayList<>();
    for (PitchMap map : maps) {
      List<Integer> line = new ArrayList<>();
      for (int i = 0; i < IDEA.size; i++) {
        line.add(map.expected()[i * m + i]);
      }
      lines.add(line);
    }
    return lines;
  }

  private static List<PitchMap> bySteps(
      Ground home, Ground ground, PitchClassSet key, Line phrase) {
    return mirrors(ground, phrase).bySteps(IDEA, Lines.everywhere(home, IDEA), key, 2);
  }

  @Test
  void c_e_g_f_about_its_first_note_is_c_a_flat_f_g() {
    Line phrase = Lines.even(60, 56, 53, 55);
    List<PitchMap> maps = mirrors(Ground.UNKNOWN, phrase).bySemitones(IDEA, 2);
    assertEquals(List.of(60, 56, 53, 55), lines(maps, 4).get(0));
    assertEquals(0, maps.get(0).semitones());
  }

  @Test
  void about_another_axis_it_begins_elsewhere_and_that_is_rarer() {
    List<PitchMap> maps = mirrors(Ground.UNKNOWN, Lines.even(65, 61, 58, 60)).bySemitones(IDEA, 2);
    assertEquals(List.of(65, 61, 58, 60), lines(maps, 4).get(0));
    assertEquals(5, maps.get(0).semitones());
    double inPlace =
        mirrors(Ground.UNKNOWN, Lines.even(60, 56, 53, 55)).bySemitones(IDEA, 1).get(0).logPrior();
    assertTrue(maps.get(0).logPrior() < inPlace && inPlace < 0);
  }

  @Test
  void all_mirror_images_together_are_certain() {
    double sum = 0;
    for (int by = -36; by <= 36; by++) {
      Line phrase = Lines.even(60 + by, 56 + by, 53 + by, 55 + by);
      PitchMap map = mirrors(Ground.UNKNOWN, phrase).bySemitones(IDEA, 1).get(0);
      assertEquals(by, map.semitones());
      sum += Math.exp(map.logPrior());
    }
    assertEquals(1, sum, 1e-9);
  }

  @Test
  void an_idea_on_one_pitch_has_no_mirror_image() {
    Line one = Lines.even(60, 60, 60);
    assertEquals(List.of(), mirrors(Ground.UNKNOWN, one).bySemitones(one, 2));
    assertEquals(
        List.of(),
        mirrors(Lines.C, one).bySteps(one, Lines.everywhere(Lines.C, one), Lines.C_MAJOR, 2));
  }

  @Test
  void by_scale_steps_in_c_major_c_e_g_f_becomes_c_a_f_g() {
    Line phrase = Lines.even(60, 57, 53, 55);
    for (List<PitchMap> maps :
        List.of(
            bySteps(Ground.UNKNOWN, Ground.UNKNOWN, Lines.C_MAJOR, phrase),
            bySteps(Lines.C, Lines.C, PitchClassSet.EMPTY, phrase),
            bySteps(Ground.UNKNOWN, Ground.UNKNOWN, PitchClassSet.EMPTY, phrase))) {
      assertTrue(lines(maps, 4).contains(List.of(60, 57, 53, 55)), () -> "" + lines(maps, 4));
    }
    PitchMap tonal = bySteps(Lines.C, Lines.C, PitchClassSet.EMPTY, phrase).get(0);
    assertEquals(0, tonal.semitones());
    assertEquals(0, tonal.steps());
  }

  @Test
  void from_one_chords_scale_to_anothers_it_is_mirrored_on_the_new_one() {
    PitchClassSet minor = PitchClassSet.of(0, 2, 3, 5, 7, 8, 10);
    Ground cMinor = new Ground(PitchClassSet.of(0, 3, 7), minor, PitchClassSet.of(0, 2, 3, 7));
    Line phrase = Lines.even(60, 56, 53, 55);
    assertTrue(
        lines(bySteps(Lines.C, cMinor, PitchClassSet.EMPTY, phrase), 4)
            .contains(List.of(60, 56, 53, 55)));
    // A step higher: D B G A in C major.
    PitchMap higher =
        bySteps(Lines.C, Lines.C, PitchClassSet.EMPTY, Lines.even(62, 59, 55, 57)).get(0);
    assertEquals(List.of(62, 59, 55, 57), lines(List.of(higher), 4).get(0));
    assertEquals(2, higher.semitones());
    assertEquals(1, higher.steps());
  }

  @Test
  void a_chromatic_note_lies_as_far_below_its_mirrored_step_as_it_lay_above_its_own() {
    Line idea = Lines.even(60, 63, 67, 64); // E flat: a semitone above D
    Line phrase = Lines.even(60, 58, 53, 57); // a semitone below B
    List<PitchMap> maps =
        mirrors(Ground.UNKNOWN, phrase)
            .bySteps(idea, Lines.everywhere(Ground.UNKNOWN, idea), Lines.C_MAJOR, 2);
    assertTrue(lines(maps, 4).contains(List.of(60, 58, 53, 57)));
  }

  @Test
  void what_was_sung_too_high_is_too_low_in_the_mirror() {
    Line idea =
        Line.of(
            List.of(
                new holdfast.melody.Note(0, 1, 60),
                new holdfast.melody.Note(1, 1, 64, 40),
                new holdfast.melody.Note(2, 1, 67)),
            1);
    double low = inMirror(idea, -40);
    assertTrue(low > inMirror(idea, 0) && low > inMirror(idea, 40));
  }

  private static double inMirror(Line idea, double cents) {
    Line phrase =
        Line.of(
            List.of(
                new holdfast.melody.Note(0, 1, 60),
                new holdfast.melody.Note(1, 1, 56, cents),
                new holdfast.melody.Note(2, 1, 53)),
            1);
    return mirrors(Ground.UNKNOWN, phrase).bySemitones(idea, 1).get(0).notes()[1 * 3 + 1];
  }
}
