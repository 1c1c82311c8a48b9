package holdfast.listening.keyboard;

import holdfast.listening.Capture;
import holdfast.listening.NoteSource;
import holdfast.time.TakeClock;
import java.util.Optional;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.Receiver;

/**
 * A keyboard without a cable: whoever holds it plays on it, and is heard just as a real one is, by
 * the same stamps and the same queue.
 */
public final class PlayableKeyboard implements NoteSource {

  private final String name;
  private volatile Optional<Receiver> listener = Optional.empty();

  /** A keyboard of this name. */
  public PlayableKeyboard(String name) {
    this.name = name;
  }

  /** Plays a message; nothing happens while nobody listens. */
  public void play(MidiMessage message) {
    listener.ifPresent(receiver -> receiver.send(message, -1));
  }

  /** Whether somebody listens. */
  public boolean isListenedTo() {
    return listener.isPresent();
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public Capture open(TakeClock clock) {
    return new KeyboardCapture(new Lead(), clock);
  }

  private final class Lead implements Cable {
    @Override
    public String name() {
      return name;
    }

    @Override
    public boolean isPlugged() {
      return true;
    }

    @Override
    public boolean isConnected() {
      return listener.isPresent();
    }

    @Override
    public boolean connect(Receiver receiver) {
      listener = Optional.of(receiver);
      return true;
    }

    @Override
    public void disconnect() {
      listener = Optional.empty();
    }
  }
}
