package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.book.UserFolder;
import holdfast.listening.keyboard.TestCable;
import holdfast.practice.invent.Invented;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InventCommandTest {

  private static final int NOTE_ON = 0x90;
  private static final int NOTE_OFF = 0x80;

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
  void a_session_runs_live_keeps_its_ideas_and_hands_them_on_to_a_way_of_practising()
      throws Exception {
    TestCable.plugIn();
    Thread hands = new Thread(InventCommandTest::playOnce, "hands");
    hands.setDaemon(true);
    hands.start();
    Terminal said =
        Terminal.run(
            "invent",
            "Dm7",
            "--minutes",
            "0.1",
            "--tempo",
            "120",
            "--input",
            TestCable.NAME,
            "--output",
            "no such device: the session is silent");
    hands.interrupt();
    assertEquals(0, said.exitCode(), said.err());
    assertTrue(said.out().contains("Number 1, your first idea.   D F A"), said.out());
    assertTrue(said.out().contains("--invented 1"), said.out());

    Terminal soFar = Terminal.run("invent", "--so-far");
    assertTrue(soFar.out().contains("1 different of  1"), soFar.out());

    TestCable.pullOut();
    Terminal on = Terminal.run("practise", "head-start", "lantern-turn", "--invented", "1");
    assertTrue(on.err().contains("there is no MIDI input"), on.err());
    Terminal none = Terminal.run("practise", "head-start", "lantern-turn", "--invented", "2");
    assertTrue(none.err().contains("had no different idea 2; --invented takes 1"), none.err());
  }

  @Test
  void what_cannot_be_done_is_told_in_one_sentence() throws IOException {
    refuses("name one chord or two", "invent");
    refuses("--minutes takes 0.1 to 20", "invent", "Dm7", "--minutes", "0");
    refuses("Xq", "invent", "Xq");
    refuses("nothing was invented yet", "practise", "swap", "lantern-turn", "--invented", "1");
    assertTrue(Terminal.run("invent", "--so-far").out().contains("Nothing was invented yet"));
    Path file = Files.createDirectories(home.resolve("takes/2026-11-02_a")).resolve(Invented.FILE);
    Files.writeString(file, "{\n");
    refuses(file + " is broken", "invent", "--so-far");
  }

  private static void refuses(String words, String... arguments) {
    Terminal said = Terminal.run(arguments);
    assertEquals(2, said.exitCode(), String.join(" ", arguments));
    assertTrue(said.err().contains(words), said.err());
    assertEquals(1, said.err().strip().lines().count(), said.err());
  }

  /** After the count-in of two seconds: three notes, once. */
  private static void playOnce() {
    while (!TestCable.isListenedTo() && !Thread.interrupted()) {
      LockSupport.parkNanos(5_000_000);
    }
    LockSupport.parkNanos(3_500_000_000L);
    for (int key : List.of(62, 65, 69)) {
      TestCable.send(NOTE_ON, key, 80);
      LockSupport.parkNanos(250_000_000);
      TestCable.send(NOTE_OFF, key, 0);
      LockSupport.parkNanos(30_000_000);
    }
  }
}
