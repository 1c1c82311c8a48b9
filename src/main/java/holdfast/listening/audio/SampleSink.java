package holdfast.listening.audio;

import java.io.IOException;

/** Where a decoder puts what it reads, block by block: nothing needs to hold a file whole. */
interface SampleSink {

  /**
   * Said once, before the first block.
   *
   * @param rate samples per second
   * @param channels 1 or 2: what is told of the file's channels
   */
  void begin(int rate, int channels) throws IOException;

  /**
   * The next samples.
   *
   * @param block by channel, full scale ±1; may be reused after the call
   * @param frames how many samples of each channel are valid
   */
  void take(float[][] block, int frames) throws IOException;
}
