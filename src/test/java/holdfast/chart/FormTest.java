package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class FormTest {

  private static final Form FORM =
      ChartText.parse(
              "title: T\nmetre: 3/4\npickup: 1\n[A]\n| E7 |: Am7 | ! Dm7 |1. E7 :|2. Am7 |\n"
                  + "[B]\n| C6 | % |",
              "test")
          .form();

  @Test
  void bars_are_counted_in_the_form_and_on_the_page() {
    assertEquals(List.of(1, 2, 3, 4, 5, 6, 7, 8), FORM.bars().stream().map(Bar::number).toList());
    assertEquals(
        List.of(1, 2, 3, 1, 2, 4, 5, 6), FORM.bars().stream().map(Bar::writtenNumber).toList());
    assertEquals(List.of(1, 1, 1, 2, 2), FORM.bars().stream().limit(5).map(Bar::pass).toList());
    assertEquals(Optional.of("A"), FORM.bars().get(5).section());
    assertEquals(Optional.of("B"), FORM.bars().get(6).section());
    assertEquals(0, FORM.pickup().orElseThrow().number());
  }

  @Test
  void a_bar_that_is_played_twice_is_unexpected_twice() {
    assertEquals(Set.of(2, 5), FORM.unexpectedBars());
  }

  @Test
  void beats_and_bars_lead_to_each_other() {
    assertEquals(24, FORM.lengthBeats(), 0);
    assertEquals(1, FORM.pickupBeats(), 0);
    for (Bar bar : FORM.bars()) {
      assertEquals(bar.startBeat(), FORM.beatOfBar(bar.number()), 0);
      assertEquals(bar, FORM.barAt(bar.startBeat()));
      assertEquals(bar, FORM.barAt(2 * FORM.lengthBeats() + bar.endBeat() - 0.01));
    }
    assertEquals(-1, FORM.beatOfBar(0), 0);
    assertEquals(FORM.pickup().orElseThrow(), FORM.barAt(-0.5));
    assertThrows(IllegalArgumentException.class, () -> FORM.beatOfBar(9));
  }

  @Test
  void a_beat_falls_into_its_chorus_and_a_pick_up_into_the_first() {
    assertEquals(1, FORM.chorusAt(-1));
    assertEquals(1, FORM.chorusAt(23.9));
    assertEquals(2, FORM.chorusAt(24));
    assertEquals(4, FORM.chorusAt(24 * 3.5));
  }
}
