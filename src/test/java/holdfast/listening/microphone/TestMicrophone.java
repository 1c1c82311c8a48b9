package holdfast.listening.microphone;

import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.time.TakeClock;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.Control;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineListener;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;
import javax.sound.sampled.spi.MixerProvider;

/**
 * A microphone that the JDK finds as it finds real ones, and that a test can sing into, block, pull
 * out and plug in again, in any format. Its clock is its own: time goes by as sound is read.
 */
public final class TestMicrophone extends MixerProvider {

  /** What the system calls it, with the port behind it as Linux writes it. */
  static final String SYSTEM_NAME = "Test Microphone [plughw:9,0]";

  public static final String NAME = "Test Microphone";

  static final AudioFormat USUAL = new AudioFormat(48_000, 16, 1, true, false);

  private static final Mixer.Info INFO = new DeviceInfo();
  private static final List<Wire> OPEN = new CopyOnWriteArrayList<>();
  private static final Object LOCK = new Object();
  private static final Deque<byte[]> SOUND = new ArrayDeque<>();

  private static volatile boolean plugged;
  private static volatile boolean busy;
  private static boolean broken;
  private static volatile AudioFormat format = USUAL;
  private static int used;

  /** Whether it says how much sound waits, as a device does whose sound comes in real time. */
  private static volatile boolean tellsWaiting;

  private static double readSeconds;

  /** Plugs it in, in this format, with nothing said yet. */
  public static void plugIn(AudioFormat given) {
    synchronized (LOCK) {
      format = given;
      SOUND.clear();
      used = 0;
      busy = false;
      broken = false;
      plugged = true;
    }
  }

  /** Pulls it out: it is gone from the list and gives no more. */
  public static void pullOut() {
    plugged = false;
    OPEN.forEach(Wire::close);
  }

  /** Its driver fails while it is read, and it is there again at once. */
  static void breakDown() {
    synchronized (LOCK) {
      broken = true;
      LOCK.notifyAll();
    }
  }

  /** Another program takes it, or lets it go. */
  static void takenByAnother(boolean taken) {
    busy = taken;
  }

  /** Sound comes in real time from now on, or by its own clock again. */
  static void inRealTime(boolean real) {
    tellsWaiting = real;
  }

  /** Sound reaches the microphone, at the rate of its format, on its first channel and its last. */
  public static void sing(float[] samples) {
    byte[] bytes = bytes(samples, format);
    synchronized (LOCK) {
      SOUND.add(bytes);
      LOCK.notifyAll();
    }
  }

  /** Time goes by without sound, as while it is unplugged. */
  static void let(double seconds) {
    synchronized (LOCK) {
      readSeconds += seconds;
    }
  }

  /** Whether somebody has opened it. */
  public static boolean isListenedTo() {
    return !OPEN.isEmpty();
  }

  /** Whether all that was sung has been read. */
  public static boolean isHeard() {
    synchronized (LOCK) {
      return SOUND.isEmpty();
    }
  }

  /** The moment, on a clock that goes by as sound is read. */
  public static long nanoTime() {
    synchronized (LOCK) {
      return Math.round(readSeconds * 1e9);
    }
  }

  /** Listens on it, by its own clock: second 0 of the take is now. */
  public static Capture open(Microphone microphone) {
    return new MicrophoneCapture(microphone, TakeClock.from(nanoTime()), TestMicrophone::nanoTime);
  }

  /**
   * Sings piece by piece, and listens meanwhile.
   *
   * @param told is told everything that was heard
   */
  public static void sing(float[] samples, Capture ear, Consumer<Heard> told)
      throws InterruptedException {
    int piece = (int) (format.getSampleRate() / 10);
    for (int from = 0; from < samples.length; from += piece) {
      sing(Arrays.copyOfRange(samples, from, Math.min(samples.length, from + piece)));
      // Slower than this nobody may listen: the ring holds four seconds.
      double before;
      double now = Double.NEGATIVE_INFINITY;
      do {
        before = now;
        Heard heard = ear.await(Duration.ofMillis(1));
        now = heard.upToSeconds();
        told.accept(heard);
      } while (now > before || !isHeard());
    }
    told.accept(ear.await(Duration.ofMillis(20)));
  }

