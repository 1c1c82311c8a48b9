package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.session.log.LoggedTake;

/** The log that a running take writes. */
class TakeLogFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_log(byte[] bytes) {
    Hostile.readFile(bytes, ".log", file -> LoggedTake.recover(file).notes());
  }
}
