package holdfast.session.log;

import java.time.Instant;
import java.util.Optional;

/**
 * The program that writes a log, so that another start can tell a take that broke off from one that
 * is being played. Asked of the operating system and not by a lock on the file: some network
 * folders know no locks, and a program that looks into its own log would lose its lock.
 *
 * @param process its number in the operating system
 * @param startMillis when it started, in milliseconds of the wall clock; 0 where that is not known
 */
record Writer(long process, long startMillis) {

  /** The system tells a start to the second only; numbers are not used again so soon. */
  private static final long SAME_START_MILLIS = 5_000;

  /** This program. */
  static Writer self() {
    ProcessHandle self = ProcessHandle.current();
    return new Writer(self.pid(), startMillis(self));
  }

  /** Reads what {@link #text} wrote, behind the log's version. */
  static Optional<Writer> read(String[] parts) {
    return parts.length < 3
        ? Optional.empty()
        : Optional.of(new Writer(Long.parseLong(parts[1]), Long.parseLong(parts[2])));
  }

  String text() {
    return process + " " + startMillis;
  }

  /** Whether it still runs. */
  boolean isAlive() {
    return ProcessHandle.of(process)
        .filter(ProcessHandle::isAlive)
        .filter(p -> Math.abs(startMillis(p) - startMillis) <= SAME_START_MILLIS)
        .isPresent();
  }

  private static long startMillis(ProcessHandle process) {
    return process.info().startInstant().map(Instant::toEpochMilli).orElse(0L);
  }
}
