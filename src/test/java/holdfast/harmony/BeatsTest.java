package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.time.Metre;
import org.junit.jupiter.api.Test;

/** Strong and weak places of the bar; common practice, no source. */
class BeatsTest {

  private static Beats.Place place(int beats, int unit, double beat) {
    return new Beats(new Metre(beats, unit)).place(beat);
  }

  @Test
  void in_common_time_the_one_is_strongest_then_the_three() {
    assertEquals(Beats.Place.DOWNBEAT, place(4, 4, 8));
    assertEquals(Beats.Place.OTHER_BEAT, place(4, 4, 5));
    assertEquals(Beats.Place.MID_BAR, place(4, 4, 6));
    assertEquals(Beats.Place.OTHER_BEAT, place(4, 4, 7));
    assertEquals(Beats.Place.OFF_BEAT, place(4, 4, 4.5));
    assertEquals(Beats.Place.OTHER_BEAT, place(4, 4, -1), "a pick-up");
  }

  @Test
  void three_or_two_beats_have_no_middle_and_six_have_theirs_on_the_four() {
    assertEquals(Beats.Place.OTHER_BEAT, place(3, 4, 1));
    assertEquals(Beats.Place.OTHER_BEAT, place(3, 4, 2));
    assertEquals(Beats.Place.DOWNBEAT, place(3, 4, 3));
    assertEquals(Beats.Place.OTHER_BEAT, place(2, 2, 1));
    assertEquals(Beats.Place.MID_BAR, place(6, 8, 3));
    assertEquals(Beats.Place.OTHER_BEAT, place(6, 8, 2));
  }

  @Test
  void a_note_is_on_the_beat_within_what_players_scatter() {
    assertEquals(Beats.Place.DOWNBEAT, place(4, 4, 3.95));
    assertEquals(Beats.Place.DOWNBEAT, place(4, 4, 4.05));
    assertEquals(Beats.Place.OFF_BEAT, place(4, 4, 4.25));
    assertEquals(Beats.Place.DOWNBEAT, place(6, 8, 6.2), "a fifth of an eighth note");
    assertEquals(Beats.Place.OFF_BEAT, place(2, 2, 2.125), "a quarter of a quarter note");
  }

  @Test
  void beats_and_quarters_go_by_the_metres_unit() {
    Beats eighths = new Beats(new Metre(6, 8));
    assertEquals(3, eighths.quarters(6));
    assertEquals(6, eighths.beats(3));
    assertEquals(4, new Beats(new Metre(2, 2)).quarters(2));
  }
}
