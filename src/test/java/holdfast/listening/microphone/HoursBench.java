package holdfast.listening.microphone;

import holdfast.listening.Capture;
import holdfast.listening.PlayEvent;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.sound.sampled.AudioFormat;

/**
 * Sings for hours into a microphone, as fast as this machine can listen, and prints how much memory
 * is held and how far the notes are from their places. Argument: how many hours, 2 without it.
 */
final class HoursBench {

  private static final int RATE = 16_000;
  private static final double NOTE_SECONDS = 0.5;
  private static final double REST_SECONDS = 0.25;
  private static final int[] PITCHES = {60, 64, 67, 72, 69, 65, 62, 59};

  private int notes;
  private int wrong;
  private double latest;
  private double farthest;

  private HoursBench() {}

  /** Runs it. */
  public static void main(String[] args) throws Exception {
    new HoursBench().run(args.length == 0 ? 2 : Double.parseDouble(args[0]));
  }

  private void run(double hours) throws Exception {
    TestMicrophone.plugIn(new AudioFormat(RATE, 16, 1, true, false));
    Path file = Files.createTempFile("hours", ".wav");
    float[][] line = new float[PITCHES.length][];
    for (int i = 0; i < line.length; i++) {
      line[i] =
          TestMicrophone.after(
              new float[(int) (REST_SECONDS * RATE)],
              TestMicrophone.tone(PITCHES[i], NOTE_SECONDS, RATE, 0.3));
    }
    int total = (int) (hours * 3600 / (NOTE_SECONDS + REST_SECONDS));
    long start = System.nanoTime();
    try (Capture ear =
        TestMicrophone.open(Microphone.named(TestMicrophone.NAME).keepingSoundIn(file))) {
      for (int i = 0; i < total; i++) {
        TestMicrophone.sing(
            line[i % line.length], ear, heard -> heard.events().forEach(this::hear));
        if (i % Math.max(1, total / 12) == 0) {
          tell(i, start);
        }
      }
      ear.rest().events().forEach(this::hear);
    }
    tell(total, start);
    System.out.println("sound kept: " + Files.size(file) + " bytes");
    Files.delete(file);
    TestMicrophone.pullOut();
  }

  private void hear(PlayEvent event) {
    if (event instanceof PlayEvent.NoteOn on) {
      // Which note it should be follows from the time: so one that is missed harms no other.
      int place = (int) Math.round((on.seconds() - REST_SECONDS) / (NOTE_SECONDS + REST_SECONDS));
      double due = REST_SECONDS + place * (NOTE_SECONDS + REST_SECONDS);
      wrong += on.pitch() == PITCHES[Math.floorMod(place, PITCHES.length)] ? 0 : 1;
      farthest = Math.max(farthest, Math.abs(on.seconds() - due));
      latest = on.seconds();
      notes++;
    }
  }

  private void tell(int sung, long start) {
    System.gc();
    long held = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
    System.out.println(
        String.format(
            Locale.ROOT,
            "%5.0f s: sung %d, heard %d, wrong %d, farthest from its place %.0f ms, %.1f MB held,"
                + " after %.0f s",
            latest,
            sung,
            notes,
            wrong,
            1000 * farthest,
            held / 1e6,
            (System.nanoTime() - start) / 1e9));
  }
}
