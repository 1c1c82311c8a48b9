package holdfast.book;

import holdfast.carry.Statement;
import holdfast.mistake.UserMistake;
import holdfast.report.Progress;
import holdfast.session.Overruling;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The practice book: all takes in the user's folder, and who played them. The files are the truth;
 * the table that answers at once is made from them and needs no care. Window and terminal may have
 * it open at once. Not for several threads.
 */
public final class Book implements AutoCloseable {

  /** The folder of takes, within the user's folder. */
  public static final String TAKES = "takes";

  private static final String STUDENTS = "students";
  private static final String TRASH = "trash";
  private static final String TABLE = "book.index";

  /** Nobody waits for the sound of older takes than so many. */
  private static final int RECENT = 20;

  private static final int MOST_COMPLETED = 2;

  private static final Logger LOG = LoggerFactory.getLogger(Book.class);

  private final Path home;
  private final List<String> said = new ArrayList<>();
  private boolean inMemory;
  private Index index;

  private Book(Path home) {
    this.home = home;
  }

  /** Opens the book in the user's folder. */
  public static Book open() {
    return open(UserFolder.path());
  }

  /**
   * Opens the book in a folder, which need not exist: finishes takes that were broken off and
   * deletions that were, and takes in whatever has changed in the files.
   *
   * @throws UserMistake where the folder cannot be read
   */
  public static Book open(Path home) {
    Book book = new Book(home);
    try {
      Files.createDirectories(home.resolve(TAKES));
    } catch (IOException e) {
      if (!Files.isDirectory(home)) {
        throw new UserMistake(
            home
                + " cannot be made ("
                + e.getMessage()
                + "); set HOLDFAST_HOME to a folder that can be written to",
            e);
      }
    }
    book.index = book.openIndex();
    book.tidy();
    return book;
  }

  /** What was found and mended while opening, a sentence each. */
  public List<String> said() {
    return List.copyOf(said);
  }

  /** Takes in what has changed in the files since, as after a take. */
  public void refresh() {
    tidy();
  }

  private Path table() {
    return home.resolve(TABLE);
  }

  private Path takes() {
    return home.resolve(TAKES);
  }

  private Trash trash() {
    return new Trash(home.resolve(TRASH));
  }

  private Departures departures() {
    return new Departures(home);
  }

  private Index openIndex() {
    try {
      if (Index.isHalfGone(table())) {
        Index.throwAway(table());
      }
      return Index.open(table());
    } catch (Index.Broken e) {
      LOG.info("the book's table cannot be opened: {}", e.getMessage());
      return anew();
    }
  }

  /** A table that cannot be used is thrown away; where that does not help, memory has to do. */
  private Index anew() {
    if (Files.isWritable(home)) {
      try {
        Index.throwAway(table());
        return Index.open(table());
      } catch (Index.Broken | UserMistake e) {
        LOG.info("nor can it be made anew: {}", e.getMessage());
      }
    }
    inMemory = true;
    said.add(
        home
            + " cannot be written to, so I read all takes anew each time; make room or leave for"
            + " it.");
    return Index.inMemory();
  }

  private void tidy() {
    try (Turn turn = Turn.await(home)) {
      LOG.trace("{}", turn);
      said.addAll(Unfinished.finish(takes()));
      trash().empty();
      fill();
      for (String name : departures().begun()) {
        finishForgetting(name);
        said.add("A student who was being deleted is deleted now.");
      }
    } catch (IOException e) {
      LOG.info("the book can only be read: {}", e.getMessage());
      fill();
    }
  }

  private void fill() {
    ask(
        () -> {
          try {
            new Filling(takes(), index).fill();
            return 0;
          } catch (IOException e) {
            throw new UserMistake(
                takes() + " cannot be read (" + e.getMessage() + "); check its permissions", e);
          }
        });
  }

  /** Something that is asked of the table. */
  @FunctionalInterface
  private interface Asking<T> {
    T ask() throws Index.Broken;
  }

  /** Asks; where the table turns out to be broken it is made anew once, and asked again. */
  private <T> T ask(Asking<T> asking) {
    try {
      return asking.ask();
    } catch (Index.Broken e) {
      LOG.info("the book's table is broken and is made anew: {}", e.getMessage());
      index.close();
      index = anew();
      try {
        new Filling(takes(), index).fill();
        return asking.ask();
      } catch (Index.Broken | IOException again) {
        throw new UserMistake(
            "the book's table "
                + table()
                + " cannot be used ("
                + again.getMessage()
                + "); check the disk, your takes are safe in their folders",
            again);
      }
    }
  }

