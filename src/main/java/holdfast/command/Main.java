package holdfast.command;

import holdfast.book.UserFolder;
import picocli.CommandLine;

/** Where the terminal comes in. */
public final class Main {

  private Main() {}

  /** Runs one command and leaves with its exit code: 0 done, 1 our fault, 2 the user's mistake. */
  public static void main(String[] args) {
    // Logback reads this when the first logger is made, so it comes before everything else.
    System.setProperty(UserFolder.PROPERTY, UserFolder.path().toString());
    System.exit(run(args));
  }

  /** As {@link #main}, for callers who want the exit code rather than the exit. */
  static int run(String... args) {
    return commandLine().execute(args);
  }

  static CommandLine commandLine() {
    return new CommandLine(new Holdfast())
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setUsageHelpAutoWidth(true)
        .setExecutionExceptionHandler(new PlainFailures());
  }
}
