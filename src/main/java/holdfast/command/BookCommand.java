package holdfast.command;

import holdfast.book.Book;
import holdfast.book.Entry;
import holdfast.book.Export;
import holdfast.book.Search;
import holdfast.book.SelfEstimate;
import holdfast.book.Student;
import holdfast.book.TakeFolder;
import holdfast.listening.calibration.Profile;
import holdfast.mistake.UserMistake;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Looks into the practice book. */
@Command(
    name = "book",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "What has been played so far: the newest takes, those of one student, over one chart, from"
          + " some days, with some words.",
      ""
    },
    footer = {
      "",
      "Every take is a folder of open files on this machine; nothing leaves it by itself."
    })
final class BookCommand implements Callable<Integer> {

  private static final int USUAL_NUMBER = 20;

  @Option(names = "--student", paramLabel = "NAME", description = "takes of this student")
  private Optional<String> student = Optional.empty();

  @Option(names = "--chart", paramLabel = "TITLE", description = "over charts with this title")
  private Optional<String> chart = Optional.empty();

  @Option(names = "--from", paramLabel = "DAY", description = "from this day on, as 2026-11-25")
  private Optional<String> from = Optional.empty();

  @Option(names = "--until", paramLabel = "DAY", description = "up to this day")
  private Optional<String> until = Optional.empty();

  @Option(
      names = "--words",
      arity = "1..*",
      paramLabel = "WORD",
      description = "with these words in names, notes or feelings")
  private List<String> words = List.of();

