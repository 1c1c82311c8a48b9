package holdfast.listening.microphone;

import holdfast.listening.Heard;
import holdfast.listening.audio.Resampler;
import holdfast.listening.pitch.Ear;
import holdfast.listening.pitch.Tuning;
import holdfast.time.ClockFit;
import holdfast.time.TakeClock;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The session's side of one open line: fetches what came in, listens, and tells notes in seconds of
 * the take. The line's own count of samples is tied to the machine's clock all the while, so that a
 * sound card that runs fast or slow does not carry a long take away.
 */
final class LineEar {

  /** Samples that are fetched at once: less than a frame of 5 ms would be waiting for nothing. */
  private static final int BLOCK = 1024;

  private final OpenLine line;
  private final TakeClock clock;
  private final double delaySeconds;
  private final ClockFit fit;
  private final float[] block = new float[BLOCK];
  private final float[] atEarRate;
  private final Resampler resampler;
  private final Optional<Bleed> bleed;
  private final Ear ear;
  private final DecidedNotes notes;
  private long fetched;

  LineEar(OpenLine line, Microphone microphone, Tuning tuning, TakeClock clock, long nanoTime) {
    Expected expected = microphone.expected();
    this.line = line;
    this.clock = clock;
    this.fit = new ClockFit(0, nanoTime);
    this.delaySeconds = expected.delaySeconds();
    this.resampler = new Resampler(line.rate());
    this.atEarRate = new float[resampler.mostOutput(BLOCK)];
    this.bleed = microphone.backing().map(sound -> new Bleed(sound, atEarRate.length));
    this.notes = new DecidedNotes(tuning, () -> gateDb(expected));
    this.ear =
        new Ear(
            Resampler.EAR_RATE,
            true,
            expected.lowestHz(),
            expected.highestHz(),
            expected.levels(),
            expected.manner(),
            (frame, cents, sung, sure, level, flux) -> {},
            notes);
    notes.place(this::takeSeconds);
  }

  /** Over the room that was measured; else over what sounds in the rests. */
  private double gateDb(Expected expected) {
    return expected.manner().gate(expected.roomMeasured() ? expected.levels() : ear.levels());
  }

  /** Fetches and hears what waits, up to one block; the number of samples, 0 for none. */
  int listen() {
    int count = line.ring().read(block);
    if (count > 0) {
      line.ring().tell(fit);
      int made = resampler.push(block, 0, count, atEarRate);
      bleed.ifPresent(
          b -> b.clean(atEarRate, made, fit.nanoTimeAt(micros(fetched)) - nanos(delaySeconds)));
      ear.push(atEarRate, 0, made);
      fetched += count;
    }
    return count;
  }

  /** The samples that {@link #listen} fetched last. */
  float[] fetched() {
    return block;
  }

  /** Tells what is decided by now. */
  Heard tell() {
    double promise = fetched == 0 ? Double.NEGATIVE_INFINITY : notes.promise(ear.toldSeconds());
    return new Heard(notes.take(), promise);
  }

  /** Nothing more comes: tells what is left. */
  Heard end() {
    ear.end();
    return tell();
  }

  /** The pitch that sounds now, in cents (A4 = 6900). */
  OptionalDouble sounding() {
    return notes.sounding();
  }

  private double takeSeconds(double recorded) {
    return clock.secondsAt(fit.nanoTimeAt(Math.round((recorded - delaySeconds) * 1e6)));
  }

  private long micros(long samples) {
    return Math.round(samples * 1e6 / line.rate());
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
