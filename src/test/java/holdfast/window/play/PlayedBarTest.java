package holdfast.window.play;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.backing.BarPlace;
import holdfast.window.Preferences.Hints;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;

class PlayedBarTest {

  private static DoubleFunction<Optional<PlayedBar>> way(int... bars) {
    return beat -> {
      int index = (int) Math.floor(beat / 4);
      return index < bars.length
          ? Optional.of(new PlayedBar(4.0 * index, new BarPlace(1, bars[index])))
          : Optional.empty();
    };
  }

  private static List<Integer> line(double from, DoubleFunction<Optional<PlayedBar>> way) {
    return PlayedBar.line(from, 4, way).stream().map(bar -> bar.place().bar()).toList();
  }

  @Test
  void a_line_holds_four_bars() {
    assertEquals(List.of(1, 2, 3, 4), line(0, way(1, 2, 3, 4, 5, 6)));
    assertEquals(List.of(5, 6), line(16, way(1, 2, 3, 4, 5, 6)));
  }

  @Test
  void a_new_line_begins_where_a_loop_jumps_back() {
    assertEquals(List.of(3, 4, 5), line(0, way(3, 4, 5, 3, 4, 5)));
    assertEquals(List.of(3, 4, 5), line(12, way(3, 4, 5, 3, 4, 5)));
  }

  @Test
  void after_the_last_bar_there_is_no_line() {
    assertEquals(List.of(), line(8, way(1, 2)));
  }

  @Test
  void a_fading_hint_goes_with_success_and_comes_back_when_the_idea_is_lost() {
    HintStrength hint = HintStrength.start(Hints.FADING);
    double before = hint.strength();
    for (int i = 0; i < 6; i++) {
      hint = hint.after(true);
      assertEquals(true, hint.strength() < before);
      before = hint.strength();
    }
    assertEquals(0, hint.strength());
    assertEquals(1, hint.after(false).strength());
    assertEquals(1, HintStrength.start(Hints.ON).after(true).strength());
    assertEquals(0, HintStrength.start(Hints.OFF).after(false).strength());
  }
}