  @Option(names = "--most", paramLabel = "N", description = "so many at most (20 without it)")
  private int most = USUAL_NUMBER;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    if (most < 1) {
      throw new UserMistake("--most takes 1 or more, not " + most);
    }
    // One more than is shown tells whether there are more.
    int oneMore = Math.min(most, Integer.MAX_VALUE - 1) + 1;
    Search search =
        new Search(student, chart, day("--from", from), day("--until", until), words, oneMore);
    PrintWriter out = spec.commandLine().getOut();
    try (Book book = opened(out)) {
      List<Entry> found = book.find(search);
      BookText text = BookText.forThisTerminal();
      found.stream().limit(most).forEach(entry -> out.println(text.line(entry)));
      if (found.size() > most) {
        out.println("There are older ones; --most " + 2L * most + " shows more.");
      }
      if (found.isEmpty()) {
        out.println(book.size() == 0 ? "No take is in the book yet." : "No take fits.");
      }
      tellBroken(book, out);
    }
    out.flush();
    return 0;
  }

  private static String takes(int number) {
    return number + (number == 1 ? " take" : " takes");
  }

  private static Book opened(PrintWriter out) {
    Book book = Book.open();
    book.said().forEach(out::println);
    return book;
  }

  private static void tellBroken(Book book, PrintWriter out) {
    List<String> broken = book.brokenFolders();
    if (!broken.isEmpty()) {
      out.println(
          broken.size()
              + (broken.size() == 1 ? " folder" : " folders")
              + " cannot be read; "
              + broken.get(0));
    }
  }

  private static Optional<LocalDate> day(String option, Optional<String> text) {
    try {
      return text.map(LocalDate::parse);
    } catch (DateTimeParseException e) {
      throw new UserMistake(option + " takes a day as 2026-11-25, not \"" + text.get() + "\"", e);
    }
  }

  @Command(
      name = "progress",
      mixinStandardHelpOptions = true,
      description =
          "A student's takes chart by chart, as a small picture: one block a take, the"
              + " taller the more phrases carried the idea; and how many ideas were invented.")
  int progress(
      @Parameters(paramLabel = "STUDENT", description = "first name or nickname of the student")
          String name) {
    PrintWriter out = spec.commandLine().getOut();
    try (Book book = opened(out)) {
      List<Entry> takes = book.find(Search.ALL.of(name));
      if (takes.isEmpty()) {
        throw new UserMistake(
            "there is no take of " + name + " in the book; `holdfast book students` lists all");
      }
      BookText text = BookText.forThisTerminal();
      List<String> carried = text.progress(takes);
      carried.forEach(out::println);
      if (!carried.isEmpty()) {
        out.println("A block is a take, the newest last; the taller, the more of it was carried.");
      }
      text.fluency(takes)
          .ifPresent(
              line -> {
                out.println(line);
                out.println("Here, the taller, the more different ideas a minute.");
              });
    }
    out.flush();
    return 0;
  }

  @Command(
      name = "students",
      mixinStandardHelpOptions = true,
      description = "Everybody in the book; who played last comes first.")
  int students() {
    PrintWriter out = spec.commandLine().getOut();
    try (Book book = opened(out)) {
      for (Student each : book.everybody()) {
        out.println(
            each.name()
                + each.instrument().map(instrument -> ", " + instrument).orElse("")
                + ": "
                + takes(book.find(Search.ALL.of(each.name())).size()));
      }
    }
    out.flush();
    return 0;
  }

  @Command(
      name = "student",
      mixinStandardHelpOptions = true,
      description = "Writes down what a student plays, and which profile the ear takes.")
  int student(
      @Parameters(paramLabel = "NAME", description = "first name or nickname of the student")
          String name,
      @Option(
              names = "--instrument",
              paramLabel = "WORDS",
              description = "what the student plays, in your own words")
          Optional<String> instrument,
      @Option(
              names = "--profile",
              paramLabel = "NAME",
              description = "kind of voice or instrument that the ear expects")
          Optional<String> profile) {
    Optional<String> heardAs = profile.map(named -> Profile.named(named).name());
    PrintWriter out = spec.commandLine().getOut();
    try (Book book = opened(out)) {
      Optional<Student> known = book.students().find(name);
      Student kept =
          new Student(
              name,
              instrument.or(() -> known.flatMap(Student::instrument)),
              heardAs.or(() -> known.flatMap(Student::profile)));
      book.students().keep(kept);
      out.println(
          kept.name()
              + kept.instrument().map(plays -> ", " + plays).orElse("")
              + kept.profile().map(ear -> ", heard as " + ear).orElse("")
              + ".");
    }
    out.flush();
    return 0;
  }

  @Command(
      name = "note",
      mixinStandardHelpOptions = true,
      description = "Keeps a note of the teacher's with a take.")
  int note(
      @Parameters(
              index = "0",
              paramLabel = "TAKE",
              description = "name of the take, as the book lists it")
          String take,
      @Parameters(
              index = "1..*",
              arity = "1..*",
              paramLabel = "WORDS",
              description = "what you want to say")
          List<String> said) {
    PrintWriter out = spec.commandLine().getOut();
    try (Book book = opened(out)) {
      TakeFolder folder = book.take(take);
      folder.note(String.join(" ", said));
      out.println("The note is with " + folder.name() + ".");
    }
    out.flush();
    return 0;
  }

  @Command(
      name = "felt",
      mixinStandardHelpOptions = true,
      description = "Keeps how a take felt: slippery, patchy, steady or easy, and why.")
  int felt(
      @Parameters(
              index = "0",
              paramLabel = "TAKE",
              description = "name of the take, as the book lists it")
          String take,
      @Parameters(
              index = "1",
              paramLabel = "FEELING",
              description = "slippery, patchy, steady or easy")
          String feeling,
      @Parameters(
              index = "2..*",
              arity = "0..*",
              paramLabel = "WORDS",
              description = "what you want to say")
          List<String> said) {
    SelfEstimate estimate =
        new SelfEstimate(
            SelfEstimate.Feeling.read(feeling), String.join(" ", said == null ? List.of() : said));
    PrintWriter out = spec.commandLine().getOut();
    try (Book book = opened(out)) {
      TakeFolder folder = book.take(take);
      folder.felt(estimate);
      out.println(folder.name() + " felt " + estimate.feeling().word() + ".");
    }
    out.flush();
    return 0;
  }

  @Command(
      name = "export",
      mixinStandardHelpOptions = true,
      description = "Packs the open files of all takes, or of one student's, into one ZIP file.")
  int export(
      @Parameters(paramLabel = "FILE.zip", description = "ZIP file to write") Path file,
      @Option(names = "--student", paramLabel = "NAME", description = "takes of this student only")
          Optional<String> of) {
    PrintWriter out = spec.commandLine().getOut();
    try (Book book = opened(out)) {
      List<TakeFolder> takes =
          book.find(of.map(Search.ALL::of).orElse(Search.ALL)).stream()
              .map(entry -> book.take(entry.take()))
              .toList();
      int packed = Export.write(takes, book.students(), of, file);
      out.println(takes(packed) + (packed == 1 ? " is in " : " are in ") + file);
    }
    out.flush();
    return 0;
  }

  @Command(
      name = "delete",
      mixinStandardHelpOptions = true,
      description =
          "Deletes a student with every take, recording, idea and note of theirs, for"
              + " good. Files that were exported or sent are not touched.")
  int delete(
      @Parameters(paramLabel = "STUDENT", description = "first name or nickname of the student")
          String name,
      @Option(names = "--for-good", description = "yes, delete") boolean sure) {
    PrintWriter out = spec.commandLine().getOut();
    try (Book book = opened(out)) {
      if (!sure) {
        int takes = book.find(Search.ALL.of(name)).size();
        if (takes == 0 && book.students().find(name).isEmpty()) {
          throw new UserMistake(
              "there is no student " + name + " in the book; `holdfast book students` lists all");
        }
        throw new UserMistake(
            "this deletes "
                + takes(takes)
                + " of "
                + name
                + " for good; add --for-good if you are sure");
      }
      int gone = book.forget(name);
      out.println(name + " is deleted with " + takes(gone) + ".");
    }
    out.flush();
    return 0;
  }

  @Command(
      name = "again",
      mixinStandardHelpOptions = true,
      description = "Reads all folders anew, as after changing files by hand.")
  int again() {
    PrintWriter out = spec.commandLine().getOut();
    try (Book book = opened(out)) {
      book.readAgain();
      int size = book.size();
      out.println(takes(size) + (size == 1 ? " is" : " are") + " in the book.");
      tellBroken(book, out);
    }
    out.flush();
    return 0;
  }
}
