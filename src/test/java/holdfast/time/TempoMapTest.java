package holdfast.time;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Beats and seconds by the definition of tempo: beats a minute. */
class TempoMapTest {

  @Test
  void at_sixty_a_beat_is_a_second() {
    TempoMap map = TempoMap.steady(60, 2);
    assertEquals(2, map.secondsAt(0), 1e-12);
    assertEquals(-3, map.beatAt(-1), 1e-12);
    assertEquals(7.5, map.beatAt(9.5), 1e-12);
  }

  @Test
  void each_point_holds_until_the_next_and_two_at_one_place_mean_the_later() {
    TempoMap map =
        new TempoMap(
            List.of(
                new TempoMap.Point(0, 0, 60),
                new TempoMap.Point(4, 4, 30),
                new TempoMap.Point(4, 4, 120),
                new TempoMap.Point(8, 6, 240)));
    assertEquals(3, map.beatAt(3), 1e-12);
    assertEquals(6, map.beatAt(5), 1e-12);
    assertEquals(5, map.secondsAt(6), 1e-12);
    assertEquals(12, map.beatAt(7), 1e-12);
  }

  @Test
  void beats_come_back_from_seconds_over_thousands_of_tempo_changes() {
    List<TempoMap.Point> points = new ArrayList<>();
    double seconds = 0;
    for (int beat = 0; beat < 5000; beat++) {
      double tempo = 50 + beat * 37 % 60;
      points.add(new TempoMap.Point(beat, seconds, tempo));
      seconds += 60 / tempo;
    }
    TempoMap map = new TempoMap(points);
    for (double beat = -2; beat < 5005; beat += 0.37) {
      assertEquals(beat, map.beatAt(map.secondsAt(beat)), 1e-9);
    }
  }
}
