package holdfast.command;

import holdfast.mistake.UserMistake;
import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
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
    if (failure instanceof InvalidPathException name) {
      err.println("holdfast: " + told(name));
      return CommandLine.ExitCode.USAGE;
    }
    LOG.error("a command failed", failure);
    err.println("holdfast: this is our fault, not yours: " + failure + " (the log has more)");
    return CommandLine.ExitCode.SOFTWARE;
  }

  /** A name that this machine, or the language it was started in, has no file for. */
  static String told(InvalidPathException name) {
    return "no file can be called \""
        + name.getInput()
        + "\" here, where names are written in "
        + System.getProperty("sun.jnu.encoding")
        + "; start holdfast with LC_ALL=C.UTF-8, or take plain letters";
  }
}
