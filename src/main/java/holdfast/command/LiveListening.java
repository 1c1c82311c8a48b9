package holdfast.command;

import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.calibration.Profile;
import holdfast.listening.microphone.Expected;
import holdfast.listening.microphone.Microphone;
import holdfast.listening.pitch.Levels;
import holdfast.session.input.Inputs;
import holdfast.session.input.MicrophoneInput;
import holdfast.time.TakeClock;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

/** Says which notes a microphone hears, a line each, as they end. */
final class LiveListening {

  private static final Duration TICK = Duration.ofMillis(20);

  private final PrintWriter out;
  private Optional<PlayEvent.NoteOn> begun = Optional.empty();
  private boolean listening = true;

  LiveListening(PrintWriter out) {
    this.out = out;
  }

  /**
   * Listens.
   *
   * @param words part of the microphone's name; empty for the system's own
   * @param seconds how long; infinite until the program is stopped
   */
  void listen(String words, Profile who, double seconds) throws InterruptedException {
    MicrophoneInput input = Inputs.microphone(words);
    Microphone microphone =
        Microphone.named(input.name())
            .expecting(Expected.ANYONE.between(who.lowestHz(), who.highestHz()).like(who.manner()));
    long start = System.nanoTime();
    try (Capture ear = microphone.open(TakeClock.from(start))) {
      say("I listen to " + input.name() + "; nothing of it is kept. Stop with Ctrl-C.");
      while ((System.nanoTime() - start) * 1e-9 < seconds) {
        tell(ear.await(TICK));
        ear.news().forEach(this::say);
        if (ear.isListening() != listening) {
          listening = ear.isListening();
          say(
              listening
                  ? "The microphone is back."
                  : "The microphone went away; plug it in again and I go on.");
        }
      }
      tell(ear.rest());
    }
  }

  private void tell(Heard heard) {
    for (PlayEvent event : heard.events()) {
      if (event instanceof PlayEvent.NoteOn on) {
        begun = Optional.of(on);
      } else {
        begun.ifPresent(on -> say(line(on, event.seconds() - on.seconds())));
        begun = Optional.empty();
      }
    }
  }

  private static String line(PlayEvent.NoteOn on, double length) {
    return String.format(
        Locale.ROOT,
        "%8.2f s  %-3s %+4.0f cents  %4.0f dB  %.2f s",
        on.seconds(),
        PlainNotes.name(on.pitch()),
        on.cents(),
        Levels.SILENT_DB * (on.loudness() - 1),
        length);
  }

  private void say(String line) {
    out.println(line);
    out.flush();
  }
}
