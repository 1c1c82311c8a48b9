package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.backing.Performance;
import holdfast.backing.SoundPlayer;
import holdfast.backing.sound.SilentOut;
import holdfast.book.UserFolder;
import holdfast.chart.ChartLibrary;
import holdfast.command.live.LiveScreen;
import holdfast.motif.Player;
import holdfast.session.Coach;
import holdfast.session.DemoPlayer;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoCommandTest {

  @TempDir Path home;

  @BeforeEach
  void moveIn() {
    System.setProperty(UserFolder.PROPERTY, home.toString());
  }

  @AfterEach
  void moveOut() {
    System.clearProperty(UserFolder.PROPERTY);
  }

  private static Performance performance(double tempo, BarRange bars, int rounds) {
    return Performance.of(
        Arrangement.of(
            ChartLibrary.open("slow-ferry"),
            Feel.PLAIN,
            tempo,
            Optional.of(bars),
            Optional.empty()),
        rounds);
  }

  @Test
  void the_quick_form_judges_both_choruses_and_names_the_report() throws Exception {
    Terminal said = Terminal.run("demo", "--quick");
    assertEquals(0, said.exitCode(), said.err());
    assertTrue(said.out().startsWith("Mira, our demo student, plays two choruses."), said.out());
    assertTrue(said.out().contains("  2.8  "), said.out());
    assertFalse(said.out().contains("sound device"), said.out());
    assertTrue(Files.size(home.resolve("reports").resolve("demo.html")) > 5_000);
  }

  @Test
  void without_a_sound_device_she_is_judged_at_once_and_told_why() throws Exception {
    StringWriter said = new StringWriter();
    try (SoundPlayer band = new SoundPlayer(new SilentOut("no device"))) {
      // A whole form at a slow tempo: in real time this would take minutes.
      JudgedTake judged =
          DemoCommand.aloudIfItCanBe(
              performance(30, new BarRange(1, 8), 2), band, new PrintWriter(said, true));
      assertEquals(16, judged.phrases().size());
    }
    assertEquals(
        "There is no sound device here, so I judge her take at once.",
        said.toString().lines().findFirst().orElseThrow());
  }

  @Test
  void played_aloud_she_gets_the_verdicts_that_her_recording_gets() throws Exception {
    // Eight bars of a second each: at this tempo a statement takes four of them.
    Performance performance = performance(240, new BarRange(1, 8), 1);
    StringWriter said = new StringWriter();
    JudgedTake live;
    try (SoundPlayer band = new SoundPlayer(new SilentOut());
        LiveScreen screen = LiveScreen.plain(new PrintWriter(said, true))) {
      live = DemoCommand.aloud(performance, band, screen);
    }
    Setting setting =
        Setting.of(
            performance.arrangement(), performance.tempoMap(), Player.KEYBOARD, Optional.empty());
    JudgedTake recorded = Coach.judge(setting, DemoPlayer.over(performance).played(), phrase -> {});
    assertEquals(2, recorded.phrases().size());
    assertEquals(verdicts(recorded), verdicts(live));
    assertTrue(said.toString().contains("Your idea"), said.toString());
  }

  private static List<String> verdicts(JudgedTake take) {
    return take.phrases().stream().map(DemoCommandTest::verdict).toList();
  }

  private static String verdict(JudgedPhrase phrase) {
    return phrase.place() + " " + phrase.verdict() + " " + phrase.notes().size();
  }
}
