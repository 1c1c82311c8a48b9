package holdfast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nothing leaves the machine: a run of the main job reaches no network. */
class NoNetworkTest {

  private static final Path STRACE = Path.of("/usr/bin/strace");

  /**
   * Calls that reach another machine or let another reach us. The JDK asks for sockets at its start
   * to learn which kinds there are, and closes them unused: that alone reaches nobody.
   */
  private static final String CALLS = "trace=connect,bind,listen,sendto,sendmsg,sendmmsg";

  @TempDir Path folder;

  /** The system calls of a whole run, as the kernel saw them. */
  @Test
  void a_run_of_the_main_job_reaches_no_network() throws Exception {
    assumeStrace();
    assertEquals(List.of(), reached("holdfast.command.Main", "demo", "--quick"));
  }

  @Test
  void a_program_that_does_reach_out_would_be_seen() throws Exception {
    assumeStrace();
    assertTrue(!reached(ReachingOut.class.getName()).isEmpty());
  }

  /** Asks a port of this machine that nobody listens at. */
  static final class ReachingOut {
    private ReachingOut() {}

    /** Tries once. */
    public static void main(String[] args) throws IOException {
      try (Socket nobody = new Socket(InetAddress.getLoopbackAddress(), 1)) {
        System.out.println(nobody);
      } catch (java.net.ConnectException asExpected) {
        System.out.println("nobody there");
      }
    }
  }

  private static void assumeStrace() {
    Assumptions.assumeTrue(Files.isExecutable(STRACE), "strace is not installed");
  }

  private List<String> reached(String... program) throws IOException, InterruptedException {
    Path trace = folder.resolve("trace");
    List<String> line =
        new ArrayList<>(List.of(STRACE.toString(), "-f", "-e", CALLS, "-o", trace.toString()));
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.addAll(
        List.of("-Djava.awt.headless=true", "-Dholdfast.data=" + folder.resolve("data"), "-cp"));
    line.add(System.getProperty("java.class.path"));
    line.addAll(List.of(program));
    Process run =
        new ProcessBuilder(line)
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("said").toFile())
            .start();
    assertTrue(run.waitFor(3, TimeUnit.MINUTES), "it did not end");
    assertEquals(0, run.exitValue(), () -> said());
    assertTrue(Files.size(trace) > 0, "strace wrote nothing");
    try (Stream<String> calls = Files.lines(trace)) {
      return calls.filter(call -> call.contains("AF_INET")).toList();
    }
  }

  private String said() {
    try {
      return Files.readString(folder.resolve("said"));
    } catch (IOException e) {
      return e.toString();
    }
  }
}
