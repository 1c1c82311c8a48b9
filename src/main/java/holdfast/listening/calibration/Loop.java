package holdfast.listening.calibration;

import holdfast.listening.microphone.LineSamples;
import holdfast.mistake.UserMistake;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleConsumer;
import javax.sound.sampled.SourceDataLine;

/**
 * Plays chirps and records them again: how long does sound take from the program and back?
 *
 * <p>Both ends are counted by the devices' own samples, as they are while a take runs, and not by
 * when a thread wrote or read: a line may be given ten times the buffer that was asked for, and a
 * thread is late when it likes. The delay is from the moment at which a sample leaves the output's
 * line to the moment at which it can be read from the input's; what waits inside the lines is no
 * part of it, because whoever plays or listens counts that already.
 */
public final class Loop {

  private static final int CHIRPS = 4;

  /** At least so many must agree. */
  private static final int AGREEING = 3;

  /** Seconds of silence before the first chirp, while the lines settle. */
  private static final double LEAD = 1.0;

  /** From chirp to chirp, in seconds: more than the longest delay and the chirp. */
  private static final double EVERY = 1.4;

  /** The longest delay that is looked for, in seconds. */
  static final double LONGEST = 1.0;

  /** A sample can seem ready before it left, by the grain of the devices' counts; in seconds. */
  private static final double GRAIN = 0.003;

  /** Measurements this near each other agree, in seconds. */
  private static final double AGREE = 0.002;

  /** Samples that are played or read at once: 5 ms. */
  private static final int BLOCK = 240;

  private final LoopDevices devices;
  private final SampleCount played;
  private final SampleCount recordedCount;
  private final float[] chirp;
  private final float[] block = new float[BLOCK];
  private float[] recorded;
  private int have;
  private long written;

  private Loop(LoopDevices devices) {
    this.devices = devices;
    this.played = new SampleCount(devices.outRate());
    this.recordedCount = new SampleCount(devices.inRate());
    this.chirp = Chirp.samples(devices.outRate());
    this.recorded = new float[12 * devices.inRate()];
  }

  /**
   * Measures a pair of devices.
   *
   * @param output open in 16 bit; started by this
   * @param microphone an open line, already started
   * @return empty when the chirps were not heard
   * @throws UserMistake when the devices do not keep time or take no sound
   */
  public static Optional<LoopDelay> delay(SourceDataLine output, LineSamples microphone)
      throws InterruptedException {
    output.start();
    microphone.forget();
    return measure(new SoundLoop(output, microphone));
  }

  static Optional<LoopDelay> measure(LoopDevices devices) throws InterruptedException {
    return measure(devices, second -> {});
  }

  /** The same, and tells the second of the machine's clock at which each chirp left. */
  static Optional<LoopDelay> measure(LoopDevices devices, DoubleConsumer left)
      throws InterruptedException {
    Loop loop = new Loop(devices);
    loop.run();
    for (int number = 0; number < CHIRPS; number++) {
      loop.played.secondsOf((double) loop.chirpAt(number)).ifPresent(left);
    }
    return loop.delay();
  }

  private long chirpAt(int number) {
    return Math.round((LEAD + number * EVERY) * devices.outRate());
  }

  private void run() throws InterruptedException {
    long start = devices.nanoTime();
    double seconds = LEAD + CHIRPS * EVERY + 0.3;
    long end = Math.round(seconds * devices.outRate());
    while (written - devices.waitingToPlay() < end) {
      // A device that is stuck must not hold us for good.
      if (devices.nanoTime() - start > (3 * seconds + 5) * 1e9) {
        throw new UserMistake(
            "the sound devices do not keep time; unplug and plug them in again, or choose others");
      }
      boolean busy = play();
      busy |= record();
      if (!busy) {
        devices.rest();
      }
    }
  }

  private boolean play() {
    boolean wrote = false;
    while (devices.room() >= BLOCK) {
      for (int i = 0; i < BLOCK; i++) {
        block[i] = 0;
        for (int number = 0; number < CHIRPS; number++) {
          long into = written + i - chirpAt(number);
          if (into >= 0 && into < chirp.length) {
            block[i] = chirp[(int) into];
          }
        }
      }
      devices.play(block, BLOCK);
      written += BLOCK;
      wrote = true;
    }
    long gone = written - devices.waitingToPlay();
    played.observe(gone, devices.nanoTime());
    return wrote;
  }

  private boolean record() {
    int ready = devices.ready();
    recordedCount.observe(have + ready, devices.nanoTime());
    int done = 0;
    while (done < ready) {
      int got = devices.read(block, Math.min(BLOCK, ready - done));
      if (got <= 0) {
        break;
      }
      if (have + got > recorded.length) {
        recorded = Arrays.copyOf(recorded, 2 * recorded.length);
      }
      System.arraycopy(block, 0, recorded, have, got);
      have += got;
      done += got;
    }
    return done > 0;
  }

  private Optional<LoopDelay> delay() {
    List<Double> delays = new ArrayList<>();
    int heard = 0;
    for (int number = 0; number < CHIRPS; number++) {
      OptionalDouble left = played.secondsOf((double) chirpAt(number));
      OptionalDouble found = left.isPresent() ? find(left.getAsDouble()) : anywhere(number);
      if (found.isEmpty()) {
        continue;
      }
      heard++;
      OptionalDouble came = recordedCount.secondsOf(found.getAsDouble());
      if (left.isPresent() && came.isPresent()) {
        delays.add(came.getAsDouble() - left.getAsDouble());
      }
    }
    if (heard == 0) {
      return Optional.empty();
    }
    return Optional.of(agreed(delays));
  }

  /** The sample of the recording at which a chirp begins that left at this second. */
  private OptionalDouble find(double leftSeconds) {
    OptionalDouble zero = recordedCount.secondsOf(Math.min(have, devices.inRate() / 2.0));
    double zeroSeconds = zero.orElse(leftSeconds) - 0.5;
    int from = (int) Math.max(0, (leftSeconds - zeroSeconds - 0.1) * devices.inRate());
    int to = (int) Math.min(have, from + (0.1 + LONGEST + 0.25) * devices.inRate());
    if (to <= from) {
      return OptionalDouble.empty();
    }
    OptionalDouble at = Chirp.find(Arrays.copyOfRange(recorded, from, to), devices.inRate());
    return at.isPresent() ? OptionalDouble.of(from + at.getAsDouble()) : at;
  }

  /** Whether a chirp is heard at all, where its time was lost. */
  private OptionalDouble anywhere(int number) {
    int from = (int) Math.min(have, (LEAD + number * EVERY - 0.5) * devices.inRate());
    return Chirp.find(Arrays.copyOfRange(recorded, from, have), devices.inRate());
  }

  private static LoopDelay agreed(List<Double> delays) {
    List<Double> best = List.of();
    for (double middle : delays) {
      List<Double> near =
          delays.stream().filter(delay -> Math.abs(delay - middle) <= AGREE / 2).sorted().toList();
      best = near.size() > best.size() ? near : best;
    }
    if (best.size() < AGREEING) {
      throw new UserMistake(
          "the sound broke off while I measured, so the delay is not known; close programs that"
              + " keep this machine busy and calibrate again");
    }
    double delay = best.get(best.size() / 2);
    if (delay < -GRAIN || delay > LONGEST) {
      throw new UserMistake(
          "a delay of "
              + Math.round(1000 * delay)
              + " ms was measured, which cannot be; calibrate again");
    }
    double spread = best.get(best.size() - 1) - best.get(0);
    return new LoopDelay(Math.max(0, delay), spread, best.size(), CHIRPS);
  }
}
