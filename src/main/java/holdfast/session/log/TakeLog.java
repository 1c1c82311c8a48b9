package holdfast.session.log;

import holdfast.disk.WholeFile;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayEvent.NoteOn;
import holdfast.mistake.UserMistake;
import holdfast.time.TempoMap;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Writes down everything in a live take the moment it is heard, so that nothing that was played can
 * be lost: each event goes to the operating system before the next is looked at, where a killed
 * program does not take it along, and at the end of each phrase the disk is told to keep it.
 *
 * <p>A log that cannot be written (a full disk, a pulled stick) does not stop the take; what could
 * not be written waits and is tried again with all that follows, and {@link #trouble} says what is
 * wrong as long as it is. Meanwhile all of it is kept elsewhere after each phrase, in the user's
 * own folder or in the system's for files that pass, where a killed program leaves it. A take that
 * ends so stays there, and where neither takes it, it is tried again for a minute. May be used from
 * several threads.
 */
public final class TakeLog implements AutoCloseable {

  static final String FIRST_WORD = "take-log";
  static final String VERSION = "1";
  static final String SET = "set";
  static final String TEMPO = "tempo";
  static final String ON = "on";
  static final String OFF = "off";
  static final String PEDAL = "pedal";
  static final String MARK = "mark";
  static final String UP_TO = "up-to";
  static final String END = "end";

  /** What makes sense of the rest, even where the file itself cannot be read any more. */
  private static final Set<String> HEADING = Set.of(FIRST_WORD, SET, TEMPO);

  private static final long PATIENCE_SECONDS = 5;

  /** While the take's end waits for room. */
  private static final long AGAIN_MILLIS = 500;

  private static final int AGAIN = 120;

  private final Path file;
  private final List<Path> elsewhere;
  private final List<String> heading = new ArrayList<>();
  // A stream and not a channel: a channel closes when its thread is interrupted, as sessions are.
  private final FileOutputStream out;
  private final ExecutorService disk =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "take-log");
            thread.setDaemon(true);
            return thread;
          });
  private final AtomicBoolean isForcing = new AtomicBoolean();
  private final Queue<String> unwritten = new ArrayDeque<>();
  private boolean lineIsBroken;
  private Path whole;

  /** Where all of it stands meanwhile, as far as the last phrase. */
  private Optional<Path> meanwhile = Optional.empty();

  private Optional<String> trouble = Optional.empty();
  private String reason = "";
  private boolean closed;

  private TakeLog(Path file, FileOutputStream out, List<Path> elsewhere) {
    this.file = file;
    this.whole = file;
    this.elsewhere = elsewhere;
    this.out = out;
  }

  /**
   * Begins the log of a take in a new file.
   *
   * @param settings what is needed to make sense of the take later: chart, player, whatever the
   *     session names; in the order in which it should be kept
   * @throws UserMistake where the file exists already or cannot be made
   */
  public static TakeLog start(Path file, Map<String, String> settings) {
    try {
      Files.createFile(file);
      TakeLog log = appendingTo(file);
      log.say(FIRST_WORD, VERSION + " " + Writer.self().text());
      settings.forEach(log::set);
      log.force();
      return log;
    } catch (FileAlreadyExistsException e) {
      throw new UserMistake(file + " is there already; give the take another name", e);
    } catch (NoSuchFileException e) {
      throw new UserMistake("there is no folder for " + file + "; make it first", e);
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be written (" + e.getMessage() + "); choose another folder for takes", e);
    }
  }

  /** A log that goes on at the end of what is there. */
  static TakeLog appendingTo(Path file) throws IOException {
    List<Path> elsewhere =
        Stream.of("user.home", "java.io.tmpdir").map(System::getProperty).map(Path::of).toList();
    return appendingTo(file, elsewhere);
  }

  /**
   * @param elsewhere folders for what can be written nowhere else when the take is over
   */
  static TakeLog appendingTo(Path file, List<Path> elsewhere) throws IOException {
    return new TakeLog(file, new FileOutputStream(file.toFile(), true), elsewhere);
  }

  /** Settles something about the take; what was settled under this name before no longer holds. */
  public void set(String name, String value) {
    if (name.isEmpty() || name.indexOf('=') >= 0) {
      throw new IllegalArgumentException("a setting needs a name without “=”, not " + name);
    }
    say(SET, LogLine.escaped(name) + "=" + LogLine.escaped(value));
  }

  /** Settles where beats fall from now on, for the whole take. */
  public void tempo(TempoMap tempo) {
    say(
        TEMPO,
        tempo.points().stream()
            .map(p -> p.beat() + " " + p.seconds() + " " + p.beatsPerMinute())
            .collect(Collectors.joining(" ")));
  }

  /** Keeps everything that was heard. */
  public void hear(Heard heard) {
    if (heard.events().isEmpty()) {
      return;
    }
    heard.events().forEach(event -> write(line(event).written()));
  }

  /** The sustain pedal moved. */
  public void pedal(double seconds, boolean down) {
    say(PEDAL, seconds + (down ? " down" : " up"));
  }

  /** Something happened that is no note: a new idea, a loop, a chorus that begins. */
  public void mark(double seconds, String text) {
    say(MARK, seconds + " " + LogLine.escaped(text));
  }

  /**
   * A phrase is over: what is written so far is forced to the disk, in the background; what could
   * not be written is kept elsewhere.
   */
  public void phraseEnded(double heardUpToSeconds) {
    say(UP_TO, Double.toString(heardUpToSeconds));
    if (isForcing.compareAndSet(false, true)) {
      disk.execute(
          () -> {
            isForcing.set(false);
            force();
            keepMeanwhile();
          });
    }
  }

  /** What is wrong with the log, in one sentence; empty while all is well. */
  public synchronized Optional<String> trouble() {
    return trouble;
  }

  /** Where the log is. */
  public Path file() {
    return file;
  }

  /** Where all of it is: another file where there was no room for its end. */
  public synchronized Path whole() {
    return whole;
  }

  /** The take ended as it should; what follows is only to close. */
  public void end(double seconds) {
    say(END, Double.toString(seconds));
  }

  /**
   * Forces the rest to the disk and lets go of the file, which stays where it is. What it has no
   * room for goes elsewhere, with all the rest; {@link #trouble} then says where.
   */
  @Override
  public void close() {
    disk.shutdown();
    boolean interrupted = false;
    try {
      disk.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      interrupted = true;
    }
    writeWhatWaits();
    for (int i = 0; i < AGAIN && !isKept(); i++) {
      try {
        TimeUnit.MILLISECONDS.sleep(AGAIN_MILLIS);
      } catch (InterruptedException e) {
        // Whoever wants to go on does not want to lose the take.
        interrupted = true;
      }
      writeWhatWaits();
    }
    force();
    synchronized (this) {
      if (!closed) {
        closed = true;
        if (unwritten.isEmpty()) {
          meanwhile.ifPresent(TakeLog::delete);
        } else {
          trouble =
              Optional.of(
                  "The last "
                      + unwritten.size()
                      + " lines of the take's log "
                      + file
                      + " could be written nowhere and are lost;"
                      + " make room on the disk before you play again.");
        }
        try {
          out.close();
        } catch (IOException e) {
          tell(e);
        }
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized void keepMeanwhile() {
    if (closed || unwritten.isEmpty()) {
      return;
    }
    meanwhile = writeElsewhere();
    tellTrouble();
  }

  /** Whether nothing waits any more, here or because all of it stands elsewhere now. */
  private synchronized boolean isKept() {
    if (closed || unwritten.isEmpty()) {
      return true;
    }
    Optional<Path> other = writeElsewhere();
    if (other.isEmpty()) {
      return false;
    }
    whole = other.get();
    meanwhile = Optional.empty();
    unwritten.clear();
    trouble =
        Optional.of(
            "The end of the take could not be written to "
                + file
                + " ("
                + reason
                + "), so all of it is in "
                + whole
                + ": make room on the disk, move that file into "
                + file.toAbsolutePath().getParent()
                + " and start again; the take is finished then.");
    return true;
  }

  /** Writes all of it, with what waits, into the first of the other folders that takes it. */
  private Optional<Path> writeElsewhere() {
    for (Path folder : elsewhere) {
      Path other = folder.resolve(file.getFileName());
      boolean ours = meanwhile.filter(other::equals).isPresent();
      if (Files.exists(other) && !ours) {
        continue;
      }
      try {
        byte[] written = Files.isRegularFile(file) ? Files.readAllBytes(file) : new byte[0];
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.writeBytes(String.join("", heading).getBytes(StandardCharsets.UTF_8));
        all.writeBytes(written);
        all.writeBytes(("\n" + String.join("", unwritten)).getBytes(StandardCharsets.UTF_8));
        WholeFile.write(other, fresh -> forOurEyesOnly(fresh, all.toByteArray()));
        return Optional.of(other);
      } catch (IOException | UserMistake e) {
        // The next folder may have room.
      }
    }
    return Optional.empty();
  }

  private static void delete(Path noLongerNeeded) {
    try {
      Files.deleteIfExists(noLongerNeeded);
    } catch (IOException e) {
      // One copy more than needed loses nothing.
    }
  }

  /** A folder for files that pass is everybody's. */
  private static void forOurEyesOnly(Path fresh, byte[] bytes) throws IOException {
    Files.createFile(fresh);
    File made = fresh.toFile();
    if (made.setReadable(false, false) && made.setReadable(true, true)) {
      Files.write(fresh, bytes);
    } else {
      throw new IOException("its readers cannot be chosen");
    }
  }

  private static LogLine line(PlayEvent event) {
    if (event instanceof NoteOn on) {
      return new LogLine(
          ON,
          on.seconds()
              + " "
              + on.pitch()
              + " "
              + on.cents()
              + " "
              + on.loudness()
              + " "
              + on.confidence());
    }
    return new LogLine(OFF, event.seconds() + " " + event.pitch());
  }

  private void say(String word, String rest) {
    String line = new LogLine(word, rest).written();
    if (HEADING.contains(word)) {
      synchronized (this) {
        heading.add(line);
      }
    }
    write(line);
  }

  private synchronized void write(String line) {
    if (closed) {
      throw new IllegalStateException("the log of this take is closed");
    }
    unwritten.add(line);
    writeWhatWaits();
  }

  /** In order: what could not be written waits until it can be. */
  private synchronized void writeWhatWaits() {
    boolean waited = unwritten.size() > 1;
    try {
      while (!unwritten.isEmpty()) {
        // After a write that broke off in the middle, a fresh line.
        String fresh = lineIsBroken ? "\n" + unwritten.peek() : unwritten.peek();
        lineIsBroken = true;
        out.write(fresh.getBytes(StandardCharsets.UTF_8));
        lineIsBroken = false;
        unwritten.remove();
      }
      trouble = waited ? Optional.empty() : trouble;
    } catch (IOException e) {
      tell(e);
    }
  }

  private void force() {
    try {
      out.getFD().sync();
    } catch (IOException e) {
      tell(e);
    }
  }

  private synchronized void tell(IOException e) {
    if (!whole.equals(file)) {
      return;
    }
    reason = e.getMessage();
    tellTrouble();
  }

  private void tellTrouble() {
    trouble =
        Optional.of(
            "The take's log "
                + file
                + " cannot be written ("
                + reason
                + "); what you play now is kept in "
                + meanwhile.map(Path::toString).orElse("memory only")
                + ", so make room on the disk.");
  }
}