  /** Makes the table anew from the files, whatever it holds. */
  public void readAgain() {
    try (Turn turn = Turn.await(home)) {
      LOG.trace("{}", turn);
      index.close();
      index = inMemory ? Index.inMemory() : anew();
      fill();
    } catch (IOException e) {
      throw new UserMistake(home + " cannot be written to; the book was read anew already", e);
    }
  }

  /** The takes that are wanted, the newest first. */
  public List<Entry> find(Search search) {
    return ask(() -> index.find(search));
  }

  /**
   * The folder of a take.
   *
   * @param take its name, or the beginning of its name that no other has
   * @throws UserMistake where there is none, or more than one
   */
  public TakeFolder take(String take) {
    Path folder = takes().resolve(take).normalize();
    if (takes().equals(folder.getParent()) && Files.isDirectory(folder)) {
      return new TakeFolder(folder);
    }
    List<Entry> all = find(Search.ALL);
    List<Entry> fitting = all.stream().filter(e -> e.take().startsWith(take)).toList();
    if (fitting.isEmpty()) {
      throw new UserMistake(
          "there is no take " + take + " in the book; `holdfast book` lists them");
    }
    if (fitting.size() > 1) {
      throw new UserMistake(
          fitting.size() + " takes begin with " + take + "; write more of the name");
    }
    return new TakeFolder(takes().resolve(fitting.get(0).take()));
  }

  /** The takes of the same chart by the same student before this one, the oldest first. */
  public Progress before(TakeSettings take) {
    if (take.student().isEmpty()) {
      return Progress.NONE;
    }
    List<Progress.Take> earlier = new ArrayList<>();
    for (Entry entry : find(Search.ALL.of(take.student().get()).over(take.title()))) {
      if (entry.chart().equals(take.title()) && entry.started().isBefore(take.started())) {
        earlier.add(0, entry.progress());
      }
    }
    return new Progress(earlier);
  }

  /**
   * Keeps a teacher's word on a phrase of a take; its counts and its report follow at once.
   *
   * @throws UserMistake where there is no such take or it cannot be written
   */
  public void overrule(String take, Overruling ruling) {
    TakeFolder folder = take(take);
    folder.overrule(ruling, before(folder.settings()));
    refresh();
  }

  /**
   * Adds to a take's report what takes a while: see {@link TakeFolder#complete}.
   *
   * @throws UserMistake where there is no such take or it cannot be written
   */
  public void complete(String take) {
    TakeFolder folder = take(take);
    folder.complete(before(folder.settings()));
  }

  /**
   * Takes that were played here and whose reports nobody completed, since they were broken off or
   * the program ended too early: the newest first, and no more than are done in a minute.
   */
  public List<String> incomplete() {
    return find(Search.ALL).stream()
        .limit(RECENT)
        .map(entry -> new TakeFolder(takes().resolve(entry.take())))
        .filter(TakeFolder::isIncomplete)
        .limit(MOST_COMPLETED)
        .map(TakeFolder::name)
        .toList();
  }

  /**
   * The idea of the newest take, in the beats of that take, and its chord.
   *
   * @throws UserMistake where there is no take, or none with an idea
   */
  public Statement lastIdea() {
    return LastIdea.read(takes());
  }

  /**
   * How the idea of the last take was said in it, in order: what shows how its player carries
   * ideas.
   *
   * @throws UserMistake where that take is broken
   */
  public List<Statement> lastStatements() {
    return LastIdea.statements(takes());
  }

