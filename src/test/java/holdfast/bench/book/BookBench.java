package holdfast.bench.book;

import holdfast.book.Book;
import holdfast.book.Entry;
import holdfast.book.MadeTakes;
import holdfast.book.Search;
import holdfast.book.TakeFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How long a book of many takes makes people wait. Run its main method with the number of takes and
 * a folder to make them in.
 */
public final class BookBench {

  private static final List<String> STUDENTS =
      List.of("Mira", "Ilko", "Oda", "Bas", "Runa", "Tem", "Lio", "Vesna", "Kalle", "Ines");

  private BookBench() {}

  /** Makes the takes where they are not there yet, and measures. */
  public static void main(String[] args) throws IOException {
    int takes = Integer.parseInt(args[0]);
    Path home = Path.of(args[1]);
    make(home, takes);
    Files.deleteIfExists(home.resolve("book.index"));
    measured("make the table anew", () -> size(home));
    for (int round = 0; round < 3; round++) {
      try (Book book = opened(home)) {
        measured("list the newest 20", () -> book.find(Search.ALL.atMost(20)).size());
        measured("list one student's", () -> book.find(Search.ALL.of("Mira")).size());
        measured("search for two words", () -> book.find(words("breath", "ilko")).size());
        measured("list by chart", () -> book.find(Search.ALL.over("boats").of("Oda")).size());
        measured("one student's progress", () -> progress(book));
        measured("students, charts, ideas", () -> lists(book));
      }
    }
    measured("open after one change", () -> size(home));
    System.out.printf(
        Locale.ROOT,
        "the table takes %.1f MB; %d MB of memory in use%n",
        Files.size(home.resolve("book.index")) / 1e6,
        (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) >> 20);
  }

  private static int lists(Book book) {
    return book.everybody().size()
        + book.charts(Optional.of("Mira")).size()
        + book.ideas(Optional.of("Mira")).size();
  }

  /** A student's every take with its share, as the pictures of progress are made of. */
  private static int progress(Book book) {
    return (int)
        book.find(Search.ALL.of("Mira")).stream()
            .filter(take -> take.fluency().isEmpty() && take.share().isPresent())
            .count();
  }

  private static Search words(String... words) {
    return new Search(
        Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(words), 20);
  }

  private static int size(Path home) {
    try (Book book = Book.open(home)) {
      return book.size();
    }
  }

  private static Book opened(Path home) {
    long from = System.nanoTime();
    Book book = Book.open(home);
    System.out.printf(Locale.ROOT, "%-26s %8.1f ms%n", "open", (System.nanoTime() - from) / 1e6);
    return book;
  }

  /** Something that is timed. */
  private interface Work {
    int done();
  }

  private static void measured(String what, Work work) {
    long from = System.nanoTime();
    int done = work.done();
    System.out.printf(
        Locale.ROOT, "%-26s %8.1f ms  (%d)%n", what, (System.nanoTime() - from) / 1e6, done);
  }

  /** One take is played, the others are its copies with other names, days and notes. */
  private static void make(Path home, int takes) throws IOException {
    if (Files.isDirectory(home.resolve("takes"))) {
      return;
    }
    TakeFolder model = MadeTakes.play(home, "Mira", 0);
    String settings = Files.readString(model.path().resolve(TakeFolder.SETTINGS));
    byte[] judgement = Files.readAllBytes(model.judgement());
    byte[] midi = Files.readAllBytes(model.path().resolve(TakeFolder.MIDI));
    LocalDateTime time = LocalDateTime.of(2024, 1, 1, 8, 0);
    for (int i = 1; i < takes; i++) {
      LocalDateTime started = time.plusMinutes(50L * i);
      String student = STUDENTS.get(i % STUDENTS.size());
      Path folder =
          Files.createDirectory(
              home.resolve("takes").resolve(started.toString().replace(':', '-') + "_paper-boats"));
      Files.writeString(
          folder.resolve(TakeFolder.SETTINGS),
          settings
              .replaceFirst("\"started\" : \"[^\"]*\"", "\"started\" : \"" + started + "\"")
              .replace("\"Mira\"", "\"" + student + "\""));
      Files.write(folder.resolve(TakeFolder.JUDGEMENT), judgement);
      Files.write(folder.resolve(TakeFolder.MIDI), midi);
      if (i % 7 == 0) {
        Files.writeString(folder.resolve(TakeFolder.NOTES), "Breathe before bar " + i % 16 + ".\n");
      }
    }
    Entry first;
    try (Book book = Book.open(home)) {
      first = book.find(Search.ALL.atMost(1)).get(0);
    }
    System.out.println(takes + " takes made; the newest is " + first.take());
  }
}
