package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.book.UserFolder;
import holdfast.listening.keyboard.TestCable;
import holdfast.motif.Player;
import holdfast.practice.Plan;
import holdfast.practice.Step;
import holdfast.practice.Way;
import holdfast.session.Coach;
import holdfast.session.DemoTake;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PractiseCommandTest {

  /** A word of a command line, in quotes or not, as the shells of all systems read it. */
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  /** The take's file has the line on channel 4, counted from 1. */
  private static final int LINE_CHANNEL = 3;

  @TempDir Path home;

  @BeforeEach
  void moveIn() {
    System.setProperty(UserFolder.PROPERTY, home.toString());
  }

  @AfterEach
  void moveOut() {
    TestCable.pullOut();
    System.clearProperty(UserFolder.PROPERTY);
  }

  @Test
  void a_way_of_practising_runs_live_and_its_take_is_kept_with_the_coachs_line() throws Exception {
    TestCable.plugIn();
    Terminal said =
        Terminal.run(
            "practise",
            "head-start",
            "lantern-turn",
            "--bars",
            "1..2",
            "--tempo",
            "200",
            "--choruses",
            "1",
            "--count-in",
            "0",
            "--idea",
            "G4/0.5 Bb4/0.5 C5 G4",
            "--input",
            TestCable.NAME,
            "--output",
            "no such device: the take is silent");

    assertEquals(0, said.exitCode(), said.err());
    assertTrue(said.out().contains("I    over E♭maj7: G B♭ C G"), said.out());
    assertTrue(said.out().contains("you  over C7"), said.out());
    assertTrue(said.out().contains("What to practise next:"), said.out());
    try (Stream<Path> takes = Files.list(home.resolve("takes"))) {
      Path folder = takes.filter(Files::isDirectory).findFirst().orElseThrow();
      JsonNode judged = new ObjectMapper().readTree(folder.resolve("judgement.json").toFile());
      assertEquals(0, judged.path("phrases").size(), "nobody judges the coach");
      List<Integer> line = new ArrayList<>();
      for (Track track : MidiSystem.getSequence(folder.resolve("take.mid").toFile()).getTracks()) {
        for (int i = 0; i < track.size(); i++) {
          boolean isNote =
              track.get(i).getMessage() instanceof ShortMessage message
                  && message.getCommand() == ShortMessage.NOTE_ON
                  && message.getChannel() == LINE_CHANNEL
                  && message.getData2() > 0;
          if (isNote) {
            line.add(((ShortMessage) track.get(i).getMessage()).getData1());
          }
        }
      }
      assertEquals(List.of(67, 70, 72, 67), line, "the coach's line is kept with the take");
    }
  }

  /** What is printed after a take is copied and pasted: it starts, up to the missing keyboard. */
  @Test
  void every_command_of_a_plan_starts_as_it_is_printed() {
    List<Step> steps = new ArrayList<>(Plan.after(demoTake(), "Lantern Turn").steps());
    for (Way way : Way.values()) {
      Step first = steps.get(0);
      steps.add(
          new Step(
              way,
              "lantern-turn",
              Optional.of("F"),
              way == Way.CLIMB ? first.bars() : Optional.empty(),
              54,
              first.idea(),
              "Because."));
    }
    for (Step step : steps) {
      String[] words = words(step.command());
      assertEquals("holdfast", words[0]);
      String[] arguments = List.of(words).subList(1, words.length).toArray(new String[0]);
      assertEquals(step.arguments(), List.of(arguments));
      Terminal said = Terminal.run(arguments);
      assertEquals(2, said.exitCode(), step.command());
      assertTrue(said.err().contains("there is no MIDI input"), step.command() + said.err());
    }
  }

  @Test
  void the_ways_are_listed_and_a_wrong_one_is_told_with_the_right_ones() {
    Terminal listed = Terminal.run("practise");
    Terminal wrong = Terminal.run("practise", "juggle", "lantern-turn");
    for (Way way : Way.values()) {
      assertTrue(listed.out().contains(way.word()), listed.out());
      assertTrue(wrong.err().contains(way.word()), wrong.err());
    }
    assertEquals(2, wrong.exitCode());
    assertEquals(2, Terminal.run("practise", "swap").exitCode());
    assertEquals(2, Terminal.run("practise", "swap", "lantern-turn", "--begin", "3").exitCode());
    Terminal bars = Terminal.run("practise", "climb", "lantern-turn", "--bars", "9..12");
    assertTrue(bars.err().contains("bars 1 to 8"), bars.err());
  }

  private static JudgedTake demoTake() {
    DemoTake demo = DemoTake.shipped();
    Setting setting =
        Setting.of(demo.chart(), TempoMap.steady(demo.tempo()), Player.KEYBOARD, Optional.empty());
    return Coach.judge(setting, demo.played(), phrase -> {});
  }

  private static String[] words(String line) {
    List<String> words = new ArrayList<>();
    Matcher matcher = WORD.matcher(line);
    while (matcher.find()) {
      words.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
    }
    return words.toArray(new String[0]);
  }
}
