package holdfast.bench.listening;

import holdfast.backing.Playback;
import holdfast.time.ClockFit;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/**
 * A singer without a body: a clip that is played on a line of its own, so that its first sample is
 * heard with the first beat of a playback, as near as the system's clocks allow.
 */
final class SingingLoudspeaker implements AutoCloseable {

  private static final AudioFormat FORMAT = new AudioFormat(Clip.RATE, 16, 2, true, false);
  private static final int BLOCK = 441;

  /** What the backing's clock takes a device to need from its buffer to the ear. */
  private static final long LATENCY_NANOS = 15_000_000;

  private final Thread thread;
  private volatile boolean enough;
  private final AtomicInteger gaps = new AtomicInteger();

  private SingingLoudspeaker(Clip clip, float gain, CompletableFuture<Playback> playback)
      throws LineUnavailableException {
    SourceDataLine line = AudioSystem.getSourceDataLine(FORMAT);
    line.open(FORMAT, BLOCK * 20 * FORMAT.getFrameSize());
    this.thread = new Thread(() -> play(line, clip, gain, playback), "singer");
    thread.setDaemon(true);
    thread.start();
  }

  static SingingLoudspeaker sing(Clip clip, float gain, CompletableFuture<Playback> playback)
      throws LineUnavailableException {
    return new SingingLoudspeaker(clip, gain, playback);
  }

  private void play(
      SourceDataLine line, Clip clip, float gain, CompletableFuture<Playback> playback) {
    ClockFit fit = new ClockFit(0, System.nanoTime());
    byte[] block = new byte[BLOCK * FORMAT.getFrameSize()];
    int buffer = line.getBufferSize() / FORMAT.getFrameSize();
    long written = 0;
    long first = Long.MAX_VALUE;
    line.start();
    while (!enough) {
      // Until its first sample is written the song's place is looked up anew, as clocks settle.
      if (playback.isDone() && written < first) {
        first = frame(fit.microsAt(firstBeat(playback) - LATENCY_NANOS));
        first = first <= written ? written : first;
      }
      for (int i = 0; i < BLOCK; i++) {
        long at = written + i - first;
        float value = at >= 0 && at < clip.samples().length ? gain * clip.samples()[(int) at] : 0;
        int sample = Math.max(-32768, Math.min(32767, Math.round(32767 * value)));
        for (int channel = 0; channel < 2; channel++) {
          block[4 * i + 2 * channel] = (byte) sample;
          block[4 * i + 2 * channel + 1] = (byte) (sample >> 8);
        }
      }
      line.write(block, 0, block.length);
      written += BLOCK;
      // Little is left in the line: the machine was elsewhere, and the song has broken off.
      int waiting = buffer - line.available() / FORMAT.getFrameSize();
      if (written > 2L * buffer) {
        gaps.addAndGet(waiting <= BLOCK ? 1 : 0);
        fit.observe(micros(written - waiting), System.nanoTime());
      }
    }
    line.close();
  }

  private static long firstBeat(CompletableFuture<Playback> playback) {
    try {
      return playback.get().clock().nanoTimeAt(0);
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }

  private static long micros(long frames) {
    return Math.round(frames * 1e6 / Clip.RATE);
  }

  private static long frame(long micros) {
    return Math.round(micros * 1e-6 * Clip.RATE);
  }

  /** How often the song has broken off for a moment, because the machine was too busy. */
  int gaps() {
    return gaps.get();
  }

  @Override
  public void close() {
    enough = true;
    try {
      thread.join(1000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
