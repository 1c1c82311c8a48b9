package holdfast.listening.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayedNote;
import holdfast.listening.alignment.BackingPlace.Sureness;
import holdfast.listening.audio.EarSound;
import holdfast.session.DemoTake;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Made-up recordings, whose bar 1 and speed are known because the test itself mixed them. */
class AlignmentTest {

  private static final double BAR_ONE_SECONDS = 0.030;
  private static final double SPEED = 0.001;

  private static final KnownBacking FERRY = remembered("slow-ferry");

  /** Rendered once for all tests. */
  private static KnownBacking remembered(String chart) {
    KnownBacking known = Mixture.known(chart, 3);
    RenderedBacking sound = known.rendered().apply(1);
    return new KnownBacking(
        ratio -> ratio == 1 ? sound : known.rendered().apply(ratio),
        known.barOneSeconds(),
        known.beatSeconds(),
        known.chorusSeconds());
  }

  private static Mixture.Wish wish() {
    return Mixture.Wish.usual("slow-ferry", 5).lasting(36);
  }

  private static void assertFound(Mixture.Wish wish) {
    Mixture made = Mixture.of(wish);
    BackingPlace found = BackingFinder.find(EarSound.of(made.samples()), FERRY);
    assertEquals(made.barOneSeconds(), found.barOneSeconds(), BAR_ONE_SECONDS);
    assertEquals(made.stretch(), found.stretch(), SPEED);
    assertEquals(Sureness.SURE, found.sureness());
    assertTrue(found.ourSound());
  }

  @ParameterizedTest(name = "the backing {0} dB over the voice")
  @CsvSource({"6", "-12", "-24"})
  void bar_1_and_speed_are_found_whether_the_speaker_is_loud_or_barely_heard(double level) {
    assertFound(wish().backing(wish().voiceDb() + level));
  }

  @ParameterizedTest(name = "a clock {0} times as slow")
  @CsvSource({"1.0001", "0.97"})
  void another_speed_is_measured(double stretch) {
    assertFound(wish().clock(stretch).backing(-32));
  }

  @Test
  void another_tempo_at_the_same_pitch_is_measured() {
    assertFound(wish().tempo(1.03));
  }

  @Test
  void walls_and_noise_do_not_matter() {
    assertFound(wish().room(0.8).noise(-34).backing(-26));
  }

  @Test
  void a_recorder_that_was_started_long_before_or_in_the_middle_finds_the_same_bar_1() {
    assertFound(wish().from(-9));
    assertFound(wish().from(10.4));
  }

  @Test
  void a_backing_that_stops_is_not_looked_for_behind_its_end() {
    // Two choruses end 75.6 s after the beginning; the third is in the rendering only.
    assertEquals(OptionalInt.of(2), roundsIn(wish().lasting(79)));
    assertEquals(OptionalInt.empty(), roundsIn(wish().lasting(60)));
    assertEquals(OptionalInt.of(2), roundsIn(wish().clock(1.0001).backing(-38).lasting(78)));
  }

  private static OptionalInt roundsIn(Mixture.Wish wish) {
    return BackingFinder.find(EarSound.of(Mixture.of(wish).samples()), FERRY).rounds();
  }

  @Test
  void without_any_backing_nothing_is_sure() {
    Mixture made = Mixture.of(wish().backing(-200).noise(-40));
    BackingPlace found = BackingFinder.find(EarSound.of(made.samples()), FERRY);
    assertEquals(Sureness.UNSURE, found.sureness());
    assertTrue(!found.ourSound());
  }

  @ParameterizedTest
  @CsvSource({"lantern-turn", "kettle-minor"})
  void over_another_chart_nothing_is_sure(String played) {
    Mixture made = Mixture.of(Mixture.Wish.usual(played, 5).lasting(36));
    BackingPlace found = BackingFinder.find(EarSound.of(made.samples()), FERRY);
    assertNotEquals(Sureness.SURE, found.sureness());
  }

  @Test
  void a_place_that_the_user_names_is_tightened_where_the_backing_is_heard() {
    Mixture made = Mixture.of(wish());
    BackingPlace near =
        BackingFinder.near(EarSound.of(made.samples()), FERRY, made.barOneSeconds() + 0.15);
    assertEquals(made.barOneSeconds(), near.barOneSeconds(), 0.002);
  }

  @Test
  void the_line_alone_tells_bar_1_where_it_fits_its_chords() {
    var performance = Mixture.performance("slow-ferry", 2, 1);
    List<PlayedNote> notes =
        DemoTake.over(performance.arrangement()).played(performance.tempoMap()).stream()
            .map(
                n ->
                    new PlayedNote(
                        n.onsetSeconds() + 7.3, n.durationSeconds(), n.pitch(), 0, 0.7, 0.9))
            .toList();
    LineFinder.Guess guess =
        LineFinder.find(
            notes, performance.arrangement().changes(), 60 / performance.arrangement().tempo());
    assertEquals(7.3, guess.barOneSeconds(), BAR_ONE_SECONDS);
  }
}
