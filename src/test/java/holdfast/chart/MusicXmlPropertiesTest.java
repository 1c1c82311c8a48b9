package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** What holds of every file that somebody gives as a score. */
class MusicXmlPropertiesTest {

  @Property(tries = 300, seed = "20261125")
  void a_damaged_score_gives_a_chart_or_a_mistake_of_the_user_s(@ForAll long seed) {
    Random random = new Random(seed);
    byte[] score = MusicXmlChart.write(Charts.ofSeed(seed)).getBytes(StandardCharsets.UTF_8);
    int wounds = 1 + random.nextInt(4);
    for (int i = 0; i < wounds; i++) {
      int at = random.nextInt(score.length);
      // Mostly a digit for a digit and a letter for a letter, so that much of it stays XML.
      byte old = score[at];
      score[at] =
          Character.isDigit(old)
              ? (byte) ('0' + random.nextInt(10))
              : Character.isLetter(old) ? (byte) ('a' + random.nextInt(26)) : old;
      if (random.nextInt(20) == 0) {
        score[at] = (byte) random.nextInt(256);
      }
    }
    try {
      Chart chart = MusicXmlChart.read(score, "damaged").chart();
      assertFalse(chart.form().bars().isEmpty());
    } catch (ChartException e) {
      assertFalse(e.getMessage().isBlank());
    }
  }
}
