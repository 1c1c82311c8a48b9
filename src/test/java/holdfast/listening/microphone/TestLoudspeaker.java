package holdfast.listening.microphone;

import java.lang.reflect.Proxy;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.locks.LockSupport;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.spi.MixerProvider;

/**
 * A loudspeaker that the JDK finds as it finds real ones, in front of the {@link TestMicrophone}:
 * what it plays is heard there, a little later and softer, in real time.
 */
public final class TestLoudspeaker extends MixerProvider {

  public static final String NAME = "Test Loudspeaker";

  /** What it plays, and what the microphone in front of it is to be plugged in as. */
  public static final AudioFormat MICROPHONE = new AudioFormat(44_100, 16, 1, true, false);

  private static final AudioFormat FORMAT = new AudioFormat(44_100, 16, 2, true, false);
  private static final int FRAME_BYTES = 4;

  /** 10 ms. */
  private static final int BLOCK = 441;

  /** 0.5 s of sound may wait. */
  private static final int ROOM = 50 * BLOCK;

  /** Between loudspeaker and microphone: 20 ms. */
  private static final int LATE_BLOCKS = 2;

  private static final float SOFTER = 0.5f;

  private static final Mixer.Info INFO = new DeviceInfo();
  private static final Deque<Float> WAITING = new ArrayDeque<>();
  private static volatile boolean plugged;

  /** Plugs it in: from now on the microphone hears it, or the silence between. */
  public static void plugIn() {
    synchronized (WAITING) {
      WAITING.clear();
    }
    TestMicrophone.inRealTime(true);
    plugged = true;
    Thread air = new Thread(TestLoudspeaker::sound, "air");
    air.setDaemon(true);
    air.start();
  }

  /** Pulls it out. */
  public static void pullOut() {
    plugged = false;
    TestMicrophone.inRealTime(false);
  }

  private static void sound() {
    Deque<float[]> inTheAir = new ArrayDeque<>();
    for (int i = 0; i < LATE_BLOCKS; i++) {
      inTheAir.add(new float[BLOCK]);
    }
    for (long due = System.nanoTime(); plugged; due += 10_000_000) {
      float[] block = new float[BLOCK];
      synchronized (WAITING) {
        for (int i = 0; i < BLOCK && !WAITING.isEmpty(); i++) {
          block[i] = SOFTER * WAITING.remove();
        }
        WAITING.notifyAll();
      }
      inTheAir.add(block);
      float[] arrived = inTheAir.remove();
      // What nobody records is gone, as with real microphones.
      if (TestMicrophone.isListenedTo()) {
        TestMicrophone.sing(arrived);
      }
      LockSupport.parkNanos(due - System.nanoTime());
    }
  }

  private static int available() {
    synchronized (WAITING) {
      return FRAME_BYTES * (ROOM - WAITING.size());
    }
  }

  private static int write(byte[] bytes, int offset, int length) throws InterruptedException {
    synchronized (WAITING) {
      for (int at = offset; at < offset + length; at += FRAME_BYTES) {
        while (WAITING.size() >= ROOM) {
          WAITING.wait();
        }
        WAITING.add((short) ((bytes[at] & 0xFF) | bytes[at + 1] << 8) / 32768f);
      }
    }
    return length;
  }

  private static final class DeviceInfo extends Mixer.Info {
    DeviceInfo() {
      super(NAME, "nobody", "a loudspeaker for tests", "1");
    }
  }

  @Override
  public Mixer.Info[] getMixerInfo() {
    return plugged ? new Mixer.Info[] {INFO} : new Mixer.Info[0];
  }

  @Override
  public Mixer getMixer(Mixer.Info info) {
    if (!INFO.equals(info)) {
      throw new IllegalArgumentException("not ours: " + info);
    }
    return (Mixer)
        Proxy.newProxyInstance(
            TestLoudspeaker.class.getClassLoader(),
            new Class<?>[] {Mixer.class},
            (proxy, method, arguments) ->
                switch (method.getName()) {
                  case "getMixerInfo" -> INFO;
                  case "isLineSupported" ->
                      ((Line.Info) arguments[0]).getLineClass() == SourceDataLine.class;
                  case "getLine" -> line();
                  case "getSourceLineInfo" ->
                      new Line.Info[] {new DataLine.Info(SourceDataLine.class, FORMAT)};
                  case "getTargetLineInfo" -> new Line.Info[0];
                  case "getMaxLines" -> 1;
                  default -> null;
                });
  }

  private static SourceDataLine line() {
    return (SourceDataLine)
        Proxy.newProxyInstance(
            TestLoudspeaker.class.getClassLoader(),
            new Class<?>[] {SourceDataLine.class},
            (proxy, method, arguments) ->
                switch (method.getName()) {
                  case "getFormat" -> FORMAT;
                  case "getBufferSize" -> FRAME_BYTES * ROOM;
                  case "available" -> available();
                  case "write" ->
                      write((byte[]) arguments[0], (int) arguments[1], (int) arguments[2]);
                  default -> null;
                });
  }
}
