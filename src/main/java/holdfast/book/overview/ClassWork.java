package holdfast.book.overview;

import holdfast.mistake.UserMistake;
import holdfast.session.Renderings;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Judges the returned takes in a folder, on all cores, each for itself. What was judged before and
 * has not changed is left alone; one bad file is written down and stops nothing.
 */
public final class ClassWork {

  private static final Logger LOG = LoggerFactory.getLogger(ClassWork.class);
  private static final String REPORTS = "reports";

  private final Path folder;
  private final Path overview;
  private final Terms terms;
  private final Share share;

  /**
   * Work to be done.
   *
   * @param folder the returned takes, in folders of any depth
   * @param overview where the results go; takes in it are not looked for
   */
  public ClassWork(Path folder, Path overview, Terms terms, Share share) {
    this.folder = folder;
    this.overview = overview;
    this.terms = terms;
    this.share = share;
  }

  /**
   * How far the work is.
   *
   * @param done takes judged in this run
   * @param all takes to be judged in this run
   */
  public record Step(int done, int all) {}

  /** A file that is there. */
  private record Found(String name, long bytes, long changedMillis) {}

  /**
   * Judges what is new or has changed.
   *
   * @param cores how many takes at once
   * @param progress told after each take, from several threads
   * @return how many were judged
   */
  public int run(int cores, Consumer<Step> progress) throws InterruptedException {
    try {
      Files.createDirectories(overview.resolve(REPORTS));
    } catch (IOException e) {
      throw new UserMistake(
          overview + " cannot be made (" + e.getMessage() + "); name another with --to", e);
    }
    List<Found> todo = todo();
    ConcurrentLinkedQueue<Found> queue = new ConcurrentLinkedQueue<>(todo);
    AtomicInteger done = new AtomicInteger();
    Optional<Renderings> backing = terms.backing();
    try (Ledger ledger = Ledger.open(overview, share)) {
      ExecutorService workers = Executors.newFixedThreadPool(Math.max(1, cores));
      try {
        List<Future<?>> running = new ArrayList<>();
        for (int i = 0; i < cores; i++) {
          running.add(
              workers.submit(
                  () -> {
                    for (Found next = queue.poll(); next != null; next = queue.poll()) {
                      ledger.put(judged(next, backing));
                      progress.accept(new Step(done.incrementAndGet(), todo.size()));
                    }
                  }));
        }
        for (Future<?> worker : running) {
          worker.get();
        }
      } catch (ExecutionException e) {
        queue.clear();
        if (e.getCause() instanceof UserMistake mistake) {
          throw mistake;
        }
        throw new IllegalStateException(e.getCause());
      } finally {
        workers.shutdownNow();
      }
    } finally {
      backing.ifPresent(Renderings::close);
    }
    return done.get();
  }

  private Line judged(Found found, Optional<Renderings> backing) {
    Path file = folder.resolve(found.name());
    String student = student(found.name());
    String mark = ReturnedTake.mark(found.name(), terms);
    String sum;
    try {
      sum = sum(file);
    } catch (IOException e) {
      return new Line(
          found.name(),
          new Line.State(found.bytes(), found.changedMillis(), "", mark),
          Line.Outcome.failed(student, found.name() + " cannot be read: " + e.getMessage()));
    }
    Line.State state = new Line.State(found.bytes(), found.changedMillis(), sum, mark);
    try {
      String report = REPORTS + "/" + nameSum(found.name()) + ".html";
      return new Line(
          found.name(),
          state,
          ReturnedTake.judge(file, student, terms, backing, overview.resolve(report), report));
    } catch (UserMistake e) {
      return new Line(found.name(), state, Line.Outcome.failed(student, e.getMessage()));
    } catch (RuntimeException e) {
      // A fault of ours on one take is no reason to leave the others unjudged.
      LOG.error("the take {} could not be judged", file, e);
      return new Line(
          found.name(),
          state,
          Line.Outcome.failed(
              student, found.name() + ": this is our fault, the log has more (" + e + ")"));
    }
  }

  /** A file in a folder of its student's, or {@code Mira_lantern-turn.mid}. */
  static String student(String file) {
    int slash = file.indexOf('/');
    if (slash > 0) {
      return file.substring(0, slash);
    }
    int dot = file.lastIndexOf('.');
    String name = dot > 0 ? file.substring(0, dot) : file;
    String first = name.replaceAll("[_ ].*$", "");
    return first.isEmpty() ? name : first;
  }

  private List<Found> todo() {
    Map<String, Line.State> known = new HashMap<>();
    Ledger.read(overview, line -> known.put(line.file(), line.state()));
    List<Found> todo = new ArrayList<>();
    for (Found found : found()) {
      Line.State before = known.get(found.name());
      if (share.holds(found.name()) && !isJudged(found, before)) {
        todo.add(found);
      }
    }
    return todo;
  }

  private boolean isJudged(Found found, Line.State before) {
    if (before == null
        || before.bytes() != found.bytes()
        || !before.terms().equals(ReturnedTake.mark(found.name(), terms))) {
      return false;
    }
    if (before.changedMillis() == found.changedMillis()) {
      return true;
    }
    try {
      // Copied or downloaded again: another time, the same bytes.
      return before.sum().equals(sum(folder.resolve(found.name())));
    } catch (IOException e) {
      return false;
    }
  }

  private List<Found> found() {
    List<Found> found = new ArrayList<>();
    Path own = overview.toAbsolutePath().normalize();
    try {
      Files.walkFileTree(
          folder,
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
              return dir.toAbsolutePath().normalize().equals(own)
                  ? FileVisitResult.SKIP_SUBTREE
                  : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
              if (attributes.isRegularFile() && ReturnedTake.isOne(file)) {
                found.add(
                    new Found(
                        name(file), attributes.size(), attributes.lastModifiedTime().toMillis()));
              }
              return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) throws IOException {
              if (file.equals(folder)) {
                throw e;
              }
              LOG.warn("{} cannot be read: {}", file, e.getMessage());
              return FileVisitResult.CONTINUE;
            }
          });
    } catch (IOException e) {
      throw new UserMistake(
          folder + " cannot be read (" + e.getMessage() + "); check its name and permissions", e);
    }
    found.sort(java.util.Comparator.comparing(Found::name));
    return found;
  }

  private String name(Path file) {
    return folder.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
  }

  private static String nameSum(String name) {
    byte[] sum = sha256().digest(name.getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().formatHex(sum, 0, 8);
  }

  private static String sum(Path file) throws IOException {
    MessageDigest sum = sha256();
    byte[] block = new byte[1 << 14];
    try (InputStream in = Files.newInputStream(file)) {
      for (int read = in.read(block); read >= 0; read = in.read(block)) {
        sum.update(block, 0, read);
      }
    }
    return HexFormat.of().formatHex(sum.digest());
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
