package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.util.LogbackMDCAdapter;
import holdfast.book.UserFolder;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

class LogSetUpTest {

  @TempDir Path folder;

  @Test
  void the_file_gets_everything_and_the_console_what_must_be_known_now() throws Exception {
    PrintStream before = System.err;
    String moved = System.setProperty(UserFolder.PROPERTY, folder.toString());
    LoggerContext log = new LoggerContext();
    log.setMDCAdapter(new LogbackMDCAdapter());
    ByteArrayOutputStream console = new ByteArrayOutputStream();
    System.setErr(new PrintStream(console, true, StandardCharsets.UTF_8));
    try {
      LogSetUp setUp = new LogSetUp();
      setUp.setContext(log);
      setUp.configure(log);
      Logger logger = log.getLogger("holdfast.book.Book");
      logger.debug("too much");
      logger.info("the table is made anew");
      logger.warn("the disk is full", new IllegalStateException("inside"));
      log.getLogger("org.sqlite.Loader").error("not ours");
    } finally {
      System.setErr(before);
      if (moved == null) {
        System.clearProperty(UserFolder.PROPERTY);
      } else {
        System.setProperty(UserFolder.PROPERTY, moved);
      }
      log.stop();
    }
    assertEquals("holdfast: the disk is full\n", console.toString(StandardCharsets.UTF_8));
    List<String> kept = Files.readAllLines(folder.resolve("holdfast.log"));
    assertTrue(
        kept.get(0).matches("\\d{4}-.* INFO  \\[.*] .* - the table is made anew"), "" + kept);
    assertTrue(kept.get(1).endsWith(" - the disk is full"), "" + kept);
    assertTrue(kept.get(2).contains("IllegalStateException: inside"), "with its trace");
    assertTrue(kept.stream().noneMatch(line -> line.contains("not ours")), "" + kept);
  }

  @Test
  void logback_finds_it_by_itself() {
    LoggerContext log = (LoggerContext) LoggerFactory.getILoggerFactory();
    Logger root = log.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    assertNotNull(root.getAppender("file"));
    assertNotNull(root.getAppender("console"));
  }
}