  /**
   * Takes in a take that came from elsewhere, whole or not at all; one that is here already stays
   * as it is.
   *
   * @param unpacking puts its files into the empty folder that it is given
   * @return where it is now
   * @throws UserMistake where it cannot be kept
   */
  public TakeFolder keep(Consumer<Path> unpacking) {
    try (Turn turn = Turn.await(home)) {
      LOG.trace("{}", turn);
      // Among the trash: half a take of a killed program goes by itself.
      Path fresh = Files.createDirectories(trash().folder().resolve("coming"));
      try {
        unpacking.accept(fresh);
        TakeFolder come = new TakeFolder(fresh);
        Optional<TakeFolder> here = same(come);
        if (here.isPresent()) {
          return here.get();
        }
        come.tellAgain(before(come.settings()));
        String name = KeptTake.name(come.settings());
        Path kept = takes().resolve(name);
        for (int i = 2; Files.exists(kept); i++) {
          kept = takes().resolve(name + "-" + i);
        }
        Files.move(fresh, kept, StandardCopyOption.ATOMIC_MOVE);
        fill();
        return new TakeFolder(kept);
      } finally {
        trash().empty();
      }
    } catch (IOException e) {
      throw new UserMistake(
          takes() + " cannot be written to (" + e.getMessage() + "); make room or leave for it", e);
    }
  }

  /** The take of the same second by the same student in which the same was heard. */
  private Optional<TakeFolder> same(TakeFolder come) throws IOException {
    TakeSettings settings = come.settings();
    Optional<LocalDate> day = Optional.of(settings.started().toLocalDate());
    Search thatDay =
        new Search(settings.student(), Optional.empty(), day, day, List.of(), Integer.MAX_VALUE);
    for (Entry entry : find(thatDay)) {
      TakeFolder here = new TakeFolder(takes().resolve(entry.take()));
      if (entry.started().equals(settings.started()) && here.holdsTheSame(come)) {
        return Optional.of(here);
      }
    }
    return Optional.empty();
  }

  /** How many takes are in the book. */
  public int size() {
    return ask(() -> index.size());
  }

  /** What is kept of students beside their takes. */
  public Students students() {
    return new Students(home.resolve(STUDENTS));
  }

  /** Everybody who played or of whom something is kept; who played last comes first. */
  public List<Student> everybody() {
    List<Student> all = new ArrayList<>();
    List<Student> kept = students().all();
    for (Index.Tally number : ask(() -> index.students())) {
      all.add(students().find(number.name()).orElse(Student.named(number.name())));
    }
    for (Student student : kept) {
      if (all.stream().noneMatch(s -> Student.isSame(s.name(), student.name()))) {
        all.add(student);
      }
    }
    return all;
  }

  /**
   * Something that takes have in common.
   *
   * @param name a chart's title, or an idea as notes
   * @param takes how many
   */
  public record Tried(String name, int takes) {}

  /** The charts that were tried, by this student or by anybody; the last one first. */
  public List<Tried> charts(Optional<String> student) {
    return tried(ask(() -> index.charts(student)));
  }

  /** The ideas that were carried, by this student or by anybody; the last one first. */
  public List<Tried> ideas(Optional<String> student) {
    return tried(ask(() -> index.ideas(student)));
  }

  private static List<Tried> tried(List<Index.Tally> numbers) {
    return numbers.stream().map(n -> new Tried(n.name(), n.takes())).toList();
  }

  /** Folders in the book that cannot be read, a sentence each. */
  public List<String> brokenFolders() {
    return ask(() -> index.brokenFolders());
  }

  /**
   * Deletes a student with everything of theirs for good: takes, recordings, ideas, what was noted.
   * Who is killed in the middle of it finds it finished at the next start.
   *
   * @return how many takes went
   * @throws UserMistake where nothing is kept of such a student, or a take of theirs is running
   */
  public int forget(String name) {
    String clean = Student.cleanName(name);
    try (Turn turn = Turn.await(home)) {
      LOG.trace("{}", turn);
      fill();
      int takes = find(Search.ALL.of(clean)).size();
      if (takes == 0 && Files.notExists(students().folderOf(clean))) {
        throw new UserMistake(
            "there is no student " + clean + " in the book; `holdfast book students` lists them");
      }
      departures().refuseWhilePlaying(takes(), clean);
      departures().begin(clean);
      finishForgetting(clean);
      return takes;
    } catch (IOException e) {
      throw new UserMistake(
          home + " cannot be written to (" + e.getMessage() + "); nothing was deleted", e);
    }
  }

  private void finishForgetting(String name) throws IOException {
    for (Entry entry : find(Search.ALL.of(name))) {
      trash().delete(takes().resolve(entry.take()));
    }
    trash().delete(students().folderOf(name));
    trash().empty();
    fill();
    ask(
        () -> {
          index.wipeLog();
          return 0;
        });
    departures().end(name);
  }

  @Override
  public void close() {
    index.close();
  }
}
