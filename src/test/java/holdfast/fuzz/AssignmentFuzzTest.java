package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.book.assignment.Answer;
import holdfast.book.assignment.Assignment;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;

/** Files that come by letter: tasks from a teacher, answers from a student. */
class AssignmentFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_assignment(byte[] bytes) {
    Hostile.readFile(bytes, Assignment.ENDING, file -> Assignment.read(file).performance());
  }

  @FuzzTest(maxDuration = "10m")
  void any_answer(byte[] bytes) {
    Hostile.readFolder(bytes, "in/an" + Answer.ENDING, AssignmentFuzzTest::unpack);
  }

  private static void unpack(Path folder) {
    try {
      Path into = Files.createDirectory(folder.resolve("into"));
      try {
        Answer.unpack(folder.resolve("in").resolve("an" + Answer.ENDING), into).judged();
      } catch (UserMistake told) {
        stayedInside(folder);
        throw told;
      }
      stayedInside(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Nothing lies beside the folder that it was to be unpacked into, and no folder in it. */
  private static void stayedInside(Path folder) throws IOException {
    try (Stream<Path> beside = Files.list(folder);
        Stream<Path> within = Files.list(folder.resolve("into"))) {
      Assertions.assertEquals(
          Set.of("in", "into"),
          beside.map(path -> path.getFileName().toString()).collect(Collectors.toSet()));
      Assertions.assertTrue(within.allMatch(Files::isRegularFile));
    }
  }
}
