package holdfast.listening.calibration;

import holdfast.listening.microphone.LineSamples;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.SourceDataLine;

/** The loop through the machine's own sound devices. */
final class SoundLoop implements LoopDevices {

  private static final int SAMPLE_BYTES = 2;

  private final SourceDataLine output;
  private final LineSamples microphone;
  private final int channels;
  private final boolean bigEndian;

  SoundLoop(SourceDataLine output, LineSamples microphone) {
    AudioFormat format = output.getFormat();
    if (format.getSampleSizeInBits() != 8 * SAMPLE_BYTES) {
      throw new IllegalArgumentException("16 bits are played, not " + format);
    }
    this.output = output;
    this.microphone = microphone;
    this.channels = format.getChannels();
    this.bigEndian = format.isBigEndian();
  }

  @Override
  public int outRate() {
    return Math.round(output.getFormat().getSampleRate());
  }

  @Override
  public int inRate() {
    return microphone.rate();
  }

  @Override
  public int room() {
    return output.available() / (SAMPLE_BYTES * channels);
  }

  @Override
  public void play(float[] samples, int count) {
    byte[] bytes = new byte[count * channels * SAMPLE_BYTES];
    for (int i = 0; i < count * channels; i++) {
      short value = (short) Math.round(32767 * samples[i / channels]);
      bytes[2 * i + (bigEndian ? 1 : 0)] = (byte) value;
      bytes[2 * i + (bigEndian ? 0 : 1)] = (byte) (value >> 8);
    }
    output.write(bytes, 0, bytes.length);
  }

  @Override
  public long waitingToPlay() {
    return Math.max(0, output.getBufferSize() / (SAMPLE_BYTES * channels) - room());
  }

  @Override
  public int ready() {
    return microphone.waiting();
  }

  @Override
  public int read(float[] to, int count) {
    return microphone.read(to, 0, count);
  }

  @Override
  public long nanoTime() {
    return System.nanoTime();
  }

  @Override
  public void rest() throws InterruptedException {
    Thread.sleep(1);
  }
}
