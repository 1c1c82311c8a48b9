package holdfast.book.overview;

import holdfast.mistake.UserMistake;
import java.io.BufferedReader;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * The lines of judged takes, each written the moment it is known, in a file that only grows: who is
 * killed loses the take in hand and no other. Lines may be put from several threads.
 */
final class Ledger implements AutoCloseable {

  private static final String BEGINNING = "results";
  private static final String ENDING = ".jsonl";

  private final Path file;
  private final FileOutputStream out;

  private Ledger(Path file, FileOutputStream out) {
    this.file = file;
    this.out = out;
  }

  /** Goes on with the ledger of this part of the work. */
  static Ledger open(Path folder, Share share) {
    Path file = folder.resolve(BEGINNING + share.ending() + ENDING);
    try {
      FileOutputStream out = new FileOutputStream(file.toFile(), true);
      if (endsInALine(file)) {
        return new Ledger(file, out);
      }
      out.write('\n');
      return new Ledger(file, out);
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be written (" + e.getMessage() + "); name another folder with --to", e);
    }
  }

  private static boolean endsInALine(Path file) throws IOException {
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "r")) {
      if (bytes.length() == 0) {
        return true;
      }
      bytes.seek(bytes.length() - 1);
      return bytes.read() == '\n';
    }
  }

  /** Adds a line, whole and at once. */
  synchronized void put(Line line) {
    try {
      out.write((line.json() + "\n").getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UserMistake(
          file
              + " cannot be written ("
              + e.getMessage()
              + "); make room and start again, what is judged stays judged",
          e);
    }
  }

  /** Reads all lines in a folder, those of every part; of two about one file the later counts. */
  static void read(Path folder, Consumer<Line> reader) {
    try (Stream<Path> files = Files.list(folder)) {
      List<Path> ledgers =
          files
              .filter(
                  f -> {
                    String name = f.getFileName().toString();
                    return name.startsWith(BEGINNING) && name.endsWith(ENDING);
                  })
              .sorted()
              .toList();
      for (Path ledger : ledgers) {
        try (BufferedReader lines = Files.newBufferedReader(ledger)) {
          for (String text = lines.readLine(); text != null; text = lines.readLine()) {
            Optional<Line> line = Line.read(text);
            line.ifPresent(reader);
          }
        }
      }
    } catch (IOException e) {
      throw new UserMistake(
          folder + " cannot be read (" + e.getMessage() + "); check its permissions", e);
    }
  }

  @Override
  public void close() {
    try {
      out.close();
    } catch (IOException e) {
      throw new UserMistake(file + " cannot be written (" + e.getMessage() + "); make room", e);
    }
  }
}
