package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** The grid of a chart: our own frozen output, so that a change of it is seen. */
class ChartGridTest {

  private static final String WEIR =
      """
      -- for the trumpets
      title: Down to the Weir
      key: F
      metre: 3/4
      tempo: 96
      feel: swing
      pickup: 1
      written for: Bb

      [A]
      | C7 |: Fmaj7 | Gm7 / C7 | Am7 D7 / | Gm7 |
      |1. Am7 | ! Abmaj7 | Gm7 | C7 :|2. F6 | %||

      [B]
      |: Bbm7 | Eb7*1.5 (E°7)*1.5 | %% :|3x N.C. |
      """;

  private static Chart weir() {
    return ChartText.parse(WEIR, "weir");
  }

  @Test
  void a_chart_stands_four_bars_a_line_with_its_unexpected_bars_marked() {
    assertEquals(
        """
        Lantern Turn
        a turnaround with two substitute dominants
        E♭, 4/4, 60 beats a minute, plain

        1  | E♭maj7 | C7    | Fm7 | B♭7     |
        5  | E♭maj7 | ! G♭7 | Fm7 | ! E7♯11 |

        ! marks a bar that the ear does not expect.
        """,
        ChartGrid.written(ChartLibrary.open("Lantern Turn"), ChartGrid.Signs.PRINTED));
  }

  @Test
  void repeats_endings_sections_and_a_pick_up_have_their_signs() {
    assertEquals(
        """
        Down to the Weir
        F, 3/4, 96 beats a minute, swing, written for Bb, sounds in Eb
        for the trumpets

        [A]
         0    | C7    |
         1   |: Fmaj7 | Gm7 / C7          | Am7 D7 / | Gm7 |
         5  |1. Am7   | ! Abmaj7          | Gm7      | C7  :|
         9  |2. F6    | %                 ||

        [B]
        11   |: Bbm7  | Eb7*1.5 (E°7)*1.5 | %%       :|3x
        15    | N.C.  |

        ! marks a bar that the ear does not expect.
        """,
        ChartGrid.written(weir(), ChartGrid.Signs.TYPED));
  }

  @Test
  void played_out_each_bar_stands_where_it_is_heard() {
    String grid = ChartGrid.played(weir(), ChartGrid.Signs.TYPED);
    assertTrue(grid.contains("\n[A]\n 0  | C7    |\n 1  | Fmaj7 |"), grid);
    assertTrue(grid.contains("\n 9  | Fmaj7 | Gm7 / C7 "), grid);
    assertTrue(grid.contains("\n13  | F6    | F6 "), grid);
    assertTrue(grid.contains("\n27  | N.C.  |\n"), grid);
  }
}
