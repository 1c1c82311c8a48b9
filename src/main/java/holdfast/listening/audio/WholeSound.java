package holdfast.listening.audio;

import java.util.Arrays;

/** Keeps all that is read in memory, and in the end the louder channel of it. */
final class WholeSound implements SampleSink {

  private final Loudness loudness = new Loudness();
  private int rate;
  private float[][] sound = new float[0][];
  private int frames;

  @Override
  public void begin(int rate, int channels) {
    this.rate = rate;
    this.sound = new float[channels][1 << 16];
  }

  @Override
  public void take(float[][] block, int count) {
    for (int c = 0; c < sound.length; c++) {
      if (frames + count > sound[c].length) {
        sound[c] = Arrays.copyOf(sound[c], Math.max(2 * sound[c].length, frames + count));
      }
      System.arraycopy(block[c], 0, sound[c], frames, count);
    }
    loudness.hear(block, sound.length, count);
    frames += count;
  }

  Sound sound() {
    int better = loudness.louder();
    return new Sound(rate, Arrays.copyOf(sound[better], frames), loudness.clipped(better));
  }
}
