package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.chart.ChartLibrary;
import holdfast.listening.PlayedNote;
import holdfast.motif.Player;
import holdfast.session.Coach;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MaterialRunsTest {

  private static final double[] IDEA = {0, 0.5, 1, 2, 2.5};
  private static final double[] EVEN = {0, 0.5, 1, 1.5, 2, 2.5};

  private static void play(List<PlayedNote> take, int bar, double[] onsets, int... pitches) {
    for (int i = 0; i < pitches.length; i++) {
      // At 60 beats a minute a beat is a second.
      take.add(PlayedNote.key(4 * (bar - 1) + onsets[i], 0.45, pitches[i], 80));
    }
  }

  @Test
  void bars_of_one_material_are_told_together() {
    List<PlayedNote> take = new ArrayList<>();
    play(take, 1, IDEA, 72, 69, 67, 69, 65);
    play(take, 2, IDEA, 72, 69, 67, 69, 65);
    play(take, 3, EVEN, 60, 62, 64, 65, 67, 69);
    play(take, 4, EVEN, 62, 64, 65, 67, 69, 70);
    play(take, 5, EVEN, 77, 76, 74, 72, 70, 69);
    play(take, 6, IDEA, 72, 69, 67, 69, 65);
    Setting setting =
        Setting.of(
            ChartLibrary.open("Paper Boats"),
            TempoMap.steady(60),
            Player.KEYBOARD,
            Optional.empty());
    JudgedTake judged = Coach.judge(setting, take, phrase -> {});
    assertEquals(List.of("Bars 3 to 5 were a scale run."), MaterialRuns.of(judged));
  }
}
