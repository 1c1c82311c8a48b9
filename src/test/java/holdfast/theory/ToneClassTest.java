package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ToneClassTest {

  @Test
  void every_note_of_the_worked_examples_has_the_class_that_they_give_it() {
    List<String> wrong = new ArrayList<>();
    List<Map<String, String>> rows = Reference.rows("tone-classes.csv", ',');
    for (Map<String, String> row : rows) {
      ChordPalette palette = ChordPalette.of(Harmony.parse(row.get("chord")));
      int pitch = SpelledPitch.parse(row.get("note")).midi();
      String sign = palette.toneClassWhenHeld(pitch).sign();
      if (!sign.equals(row.get("class"))) {
        wrong.add(row + " but was " + sign);
      }
    }
    assertEquals(List.of(), wrong);
  }
}
