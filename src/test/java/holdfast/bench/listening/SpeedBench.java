package holdfast.bench.listening;

import com.sun.management.OperatingSystemMXBean;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.SoundFile;
import holdfast.listening.calibration.Profile;
import holdfast.listening.pitch.FileEar;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/**
 * How many times faster than it was sung a file is heard on one core, all that the program costs
 * from its start counted. Run its main method with a folder, and perhaps the minutes of singing to
 * be made there: {@code /tmp/speed 13}. Pin it to a core to see seconds of the clock as well:
 * {@code taskset -c 1}.
 */
public final class SpeedBench {

  private SpeedBench() {}

  /** Makes the singing where it is not there yet, hears it, and measures. */
  public static void main(String[] args) throws IOException {
    int minutes = args.length > 1 ? Integer.parseInt(args[1]) : 13;
    Path file = Path.of(args[0]).resolve("sung " + minutes + ".wav");
    if (!Files.exists(file)) {
      Files.createDirectories(file.getParent());
      write(file, song(60.0 * minutes));
      System.out.println(file + " is made; run this once more to measure");
      return;
    }
    double[] sungFrames = new double[2];
    int notes;
    double seconds;
    try (EarSound sound = SoundFile.tape(file)) {
      Profile who = Profile.ANYONE;
      notes =
          FileEar.hear(
                  sound,
                  who.lowestHz(),
                  who.highestHz(),
                  who.manner(),
                  (at, hz, sung) -> sungFrames[sung ? 1 : 0]++)
              .notes()
              .size();
      seconds = sound.seconds();
    }
    double cpu = cpuSeconds();
    System.out.printf(
        Locale.ROOT,
        "%.0f s of sound, %.0f %% of it sung, %d notes: %.1f s of CPU, %.0f times as fast%n",
        seconds,
        100 * sungFrames[1] / (sungFrames[0] + sungFrames[1]),
        notes,
        cpu,
        seconds / cpu);
  }

  /** Singers after one another, each a minute, with breaths between their phrases. */
  private static float[] song(double seconds) {
    float[] song = new float[(int) (seconds * Clip.RATE)];
    int filled = 0;
    for (int i = 0; filled < song.length; i++) {
      double tract = 1 + 0.05 * (i % 9);
      int low = 40 + 3 * (i % 9);
      List<Line.Sung> line = Line.random(new Random(i), 60, low, low + 17, 0.18, 0.9, 0.5);
      float[] one =
          new Singer(i, tract, 10 * (i % 10), -24, 0, 0.5, false).sing("", line).samples();
      int count = Math.min(one.length, song.length - filled);
      System.arraycopy(one, 0, song, filled, count);
      filled += count;
    }
    return song;
  }

  private static void write(Path file, float[] samples) throws IOException {
    byte[] bytes = new byte[2 * samples.length];
    for (int i = 0; i < samples.length; i++) {
      short value = (short) Math.max(-32767, Math.min(32767, 32767 * samples[i]));
      bytes[2 * i] = (byte) value;
      bytes[2 * i + 1] = (byte) (value >> 8);
    }
    AudioFormat format = new AudioFormat(Clip.RATE, 16, 1, true, false);
    AudioSystem.write(
        new AudioInputStream(new ByteArrayInputStream(bytes), format, samples.length),
        AudioFileFormat.Type.WAVE,
        file.toFile());
  }

  private static double cpuSeconds() {
    return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
            .getProcessCpuTime()
        / 1e9;
  }
}
