package holdfast.backing;

import holdfast.backing.sound.SoundBank;
import holdfast.backing.sound.StreamSynth;
import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Optional;
import javax.sound.midi.ShortMessage;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/**
 * A performance as a sound file: drawn from the same synthesizer that plays it live, as fast as the
 * machine can, with every onset on its sample. The same performance gives the same file.
 */
public final class BackingAudio {

  /** What rings on after the last beat. */
  private static final double RELEASE_SECONDS = 2.5;

  /** Notes are handed to the synthesizer a second of sound at a time. */
  private static final double STRIDE_SECONDS = 1;

  /** The lengths in a WAV file have 32 bits, some readers take one of them for the sign. */
  private static final double LONGEST_SECONDS = 3 * 60 * 60;

  private BackingAudio() {}

  /**
   * Writes the performance as a WAV file, 44.1 kHz, 16 bit, stereo; whole or not at all. Second 0
   * is the first beat of all, that of the count-in where there is one.
   *
   * @throws UserMistake where the file cannot be written, or this Java cannot render offline
   */
  public static void write(Performance performance, SoundBank bank, Path file) {
    if (performance.seconds() > LONGEST_SECONDS) {
      throw new UserMistake(
          "a WAV file can hold three hours, and this would last longer; ask for fewer choruses");
    }
    try (StreamSynth synth = open(bank)) {
      Drawing drawing = new Drawing(synth, performance);
      WholeFile.write(
          file,
          fresh -> {
            AudioInputStream samples =
                new AudioInputStream(drawing, StreamSynth.FORMAT, drawing.frames());
            AudioSystem.write(samples, AudioFileFormat.Type.WAVE, fresh.toFile());
          });
    }
  }

  /** The same sound as samples of both channels, interleaved, 16 bit little-endian. */
  public static byte[] render(Performance performance, SoundBank bank) {
    try (StreamSynth synth = open(bank)) {
      return new Drawing(synth, performance).readAllBytes();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /**
   * The same sound as a stream that is drawn as it is read, so that hours of it need no memory.
   * Whoever reads it closes it.
   */
  public static InputStream stream(Performance performance, SoundBank bank) {
    StreamSynth synth = open(bank);
    return new Drawing(synth, performance) {
      @Override
      public void close() {
        synth.close();
      }
    };
  }

  /** How long {@link #stream} is: the performance and what rings on. */
  public static double seconds(Performance performance) {
    return performance.seconds() + RELEASE_SECONDS;
  }

  /** Samples per second of {@link #render} and {@link #stream}. */
  public static int rate() {
    return Math.round(StreamSynth.FORMAT.getSampleRate());
  }

  private static StreamSynth open(SoundBank bank) {
    Optional<StreamSynth> synth = StreamSynth.open(bank);
    return synth.orElseThrow(
        () ->
            new UserMistake(
                "this Java does not let the backing be rendered; start it with"
                    + " --add-exports=java.desktop/com.sun.media.sound=ALL-UNNAMED, or write a"
                    + " .mid file"));
  }

  /** Draws stride by stride, each stride's notes sent just before it. */
  private static class Drawing extends InputStream {
    private final StreamSynth synth;
    private final java.util.ArrayDeque<Stamped> messages = new java.util.ArrayDeque<>();
    private final byte[] stride;
    private final long frames;
    private int at;
    private int skip;
    private long drawnFrames;
    private long leftBytes;

    private record Stamped(long micros, boolean begins, ShortMessage message) {}

    Drawing(StreamSynth synth, Performance performance) {
      this.synth = synth;
      double rate = StreamSynth.FORMAT.getFrameRate();
      int frameBytes = StreamSynth.FORMAT.getFrameSize();
      TempoMap tempo = performance.tempoMap();
      double zero = tempo.secondsAt(performance.firstBeat());
      for (Seat seat : Seat.band(performance.arrangement().feel())) {
        seat.messages().forEach(message -> synth.send(message, 0));
      }
      java.util.List<Stamped> all = new java.util.ArrayList<>();
      for (BackingEvent event : performance.events()) {
        Seat seat = Seat.of(event.part(), performance.arrangement().feel());
        all.add(
            new Stamped(
                micros(tempo.secondsAt(event.onsetBeats()) - zero), true, Seat.begin(seat, event)));
        all.add(
            new Stamped(
                micros(tempo.secondsAt(event.endBeats()) - zero), false, Seat.end(seat, event)));
      }
      all.sort(java.util.Comparator.comparingLong(Stamped::micros).thenComparing(Stamped::begins));
      messages.addAll(all);
      double seconds =
          tempo.secondsAt(performance.lastBeat().orElseThrow()) - zero + RELEASE_SECONDS;
      this.frames = Math.round(seconds * rate);
      this.leftBytes = frames * frameBytes;
      this.stride = new byte[((int) (STRIDE_SECONDS * rate)) * frameBytes];
      this.at = stride.length;
      // The synthesizer's own delay is cut off at the start.
      this.skip = StreamSynth.DELAY_FRAMES * frameBytes;
    }

    private static long micros(double seconds) {
      return Math.round(seconds * 1e6);
    }

    long frames() {
      return frames;
    }

    @Override
    public int read() {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) {
      if (leftBytes == 0) {
        return -1;
      }
      if (at == stride.length) {
        draw();
      }
      int n = (int) Math.min(leftBytes, Math.min(length, stride.length - at));
      System.arraycopy(stride, at, bytes, offset, n);
      at += n;
      leftBytes -= n;
      return n;
    }

    private void draw() {
      drawnFrames += stride.length / StreamSynth.FORMAT.getFrameSize();
      long until = micros(drawnFrames / (double) StreamSynth.FORMAT.getFrameRate());
      while (!messages.isEmpty() && messages.peek().micros() < until) {
        Stamped next = messages.remove();
        synth.send(next.message(), next.micros());
      }
      if (!synth.draw(stride)) {
        throw new IllegalStateException("the synthesizer broke off; run the command once more");
      }
      at = skip;
      skip = 0;
    }
  }
}
