package holdfast.session.log;

import holdfast.listening.Heard;
import holdfast.listening.PlayEvent.NoteOff;
import holdfast.listening.PlayEvent.NoteOn;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** A program that logs a take without end and says after each note how many are logged. */
final class LoggingChild {

  private LoggingChild() {}

  /** Logs into the file that is named. */
  public static void main(String[] args) {
    TakeLog log = TakeLog.start(Path.of(args[0]), Map.of("chart", "Slow Ferry"));
    for (int i = 0; ; i++) {
      NoteOn on = NoteOn.key(i, 48 + i % 24, 80);
      log.hear(new Heard(List.of(on), i));
      log.hear(new Heard(List.of(new NoteOff(i + 0.5, on.pitch())), i + 0.6));
      if (i % 5 == 4) {
        log.phraseEnded(i + 0.9);
      }
      System.out.println(i + 1);
    }
  }
}
