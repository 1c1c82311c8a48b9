package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class BackingCommandTest {

  @TempDir Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    CommandLine commandLine = Main.commandLine();
    commandLine.setOut(new PrintWriter(out, true));
    commandLine.setErr(new PrintWriter(err, true));
    return commandLine.execute(args);
  }

  private void refuses(String sentence, String... args) {
    err.getBuffer().setLength(0);
    assertEquals(2, run(args));
    assertEquals("holdfast: " + sentence, err.toString().strip());
  }

  @Test
  void a_midi_file_is_written_in_the_key_tempo_and_feel_that_are_asked_for() {
    String file = folder.resolve("a.mid").toString();
    int code =
        run(
            "backing",
            "Slow Ferry",
            "--to",
            file,
            "--key",
            "Dm",
            "--tempo",
            "80",
            "--feel",
            "even",
            "--choruses",
            "2",
            "--count-in",
            "0",
            "--mute",
            "time");
    assertEquals(0, code, err.toString());
    assertEquals(
        "Wrote " + file + ": Slow Ferry, 2 times round, 0:48 minutes.", out.toString().strip());
    assertTrue(Files.exists(Path.of(file)));
  }

  @Test
  void a_sound_file_is_written() throws IOException {
    Path file = folder.resolve("a.wav");
    assertEquals(
        0,
        run(
            "backing",
            "paper-boats",
            "--to",
            file.toString(),
            "--choruses",
            "1",
            "--bars",
            "1..2"));
    assertTrue(Files.size(file) > 44_100 * 4 * 8);
  }

  @Test
  void what_cannot_be_done_is_told_in_one_sentence_with_its_mend() {
    refuses(
        "--tempo takes 30 to 240 beats a minute, not 500.0",
        "backing",
        "paper-boats",
        "--tempo",
        "500");
    refuses(
        "--choruses takes a number from 1 to 999, or endless, not \"many\"",
        "backing",
        "paper-boats",
        "--choruses",
        "many");
    refuses("--count-in takes 0 to 4 bars, not 9", "backing", "paper-boats", "--count-in", "9");
    refuses(
        "\"x\" names no bars; write 5..8 for bars 5 to 8", "backing", "paper-boats", "--bars", "x");
    refuses(
        "“Paper Boats” has bars 1 to 8, and no bar 12",
        "backing",
        "paper-boats",
        "--bars",
        "5..12");
    refuses(
        "there is no part \"drums\" to mute; choose chords, bass, time or line",
        "backing",
        "paper-boats",
        "--mute",
        "drums");
    refuses(
        "there is no feel \"waltz\"; choose one of plain, ballad, swing, even, drone",
        "backing",
        "paper-boats",
        "--feel",
        "waltz");
    refuses(
        "--range: “H4” is no pitch; write a note name and its octave, as Eb4",
        "backing",
        "paper-boats",
        "--range",
        "C4..H4");
    refuses("--volume takes 0 to 100, not 300", "backing", "paper-boats", "--volume", "300");
    Path song = folder.resolve("a.mp3");
    refuses(
        song + " must end in .wav or .mid, so that we know what to write",
        "backing",
        "paper-boats",
        "--to",
        song.toString());
    refuses(
        "a file has an end: give --choruses a number",
        "backing",
        "paper-boats",
        "--choruses",
        "endless",
        "--to",
        folder.resolve("a.wav").toString());
    assertFalse(Files.exists(song));
  }

  /**
   * In a process of its own, whose sound system (ALSA) is told that the machine has no devices. Two
   * bars at the fastest tempo: it takes a second.
   */
  @Test
  void without_a_sound_device_it_says_so_and_keeps_time_in_silence() throws Exception {
    assumeTrue(
        System.getProperty("os.name").startsWith("Linux"),
        "skipped: only Linux lets one process have no sound devices");
    Path nothing = Files.writeString(folder.resolve("asound.conf"), "# no devices\n");
    ProcessBuilder builder =
        new ProcessBuilder(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "--add-exports=java.desktop/com.sun.media.sound=ALL-UNNAMED",
                "-Dstdout.encoding=UTF-8",
                "-Dfile.encoding=UTF-8",
                "-cp",
                System.getProperty("java.class.path"),
                "holdfast.command.Main",
                "backing",
                "paper-boats",
                "--bars",
                "7..8",
                "--choruses",
                "1",
                "--tempo",
                "240"));
    builder.environment().put("ALSA_CONFIG_PATH", nothing.toString());
    builder.environment().put("HOLDFAST_HOME", folder.resolve("home").toString());
    Process process = builder.redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
    assertEquals(
        List.of(
            "Begin softly, and take the headphones off when your ears ring: hearing does not grow back.",
            "No sound device was found: the backing runs silently and in time.",
            "Stop with Ctrl-C.",
            "chorus 1, bar 7: Gm7 C7",
            "chorus 1, bar 8: F6"),
        said.lines().toList());
  }
}
