package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.ToneClass;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Words for scores: quartiles of expert solos in the chord-fit calibration of the trade tables. */
class FitWordsTest {

  private static HeardNote heard(NoteRole role, double sits, double logOdds, double weight) {
    return new HeardNote(
        new Note(0, 1, 60),
        Harmony.parse("C"),
        ToneClass.CHORD_TONE,
        role,
        Optional.empty(),
        sits,
        logOdds,
        weight);
  }

  private static Fit fit(int notes, double sits, double logOdds) {
    return Fit.of(Collections.nCopies(notes, heard(NoteRole.CHORD_TONE, sits, logOdds, 1)))
        .orElseThrow();
  }

  /** The log-odds that make a line of plain chord tones come to this score. */
  private static Fit scoring(int notes, double score) {
    double low = -3;
    double high = 3;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (fit(notes, 1, middle).score() < score) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return fit(notes, 1, high);
  }

  @Test
  void a_chorus_has_five_words_by_the_quartiles_of_experts() {
    assertEquals(FitWord.RINGS, scoring(64, 0.91).word());
    assertEquals(FitWord.SITS, scoring(64, 0.90).word());
    assertEquals(FitWord.SITS, scoring(64, 0.84).word());
    assertEquals(FitWord.MOSTLY_SITS, scoring(64, 0.83).word());
    assertEquals(FitWord.MOSTLY_SITS, scoring(64, 0.78).word());
    assertEquals(FitWord.RUBS, scoring(64, 0.77).word());
    assertEquals(FitWord.PULLS_AGAINST, scoring(64, 0.69).word());
    assertEquals(FitWord.MOSTLY_SITS, scoring(500, 0.78).word(), "longer than a chorus");
  }

  @Test
  void sixteen_notes_scatter_more_and_lines_between_lie_between() {
    assertEquals(FitWord.SITS, scoring(16, 0.91).word());
    assertEquals(FitWord.RINGS, scoring(16, 0.925).word());
    assertEquals(FitWord.MOSTLY_SITS, scoring(16, 0.76).word());
    assertEquals(FitWord.RUBS, scoring(64, 0.76).word());
    // Half-way in doublings, thirty-two notes: the upper quarter lies at .912.
    assertEquals(FitWord.SITS, scoring(32, 0.911).word());
    assertEquals(FitWord.RINGS, scoring(32, 0.913).word());
  }

  @Test
  void a_phrase_has_three_words() {
    assertEquals(FitWord.SITS, scoring(15, 0.93).word(), "a phrase does not ring");
    assertEquals(FitWord.SITS, scoring(5, 0.86).word());
    assertEquals(FitWord.RUBS, scoring(5, 0.84).word());
    assertEquals(FitWord.RUBS, scoring(5, 0.70).word());
    assertEquals(FitWord.PULLS_AGAINST, scoring(5, 0.68).word());
    assertTrue(scoring(5, 0.86).sits() && !scoring(5, 0.84).sits());
    assertTrue(scoring(16, 0.76).sits() && !scoring(64, 0.76).sits());
  }

  @Test
  void one_note_held_against_its_chord_is_remembered_of_a_short_phrase_only() {
    assertFalse(withOneHeld(5).sits());
    assertTrue(withOneHeld(40).sits());
  }

  private static Fit withOneHeld(int notes) {
    return Fit.of(
            IntStream.range(0, notes)
                .mapToObj(
                    i -> heard(i == 2 ? NoteRole.HELD_AGAINST : NoteRole.CHORD_TONE, 1, 0.45, 1))
                .toList())
        .orElseThrow();
  }

  @Test
  void the_best_is_never_exhausted_and_the_worst_is_nought() {
    double before = 0;
    for (double odds = 0; odds <= 1.5; odds += 0.25) {
      double score = fit(20, 1, odds).score();
      assertTrue(score > before && score < 1, "" + score);
      before = score;
    }
    assertEquals(0, fit(20, 0, -9).score());
    // The bend is smooth: just above it the score still grows as fast as just below.
    double below = scoring(20, 0.8999).score();
    double step = fit(20, 1, 0.1873).score() - fit(20, 1, 0.1863).score();
    assertEquals(0.9, below, 0.001);
    assertEquals(0.39 * 0.001, step, 1e-5);
  }

  @Test
  void a_note_counts_by_its_weight_and_one_without_a_chord_not_at_all() {
    HeardNote good = heard(NoteRole.CHORD_TONE, 1, 0.4, 2);
    HeardNote bad = heard(NoteRole.OUTSIDE, 0.2, -1, 1);
    HeardNote silent = heard(NoteRole.UNJUDGED, 0, 0, 0);
    double mixed = Fit.of(List.of(good, bad)).orElseThrow().score();
    assertEquals(fit(2, (2 * 1 + 0.2) / 3, (2 * 0.4 - 1) / 3).score(), mixed, 1e-12);
    assertEquals(mixed, Fit.of(List.of(good, silent, bad)).orElseThrow().score(), 1e-12);
    assertTrue(Fit.of(List.of(silent)).isEmpty());
  }

  @Test
  void a_score_lies_between_nought_and_one() {
    assertEquals(
        "a fit's score must be 0 to 1, not 1.5",
        assertThrows(IllegalArgumentException.class, () -> new Fit(1.5, FitWord.SITS))
            .getMessage());
    assertThrows(IllegalArgumentException.class, () -> new Fit(-0.1, FitWord.SITS));
    assertThrows(IllegalArgumentException.class, () -> new Fit(Double.NaN, FitWord.SITS));
    assertEquals(1, new Fit(1, FitWord.RINGS).score());
    assertEquals(0, new Fit(0, FitWord.PULLS_AGAINST).score());
  }
}
