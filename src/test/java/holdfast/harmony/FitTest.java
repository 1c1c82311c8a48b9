package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Changes;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What the score and its words promise. */
class FitTest {

  private static double score(String line, String chord) {
    return FitJudge.judge(
            IdeaNotation.parse(line), Changes.vamp(Harmony.parse(chord), Optional.empty()))
        .fit()
        .orElseThrow()
        .score();
  }

  @Test
  void landing_on_a_chord_tone_sits_better_than_landing_beside_one() {
    assertTrue(
        score("D4/0.5 E4/0.5 F4/0.5 G4/2", "Cmaj7") > score("E4/0.5 G4/0.5 E4/0.5 F4/2", "Cmaj7"));
  }

  @Test
  void a_note_that_resolves_sits_better_than_the_same_note_left_by_leap() {
    assertTrue(score("G4/0.5 F#4/0.5 G4 E4", "Cmaj7") > score("G4/0.5 F#4/0.5 C5 E4", "Cmaj7"));
  }

  @Test
  void a_long_clash_weighs_more_than_a_short_one() {
    assertTrue(score("E4 F#4/0.25 C4 G4/2", "C") > score("E4 F#4/2 C4 G4/2", "C"));
  }

  @Test
  void half_of_all_notes_need_not_be_chord_tones_to_sit() {
    // Chord tones are .49 of what experts play (456 solos, Weimar Jazz Database).
    Fit fit =
        FitJudge.judge(
                IdeaNotation.parse("D4/0.5 E4/0.5 F4/0.5 G4/0.5 A4/0.5 G4/0.5 D4/0.5 E4"),
                Changes.vamp(Harmony.parse("Cmaj7"), Optional.empty()))
            .fit()
            .orElseThrow();
    assertEquals(FitWord.SITS, fit.word());
  }

  @Test
  void accents_follow_the_metre() {
    List<Note> line = IdeaNotation.parse("E4 G4 C4 F#4 E4 G4");
    Changes vamp = Changes.vamp(Harmony.parse("C6"), Optional.empty());
    double onTheOne = FitJudge.judge(line, vamp, new Metre(3, 4)).fit().orElseThrow().score();
    double onTheFour = FitJudge.judge(line, vamp, new Metre(4, 4)).fit().orElseThrow().score();
    assertTrue(onTheOne < onTheFour, "a clash on the downbeat is heard more");
  }

  @Test
  void a_chorus_of_the_chords_own_notes_rings_and_one_of_another_key_pulls_against() {
    SplittableRandom random = new SplittableRandom(7);
    int[] home = {60, 64, 67, 71, 62, 69, 67, 64};
    List<Note> line = new ArrayList<>();
    List<Note> elsewhere = new ArrayList<>();
    for (int i = 0; i < 64; i++) {
      int pitch = home[random.nextInt(home.length)];
      line.add(new Note(i * 0.5, 0.4, pitch));
      elsewhere.add(new Note(i * 0.5, 0.4, pitch + 6));
    }
    Changes vamp = Changes.vamp(Harmony.parse("Cmaj7"), Optional.empty());
    assertEquals(FitWord.RINGS, FitJudge.judge(line, vamp).fit().orElseThrow().word());
    assertEquals(FitWord.PULLS_AGAINST, FitJudge.judge(elsewhere, vamp).fit().orElseThrow().word());
  }

  @Test
  void phrases_of_a_chorus_add_up_to_its_fit() {
    Changes vamp = Changes.vamp(Harmony.parse("Cmaj7"), Optional.empty());
    List<HeardNote> good = FitJudge.judge(IdeaNotation.parse("E4 G4 B4 G4"), vamp).notes();
    List<HeardNote> bad = FitJudge.judge(IdeaNotation.parse("F#4 Ab4 Bb4 C#4"), vamp).notes();
    List<HeardNote> both = new ArrayList<>(good);
    both.addAll(bad);
    double sum = Fit.of(both).orElseThrow().score();
    assertTrue(sum < Fit.of(good).orElseThrow().score() && sum > Fit.of(bad).orElseThrow().score());
  }
}
