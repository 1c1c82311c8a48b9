package holdfast.command;

import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine;

/** Runs one command as a user would, and keeps what it said. */
record Terminal(int exitCode, String out, String err) {

  static Terminal run(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine commandLine = Main.commandLine();
    commandLine.setOut(new PrintWriter(out));
    commandLine.setErr(new PrintWriter(err));
    int exitCode = commandLine.execute(args);
    return new Terminal(exitCode, out.toString(), err.toString());
  }
}
