package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.ChildProgram;
import holdfast.book.Book;
import holdfast.book.Search;
import holdfast.listening.microphone.KeptSound;
import holdfast.listening.midi.MidiTakeFile;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A session that is killed in the middle of a take loses nothing that had been played. */
class BrokenOffTakeTest {

  @TempDir Path home;

  @Test
  void a_killed_take_is_finished_at_the_next_start() throws Exception {
    Process session = start("play", "Paper Boats", "--demo", "--tempo", "100", "--count-in", "0");
    Path log = awaitPhrases(home.resolve("takes"), 2);
    session.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
    assertTrue(Files.exists(log));
    Path folder = Path.of(log.toString().replaceAll("\\.log$", ""));
    Path sound = folder.resolve("take.wav");
    leaveUnfinished(sound);

    try (Book book = Book.open(home)) {
      assertEquals(1, book.said().size(), book.said().toString());
      assertEquals(1, book.find(Search.ALL).size());
    }

    try (AudioInputStream mended = AudioSystem.getAudioInputStream(sound.toFile())) {
      assertEquals((Files.size(sound) - 44) / 2, mended.getFrameLength(), "its length is known");
    }
    JsonNode judged = new ObjectMapper().readTree(folder.resolve("judgement.json").toFile());
    assertTrue(judged.get("phrases").size() >= 2, judged.toPrettyString());
    assertEquals("literal", judged.at("/phrases/1/treatment").asText());
    assertEquals(4, MidiTakeFile.read(folder.resolve("take.mid")).parts().size());
    assertTrue(Files.exists(folder.resolve("report.html")));
    assertTrue(Files.notExists(log), "the log is gone once the take is safe elsewhere");
    assertTrue(Files.exists(folder.resolve("take.heard")), "all that was heard stays with it");
    try (Book book = Book.open(home)) {
      assertEquals(List.of(), book.said());
      String take = folder.getFileName().toString();
      assertEquals(List.of(take), book.incomplete(), "its sound and its paper are still to come");
      Files.delete(sound);
      book.complete(take);
      assertEquals(List.of(), book.incomplete());
    }
    assertTrue(Files.exists(folder.resolve("report.pdf")));
    assertTrue(Files.exists(folder.resolve("sound.wav")));
    assertTrue(Files.readString(folder.resolve("report.html")).contains("<audio"));
  }

  /** What a microphone's recording is like when its program is killed: a head without lengths. */
  private static void leaveUnfinished(Path sound) {
    KeptSound killed = new KeptSound(sound, 48_000);
    killed.append(new float[48_000], 48_000);
    assertEquals(Optional.empty(), killed.trouble());
  }

  private Process start(String... arguments) throws IOException {
    ProcessBuilder builder =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "--add-exports=java.desktop/com.sun.media.sound=ALL-UNNAMED",
            "-Djava.awt.headless=true",
            "-cp",
            ChildProgram.classPath(),
            Main.class.getName());
    builder.command().addAll(List.of(arguments));
    builder.environment().put("HOLDFAST_HOME", home.toString());
    return builder
        .redirectErrorStream(true)
        .redirectOutput(new File(home.toFile(), "said.txt"))
        .start();
  }

  /** Waits until the log says that so many phrases have ended; a hang fails after a minute. */
  private static Path awaitPhrases(Path takes, int phrases) throws Exception {
    for (int i = 0; i < 1200; i++) {
      if (Files.isDirectory(takes)) {
        try (Stream<Path> files = Files.list(takes)) {
          for (Path log : files.filter(f -> f.toString().endsWith(".log")).toList()) {
            long ended =
                Files.readAllLines(log).stream().filter(line -> line.contains("up-to")).count();
            if (ended >= phrases) {
              return log;
            }
          }
        }
      }
      Thread.sleep(50);
    }
    throw new AssertionError("no phrase was heard within a minute");
  }
}
