package holdfast.listening.microphone;

import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.pitch.Ear;
import holdfast.listening.pitch.NoteListener;
import holdfast.listening.pitch.Tuning;
import holdfast.time.TakeClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.TargetDataLine;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Listens to one microphone. When it is unplugged in mid-take, what was heard stays and the ear
 * says that it no longer listens.
 */
final class MicrophoneCapture implements Capture {

  private static final Logger LOG = LoggerFactory.getLogger(MicrophoneCapture.class);

  /** Frames that are read from the device at once: about 5 ms. */
  private static final int READ_FRAMES = 240;

  /** Room for four seconds: whoever fetches later than that has stopped listening. */
  private static final int RING = 1 << 18;

  /** Decibels under full scale that count as silence when loudness is told from 0 to 1. */
  private static final double SILENT_DB = 60;

  /** Length in seconds of a note that was none: far under the shortest that is played. */
  private static final double TAKEN_BACK = 0.005;

  private final TargetDataLine line;
  private final SoundRing ring = new SoundRing(RING);
  private final float[] block = new float[1024];
  private final Ear ear;
  private final Notes notes = new Notes();
  private final Thread device;
  private final TakeClock clock;
  private final double delaySeconds;
  private double latestSeconds = Double.NEGATIVE_INFINITY;

  /** Set by the device thread when the first samples have come in: when sample 0 was recorded. */
  private volatile long firstNanos = Long.MIN_VALUE;

  private volatile boolean listening = true;

  MicrophoneCapture(Microphone microphone, TargetDataLine line, TakeClock clock) {
    this.line = line;
    int rate = Math.round(line.getFormat().getSampleRate());
    this.ear =
        new Ear(
            rate,
            true,
            microphone.expected().lowestHz(),
            microphone.expected().highestHz(),
            microphone.expected().levels(),
            (frame, cents, sung, sure, level, flux) -> {},
            notes);
    this.clock = clock;
    this.delaySeconds = microphone.expected().delaySeconds();
    this.device = new Thread(this::record, "microphone");
    device.setDaemon(true);
    device.start();
  }

  /** The device's thread: copies and stamps, no more. */
  private void record() {
    AudioFormat format = line.getFormat();
    LineReader reader = new LineReader(format);
    byte[] bytes = new byte[READ_FRAMES * format.getFrameSize()];
    float[] samples = new float[READ_FRAMES];
    line.start();
    while (listening) {
      int got = line.read(bytes, 0, bytes.length);
      if (got <= 0) {
        if (!line.isOpen() || got < 0) {
          break;
        }
        continue;
      }
      int count = reader.read(bytes, got, samples);
      if (firstNanos == Long.MIN_VALUE) {
        firstNanos = System.nanoTime() - Math.round(count * 1e9 / format.getSampleRate());
      }
      ring.write(samples, count);
    }
    listening = false;
    LOG.info("the microphone has stopped; {} samples were clipped", reader.clipped());
  }

  @Override
  public Heard await(Duration atMost) throws InterruptedException {
    long until = System.nanoTime() + atMost.toNanos();
    notes.events.clear();
    do {
      int count = ring.read(block);
      if (count > 0) {
        ear.push(block, 0, count);
      } else if (!notes.events.isEmpty() || !listening) {
        break;
      } else {
        Thread.sleep(2);
      }
    } while (System.nanoTime() < until);
    // A clock that is fitted to the sound device may step back by a hair; a promise never does.
    latestSeconds = Math.max(latestSeconds, takeSeconds(ear.toldSeconds()));
    return new Heard(notes.events, latestSeconds);
  }

  /** From seconds of the recording to seconds of the take. */
  private double takeSeconds(double recorded) {
    long first = firstNanos;
    if (first == Long.MIN_VALUE) {
      return Double.NEGATIVE_INFINITY;
    }
    return clock.secondsAt(first + Math.round((recorded - delaySeconds) * 1e9));
  }

  @Override
  public boolean isListening() {
    return listening;
  }

  @Override
  public long lost() {
    return ring.lost();
  }

  @Override
  public void close() {
    listening = false;
    line.stop();
    line.close();
    try {
      device.join(1000);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  /** Notes of the ear as events of the take. */
  private final class Notes implements NoteListener {
    private final List<PlayEvent> events = new ArrayList<>();
    private final Tuning tuning = Tuning.unknown();
    private int sounding = -1;
    private double sinceSeconds;

    @Override
    public void began(double onsetSeconds, double cents, double levelDb) {
      sounding = tuning.pitch(cents);
      sinceSeconds = onsetSeconds;
      events.add(
          new PlayEvent.NoteOn(
              takeSeconds(onsetSeconds),
              sounding,
              Math.max(-100, Math.min(100, cents - 100.0 * sounding)),
              Math.max(0, Math.min(1, 1 + levelDb / SILENT_DB)),
              0.8));
    }

    @Override
    public void ended(
        double onsetSeconds, double endSeconds, double cents, double levelDb, double confidence) {
      tuning.hear(cents, endSeconds - onsetSeconds);
      events.add(new PlayEvent.NoteOff(takeSeconds(endSeconds), sounding));
      sounding = -1;
    }

    @Override
    public void takenBack() {
      // The seam has no word for it: what is left is a note too short to be meant.
      events.add(new PlayEvent.NoteOff(takeSeconds(sinceSeconds + TAKEN_BACK), sounding));
      sounding = -1;
    }
  }
}
