package holdfast.command;

import holdfast.mistake.UserMistake;
import java.io.PrintWriter;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/**
 * Tells a failure in one sentence. A user's mistake leaves with exit code 2 and no stack trace; a
 * fault of ours leaves with 1, and its trace goes to the log file for whoever mends it.
 */
final class PlainFailures implements IExecutionExceptionHandler {

  private static final Logger LOG = LoggerFactory.getLogger(PlainFailures.class);

  @Override
  public int handleExecutionException(
      Exception failure, CommandLine commandLine, ParseResult parsed) {
    PrintWriter err = commandLine.getErr();
    if (failure instanceof UserMistake mistake) {
      err.println("holdfast: " + mistake.getMessage());
      return CommandLine.ExitCode.USAGE;
    }
    LOG.error("a command failed", failure);
    err.println("holdfast: this is our fault, not yours: " + failure + " (the log has more)");
    return CommandLine.ExitCode.SOFTWARE;
  }
}
