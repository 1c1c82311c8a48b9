package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.book.Book;
import holdfast.book.LastIdea;
import holdfast.book.Search;
import holdfast.book.Students;
import holdfast.book.TakeFolder;
import holdfast.book.TakeSettings;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** The files of which the book is made, as another hand may leave them. */
class BookFilesFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_settings_of_a_take(byte[] bytes) {
    Hostile.read(
        bytes,
        () -> {
          TakeSettings settings =
              TakeSettings.parse(new String(bytes, StandardCharsets.UTF_8), "take.settings");
          return settings.performance().tempoMap().equals(settings.setting().beats());
        });
  }

  @FuzzTest(maxDuration = "10m")
  void anything_heard(byte[] bytes) {
    Hostile.readFolder(
        bytes,
        TakeFolder.HEARD,
        folder -> {
          settle(folder);
          new TakeFolder(folder).judged();
        });
  }

  @FuzzTest(maxDuration = "10m")
  void any_feeling(byte[] bytes) {
    Hostile.readFolder(bytes, TakeFolder.FELT, folder -> new TakeFolder(folder).felt());
  }

  @FuzzTest(maxDuration = "10m")
  void any_words_of_a_teacher(byte[] bytes) {
    Hostile.readFolder(bytes, TakeFolder.OVERRULED, folder -> new TakeFolder(folder).overrulings());
    Hostile.readFolder(bytes, TakeFolder.NOTES, folder -> new TakeFolder(folder).notes());
  }

  @FuzzTest(maxDuration = "10m")
  void any_judgement(byte[] bytes) {
    Hostile.readFolder(
        bytes,
        "takes/2026-09-04_17-30-00_paper-boats/" + TakeFolder.JUDGEMENT,
        folder -> {
          settle(folder.resolve("takes").resolve("2026-09-04_17-30-00_paper-boats"));
          try (Book book = Book.open(folder)) {
            // A take that cannot be read is told among the broken ones; the book opens all the
            // same.
            book.find(Search.ALL);
          }
          LastIdea.statements(folder.resolve("takes"));
          LastIdea.read(folder.resolve("takes"));
        });
  }

  @FuzzTest(maxDuration = "10m")
  void any_student(byte[] bytes) {
    Hostile.readFolder(bytes, "mira/student.json", folder -> new Students(folder).all());
  }

  private static void settle(Path folder) {
    try (InputStream in =
        BookFilesFuzzTest.class.getResourceAsStream(
            "BookFilesFuzzTestInputs/any_settings_of_a_take/whole.settings")) {
      Files.write(folder.resolve(TakeFolder.SETTINGS), in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
