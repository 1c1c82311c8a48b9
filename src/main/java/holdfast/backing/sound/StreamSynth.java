package holdfast.backing.sound;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Synthesizer;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The JDK's synthesizer as a stream of samples that the caller draws: no device, no thread, no wall
 * clock. Its position is the number of frames drawn so far, so whoever draws decides when time
 * passes; the same messages give the same samples. Serves the live output and the offline rendering
 * alike.
 *
 * <p>Messages may be sent from any thread; one thread draws.
 */
public final class StreamSynth implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(StreamSynth.class);

  /** CD quality, the rate at which the JDK's own sound bank was made. */
  public static final AudioFormat FORMAT = new AudioFormat(44_100, 16, 2, true, false);

  /** Without {@code --add-exports java.desktop/com.sun.media.sound=ALL-UNNAMED} it is closed. */
  private static final String INNER_INTERFACE = "com.sun.media.sound.AudioSynthesizer";

  /** A four-part chord, bass and cymbals, with every release still ringing, is below 40. */
  private static final int VOICES = 64;

  /** The synthesizer works in strides of 100 frames; parameters change from stride to stride. */
  private static final float STRIDES_PER_SECOND = 441f;

  /**
   * So much later than its stamp a note comes out: one stride for the voices, one that the limiter
   * looks ahead. Measured, and held by a test; it is the same for every note.
   */
  public static final int DELAY_FRAMES = 200;

  private final Synthesizer synthesizer;
  private final AudioInputStream stream;
  private final Receiver receiver;
  private final SoundBank bank;

  private StreamSynth(
      Synthesizer synthesizer, AudioInputStream stream, Receiver receiver, SoundBank bank) {
    this.synthesizer = synthesizer;
    this.stream = stream;
    this.receiver = receiver;
    this.bank = bank;
  }

  /**
   * Opens a synthesizer with this sound bank.
   *
   * @return empty where this Java lets no program draw the synthesizer's samples
   */
  public static Optional<StreamSynth> open(SoundBank bank) {
    try {
      Class<?> inner = Class.forName(INNER_INTERFACE);
      Synthesizer synthesizer = MidiSystem.getSynthesizer();
      if (!inner.isInstance(synthesizer)) {
        return Optional.empty();
      }
      Method openStream = inner.getMethod("openStream", AudioFormat.class, Map.class);
      Map<String, Object> wishes = new HashMap<>();
      wishes.put("max polyphony", VOICES);
      wishes.put("control rate", STRIDES_PER_SECOND);
      AudioInputStream stream = (AudioInputStream) openStream.invoke(synthesizer, FORMAT, wishes);
      bank.loadInto(synthesizer);
      return Optional.of(new StreamSynth(synthesizer, stream, synthesizer.getReceiver(), bank));
    } catch (InvocationTargetException | MidiUnavailableException | IllegalAccessException e) {
      return Optional.empty();
    } catch (ClassNotFoundException | NoSuchMethodException e) {
      return Optional.empty();
    }
  }

  /** Sends a message that is to take effect at this position. */
  public void send(ShortMessage message, long positionMicros) {
    if (message.getCommand() == ShortMessage.PROGRAM_CHANGE) {
      bank.loadProgram(synthesizer, message.getData1());
    }
    // Below 0 the JDK takes a stamp to mean "now", on the caller's thread.
    hand(message, Math.max(0, positionMicros));
  }

  /** Takes effect at once, whatever was sent ahead; only for stopping. */
  public void sendNow(ShortMessage message) {
    hand(message, -1);
  }

  private void hand(ShortMessage message, long micros) {
    try {
      receiver.send(message, micros);
    } catch (IllegalStateException closed) {
      // The synthesizer is no more, which whoever draws it is told.
      LOG.debug("a message came too late: {}", closed.getMessage());
    }
  }

  /**
   * Draws exactly as many bytes as fit in {@code block}; whole frames.
   *
   * @return whether it is alive: one that was closed or that broke draws silence from then on
   */
  public boolean draw(byte[] block) {
    int got = 0;
    try {
      while (got < block.length) {
        int n = stream.read(block, got, block.length - got);
        if (n < 0) {
          break;
        }
        got += n;
      }
    } catch (IOException | RuntimeException broken) {
      // It is code of another hand in the thread that keeps time, which must not end by it.
      LOG.error("the synthesizer broke", broken);
    }
    Arrays.fill(block, got, block.length, (byte) 0);
    // The JDK's stream of a synthesizer that was closed gives silence without an end.
    return got == block.length && synthesizer.isOpen();
  }

  /** The bank that it plays. */
  public SoundBank bank() {
    return bank;
  }

  @Override
  public void close() {
    receiver.close();
    synthesizer.close();
  }
}
