package holdfast.command.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.session.Moment;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BottomLineTest {

  private static final Moment MOMENT =
      new Moment(2, 5, 8, 3, 4, "Fmaj7", "D♭maj7", true, true, Optional.of("next bar 6: D♭maj7"));

  @Test
  void it_says_where_we_are_what_comes_and_whether_the_player_is_heard() {
    assertEquals(
        "chorus 2  bar 5/8  ··●·   now Fmaj7   next D♭maj7   I hear you ♪   ! next bar 6: D♭maj7",
        BottomLine.of(MOMENT, 200));
  }

  @Test
  void it_is_never_wider_than_the_terminal() {
    assertEquals(30, BottomLine.of(MOMENT, 30).length());
  }

  @Test
  void an_input_that_is_gone_is_said() {
    Moment gone = new Moment(0, 1, 8, 1, 4, "C", "F", false, false, Optional.empty());
    String line = BottomLine.of(gone, 200);
    assertTrue(line.startsWith("count-in"), line);
    assertTrue(line.contains("the input is gone"), line);
  }
}