  static byte[] bytes(float[] samples, AudioFormat format) {
    int width = format.getSampleSizeInBits() / Byte.SIZE;
    byte[] bytes = new byte[samples.length * format.getFrameSize()];
    for (int i = 0; i < samples.length; i++) {
      for (int channel = 0; channel < format.getChannels(); channel++) {
        int at = i * format.getFrameSize() + channel * width;
        boolean isFloat = format.getEncoding().equals(AudioFormat.Encoding.PCM_FLOAT);
        double full = Math.pow(2, 8 * width - 1);
        int value =
            isFloat
                ? Float.floatToRawIntBits(samples[i])
                : (int) Math.max(-full, Math.min(full - 1, Math.rint(samples[i] * full)));
        for (int b = 0; b < width; b++) {
          int place = format.isBigEndian() ? width - 1 - b : b;
          bytes[at + place] = (byte) (value >> (8 * b));
        }
      }
    }
    return bytes;
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
    return new Device();
  }

  private static final class DeviceInfo extends Mixer.Info {
    DeviceInfo() {
      super(SYSTEM_NAME, "nobody", "a microphone for tests", "1");
    }
  }

  private static final class Device implements Mixer {
    @Override
    public Info getMixerInfo() {
      return INFO;
    }

    @Override
    public boolean isLineSupported(Line.Info info) {
      if (info instanceof DataLine.Info data && data.getFormats().length > 0) {
        return data.getLineClass() == TargetDataLine.class && data.isFormatSupported(format);
      }
      return info.getLineClass() == TargetDataLine.class;
    }

    @Override
    public Line getLine(Line.Info info) {
      return new Wire();
    }

    @Override
    public Line.Info[] getTargetLineInfo() {
      return new Line.Info[] {new DataLine.Info(TargetDataLine.class, format)};
    }

    @Override
    public Line.Info[] getTargetLineInfo(Line.Info info) {
      return getTargetLineInfo();
    }

    @Override
    public Line.Info[] getSourceLineInfo() {
      return new Line.Info[0];
    }

    @Override
    public Line.Info[] getSourceLineInfo(Line.Info info) {
      return new Line.Info[0];
    }

    @Override
    public int getMaxLines(Line.Info info) {
      return 1;
    }

    @Override
    public Line[] getSourceLines() {
      return new Line[0];
    }

    @Override
    public Line[] getTargetLines() {
      return OPEN.toArray(new Line[0]);
    }

    @Override
    public void synchronize(Line[] lines, boolean maintainSync) {
      throw new IllegalArgumentException("not supported");
    }

    @Override
    public void unsynchronize(Line[] lines) {
      throw new IllegalArgumentException("not supported");
    }

    @Override
    public boolean isSynchronizationSupported(Line[] lines, boolean maintainSync) {
      return false;
    }

    @Override
    public Line.Info getLineInfo() {
      return new Line.Info(Mixer.class);
    }

    @Override
    public void open() {
      // Nothing is held.
    }

    @Override
    public void close() {
      // Nothing is held.
    }

    @Override
    public boolean isOpen() {
      return true;
    }

    @Override
    public Control[] getControls() {
      return new Control[0];
    }

    @Override
    public boolean isControlSupported(Control.Type control) {
      return false;
    }

    @Override
    public Control getControl(Control.Type control) {
      throw new IllegalArgumentException("no control");
    }

    @Override
    public void addLineListener(LineListener listener) {
      // Nothing is told.
    }

    @Override
    public void removeLineListener(LineListener listener) {
      // Nothing is told.
    }
  }

  /** The line itself. Reading allocates nothing, so that what is measured is the reader's. */
  private static final class Wire implements TargetDataLine {
    private volatile boolean open;
    private AudioFormat opened = format;

