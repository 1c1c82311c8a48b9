package holdfast.listening.calibration;

import holdfast.mistake.UserMistake;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongConsumer;

/** Clicks to tap along to, each with the moment at which it left the output's line. */
final class ClickTrain {

  /** From click to click, in seconds: 75 a minute, slow enough to be calm, quick enough to hold. */
  static final double APART = 0.8;

  /** Clicks: those that are only settled into, and twenty that count. */
  static final int CLICKS = TapCheck.SETTLING + 20;

  private static final double LEAD = 1.0;
  private static final double CLICK_SECONDS = 0.02;
  private static final double CLICK_HZ = 1500;
  private static final double LEVEL = 0.4;
  private static final int BLOCK = 240;

  private ClickTrain() {}

  /**
   * Plays the clicks.
   *
   * @param ears called at least once a millisecond with the machine's clock, to look for taps
   * @return the second of the machine's clock of each click
   */
  static List<Double> play(LoopDevices devices, LongConsumer ears) throws InterruptedException {
    int rate = devices.outRate();
    SampleCount count = new SampleCount(rate);
    float[] block = new float[BLOCK];
    long written = 0;
    long end = Math.round((LEAD + CLICKS * APART + 0.8) * rate);
    long start = devices.nanoTime();
    while (written - devices.waitingToPlay() < end) {
      if (devices.nanoTime() - start > 3e9 * end / rate) {
        throw new UserMistake("the loudspeaker takes no sound; choose another with --output");
      }
      while (devices.room() >= BLOCK) {
        for (int i = 0; i < BLOCK; i++) {
          block[i] = sample((double) (written + i) / rate);
        }
        devices.play(block, BLOCK);
        written += BLOCK;
      }
      count.observe(written - devices.waitingToPlay(), devices.nanoTime());
      ears.accept(devices.nanoTime());
      devices.rest();
    }
    List<Double> clicks = new ArrayList<>();
    for (int i = 0; i < CLICKS; i++) {
      double at = LEAD + i * APART;
      clicks.add(
          count
              .secondsOf(at * rate)
              .orElseThrow(
                  () ->
                      new UserMistake(
                          "the sound broke off while you tapped; close programs that keep this"
                              + " machine busy and try again")));
    }
    return clicks;
  }

  private static float sample(double seconds) {
    double since = seconds - LEAD;
    int number = (int) Math.floor(since / APART);
    double into = since - number * APART;
    if (number < 0 || number >= CLICKS || into > CLICK_SECONDS) {
      return 0;
    }
    double fade = 1 - into / CLICK_SECONDS;
    return (float) (LEVEL * fade * fade * Math.sin(2 * Math.PI * CLICK_HZ * into));
  }
}
