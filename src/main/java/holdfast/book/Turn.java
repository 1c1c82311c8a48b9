package holdfast.book;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.locks.LockSupport;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One program at a time tidies the book; the next waits. The lock is the operating system's, so a
 * killed program lets go of it. Where a folder knows no locks (some network folders) everybody goes
 * on at once: all tidying can be done twice.
 */
final class Turn implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Turn.class);
  private static final String FILE = ".turn";
  private static final long LOOK_NANOS = 5_000_000;

  private final FileChannel channel;

  private Turn(FileChannel channel) {
    this.channel = channel;
  }

  /**
   * Waits for a turn.
   *
   * @throws IOException where the folder cannot be written to
   */
  static Turn await(Path home) throws IOException {
    FileChannel channel =
        FileChannel.open(home.resolve(FILE), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      lock(channel);
    } catch (IOException e) {
      LOG.info("no locks in {}: {}", home, e.getMessage());
    }
    return new Turn(channel);
  }

  private static void lock(FileChannel channel) throws IOException {
    while (true) {
      try {
        FileLock lock = channel.lock();
        LOG.trace("turn taken: {}", lock);
        return;
      } catch (OverlappingFileLockException ownProgram) {
        // Another thread of this program has it; the system's lock does not know of threads.
        LockSupport.parkNanos(LOOK_NANOS);
      }
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      LOG.warn("the book's turn was not given back: {}", e.getMessage());
    }
  }
}
