package holdfast.backing.sound;

/**
 * A volume for 16-bit little-endian samples that moves in small steps, so that it does not click.
 */
final class Gain {

  private final double step;
  private double now;

  /**
   * @param start the volume to begin with, 0 to 1
   * @param step the most by which it moves in one block
   */
  Gain(double start, double step) {
    this.now = start;
    this.step = step;
  }

  /** Scales the block in place, gliding from the volume of the last block towards this one. */
  void apply(byte[] block, double wanted) {
    double from = now;
    double to = from + Math.max(-step, Math.min(step, wanted - from));
    int samples = block.length / 2;
    for (int i = 0; i < samples; i++) {
      double gain = from + (to - from) * i / samples;
      int sample = (block[2 * i] & 0xFF) | block[2 * i + 1] << 8;
      int scaled = (int) Math.round(sample * gain);
      block[2 * i] = (byte) scaled;
      block[2 * i + 1] = (byte) (scaled >> 8);
    }
    now = to;
  }
}
