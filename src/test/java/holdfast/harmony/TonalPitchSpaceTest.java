package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.theory.NoteName;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Held against published distances (reference/tonal-pitch-space.txt). */
class TonalPitchSpaceTest {

  private static final TonalPitchSpace.Region C_MAJOR = new TonalPitchSpace.Region(0, false);

  @Test
  void distances_from_the_tonic_are_those_of_the_book() throws IOException {
    List<String> rows;
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(
                TonalPitchSpaceTest.class.getResourceAsStream("/reference/tonal-pitch-space.txt"),
                StandardCharsets.UTF_8))) {
      rows = lines.lines().filter(line -> !line.startsWith("#")).toList();
    }
    assertEquals(17, rows.size());
    for (String row : rows) {
      String[] cells = row.split("; ", -1);
      String[] words = cells[0].split(" ", -1);
      TonalPitchSpace.Region region =
          new TonalPitchSpace.Region(
              NoteName.parse(words[3]).pitchClass(), words[4].equals("minor"));
      TonalPitchSpace.Heard chord =
          TonalPitchSpace.Heard.onDegree(region, Integer.parseInt(words[1]) - 1);
      assertEquals(
          Integer.parseInt(cells[1]), TonalPitchSpace.regionSteps(C_MAJOR, region), cells[0]);
      assertEquals(
          Integer.parseInt(cells[4]),
          TonalPitchSpace.distance(TonalPitchSpace.Heard.tonicOf(C_MAJOR), chord),
          cells[0]);
    }
  }

  @Test
  void a_chord_is_no_distance_from_itself() {
    for (int tonic = 0; tonic < 12; tonic++) {
      for (boolean minor : new boolean[] {false, true}) {
        TonalPitchSpace.Heard chord =
            TonalPitchSpace.Heard.tonicOf(new TonalPitchSpace.Region(tonic, minor));
        assertEquals(0, TonalPitchSpace.distance(chord, chord));
      }
    }
  }
}
