package holdfast.phrase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.phrase.SoloMaker.Habits;
import holdfast.phrase.TakeMaker.Ear;
import holdfast.time.TempoMap;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the cutter is worth, on made players that nothing was set on. */
class PhraseEndsTest {

  private static final int SOLOS = 60;
  private static final int TAKES = 80;

  private enum Playing {
    JAZZ,
    SPACIOUS,
    STUDENT,
    DETACHED,
    NOISY,
    LONG_LINES;

    Habits habits() {
      return switch (this) {
        case JAZZ -> Habits.JAZZ;
        case SPACIOUS -> Habits.SPACIOUS;
        case STUDENT -> Habits.STUDENT;
        case DETACHED -> Habits.DETACHED;
        case NOISY -> Habits.NOISY;
        case LONG_LINES -> Habits.LONG_LINES;
      };
    }
  }

  /** The rule to be no worse than: a rest longer than 0.30 s. */
  private static Set<Integer> restRule(MadeSolo solo) {
    Set<Integer> firsts = new HashSet<>();
    for (int i = 1; i < solo.notes().size(); i++) {
      double off = solo.notes().get(i - 1).endSeconds();
      if (solo.notes().get(i).onsetSeconds() - off > 0.30) {
        firsts.add(i);
      }
    }
    return firsts;
  }

  @ParameterizedTest
  @EnumSource(Playing.class)
  void without_an_idea_the_cutter_is_no_worse_than_the_rest_rule(Playing playing) {
    SoloMaker maker = new SoloMaker(playing.habits());
    EndScore rule = new EndScore();
    EndScore cutter = new EndScore();
    for (int i = 0; i < SOLOS; i++) {
      MadeSolo solo = maker.make(SoloMaker.HOLD_OUT + i);
      rule.add(solo.firsts(), restRule(solo));
      TempoMap tempo = TempoMap.steady(solo.beatsPerMinute());
      cutter.add(solo.firsts(), PhraseCutter.cut(solo.notes(), tempo, Optional.empty()));
    }
    assertTrue(cutter.f() >= rule.f(), "rule " + rule + ", cutter " + cutter);
    assertEquals(0, cutter.late(), "without an idea every verdict keeps its time");
  }

  /** The only number that is known of real players: F .879 on 456 expert-marked jazz solos. */
  @Test
  void the_made_jazz_solos_are_as_hard_for_the_rest_rule_as_real_ones() {
    SoloMaker maker = new SoloMaker(Habits.JAZZ);
    EndScore rule = new EndScore();
    for (int i = 0; i < 456; i++) {
      MadeSolo solo = maker.make(SoloMaker.HOLD_OUT + i);
      rule.add(solo.firsts(), restRule(solo));
    }
    assertEquals(0.879, rule.f(), 0.02);
  }

  private static EndScore live(TakeMaker maker) {
    EndScore score = new EndScore();
    for (int i = 0; i < TAKES; i++) {
      MadeTake take = maker.make(SoloMaker.HOLD_OUT + i);
      score.add(take.firsts(), cut(take));
    }
    return score;
  }

  private static EndScore inHindsight(TakeMaker maker) {
    EndScore score = new EndScore();
    for (int i = 0; i < TAKES; i++) {
      MadeTake take = maker.make(SoloMaker.HOLD_OUT + i);
      TempoMap tempo = TempoMap.steady(take.beatsPerMinute());
      RhythmCost cost = new RhythmCost(take.notes(), tempo, take.idea());
      score.add(take.firsts(), PhraseRevision.of(cut(take), cost).phrases());
    }
    return score;
  }

  private static List<Phrase> cut(MadeTake take) {
    TempoMap tempo = TempoMap.steady(take.beatsPerMinute());
    return PhraseCutter.cut(take.notes(), tempo, Optional.of(take.idea()));
  }

  private static void assertAtLeast(double goal, EndScore score) {
    assertTrue(score.f() >= goal, "goal " + goal + ": " + score);
  }

  @Test
  void restatements_on_a_keyboard_are_cut_right() {
    EndScore score = live(new TakeMaker(Ear.KEYBOARD, 0, 0, 0));
    assertAtLeast(0.97, score);
    assertTrue(score.late() <= 0.02, score.toString());
  }

  @Test
  void restatements_through_a_microphone_are_cut_right() {
    EndScore score = live(new TakeMaker(Ear.MICROPHONE, 0, 0, 0));
    assertAtLeast(0.92, score);
    assertTrue(score.late() <= 0.03, score.toString());
  }

  @Test
  void hesitations_inside_phrases_do_little_harm() {
    assertAtLeast(0.90, live(new TakeMaker(Ear.KEYBOARD, 0.15, 0, 0)));
  }

  @Test
  void ideas_that_hold_a_rest_and_restatements_that_join_do_little_harm() {
    assertAtLeast(0.94, live(new TakeMaker(Ear.KEYBOARD, 0, 0.1, 0.15)));
    assertAtLeast(0.90, live(new TakeMaker(Ear.MICROPHONE, 0, 0.1, 0.15)));
  }

  @Test
  void hindsight_mends_what_was_broken_by_hesitation_or_joined() {
    assertAtLeast(0.96, inHindsight(new TakeMaker(Ear.KEYBOARD, 0.15, 0, 0)));
    assertAtLeast(0.95, inHindsight(new TakeMaker(Ear.MICROPHONE, 0.15, 0, 0)));
    assertAtLeast(0.95, inHindsight(new TakeMaker(Ear.KEYBOARD, 0, 0.5, 0)));
  }
}
