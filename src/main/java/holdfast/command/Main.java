package holdfast.command;

import holdfast.book.UserFolder;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine;

/** Where the terminal comes in. */
public final class Main {

  private Main() {}

  /** Runs one command and leaves with its exit code: 0 done, 1 our fault, 2 the user's mistake. */
  public static void main(String[] args) {
    try {
      // Logback reads this when the first logger is made, so it comes before everything else.
      System.setProperty(UserFolder.PROPERTY, UserFolder.path().toString());
    } catch (InvalidPathException name) {
      System.err.println("holdfast: " + PlainFailures.told(name));
      System.exit(CommandLine.ExitCode.USAGE);
    }
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
        .registerConverter(Path.class, Main::path)
        .setExecutionExceptionHandler(new PlainFailures());
  }

  private static Path path(String name) {
    try {
      return Path.of(name);
    } catch (InvalidPathException none) {
      throw new CommandLine.TypeConversionException(PlainFailures.told(none));
    }
  }
}