    @Override
    public void open(AudioFormat wanted, int bufferSize) throws LineUnavailableException {
      if (!plugged || busy) {
        throw new LineUnavailableException("taken");
      }
      opened = wanted;
      open = true;
      OPEN.add(this);
    }

    @Override
    public void open(AudioFormat wanted) throws LineUnavailableException {
      open(wanted, 0);
    }

    @Override
    public void open() throws LineUnavailableException {
      open(format);
    }

    @Override
    public int read(byte[] to, int offset, int length) {
      synchronized (LOCK) {
        while (open && !broken && SOUND.isEmpty()) {
          try {
            LOCK.wait();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return 0;
          }
        }
        if (broken) {
          broken = false;
          throw new IllegalStateException("the driver is gone");
        }
        if (!open) {
          return 0;
        }
        byte[] first = SOUND.peek();
        int count = Math.min(length, first.length - used);
        System.arraycopy(first, used, to, offset, count);
        used += count;
        readSeconds += (double) count / opened.getFrameSize() / opened.getFrameRate();
        if (used == first.length) {
          SOUND.poll();
          used = 0;
        }
        return count;
      }
    }

    @Override
    public void close() {
      synchronized (LOCK) {
        open = false;
        LOCK.notifyAll();
      }
      OPEN.remove(this);
    }

    @Override
    public boolean isOpen() {
      return open;
    }

    @Override
    public AudioFormat getFormat() {
      return opened;
    }

    @Override
    public void start() {
      // It runs.
    }

    @Override
    public void stop() {
      // It runs.
    }

    @Override
    public void drain() {
      // Nothing waits.
    }

    @Override
    public void flush() {
      // Nothing waits.
    }

    @Override
    public boolean isRunning() {
      return open;
    }

    @Override
    public boolean isActive() {
      return open;
    }

    @Override
    public int getBufferSize() {
      return 1 << 12;
    }

    @Override
    public int available() {
      synchronized (LOCK) {
        return tellsWaiting ? SOUND.stream().mapToInt(bytes -> bytes.length).sum() - used : 0;
      }
    }

    @Override
    public int getFramePosition() {
      return 0;
    }

    @Override
    public long getLongFramePosition() {
      return 0;
    }

    @Override
    public long getMicrosecondPosition() {
      return 0;
    }

    @Override
    public float getLevel() {
      return -1;
    }

    @Override
    public Line.Info getLineInfo() {
      return new DataLine.Info(TargetDataLine.class, opened);
    }

    @Override
    public Control[] getControls() {
      return new Control[0];
    }

    @Override
    public boolean isControlSupported(Control.Type control) {
      return false;
    }

    @Override
    public Control getControl(Control.Type control) {
      throw new IllegalArgumentException("no control");
    }

    @Override
    public void addLineListener(LineListener listener) {
      // Nothing is told.
    }

    @Override
    public void removeLineListener(LineListener listener) {
      // Nothing is told.
    }
  }

  /** A tone like a plain voice: the fundamental and nine harmonics, 12 dB an octave softer. */
  public static float[] tone(int midi, double seconds, double rate, double level) {
    float[] samples = new float[(int) Math.round(seconds * rate)];
    double hz = 440 * Math.pow(2, (midi - 69) / 12.0);
    for (int i = 0; i < samples.length; i++) {
      double edge = Math.min(1, Math.min(i, samples.length - i) / (0.02 * rate));
      double sum = 0;
      for (int h = 1; h <= 10 && h * hz < rate / 2; h++) {
        sum += Math.sin(2 * Math.PI * h * hz * i / rate) / (h * h);
      }
      samples[i] = (float) (level * edge * sum);
    }
    return samples;
  }

  /** Sound after sound. */
  public static float[] after(float[]... parts) {
    int length = Arrays.stream(parts).mapToInt(p -> p.length).sum();
    float[] all = new float[length];
    int at = 0;
    for (float[] part : parts) {
      System.arraycopy(part, 0, all, at, part.length);
      at += part.length;
    }
    return all;
  }
}
