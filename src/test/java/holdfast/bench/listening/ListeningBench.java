package holdfast.bench.listening;

import java.io.File;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The accuracy bench: prints how well the ear hears each group under each condition, on a file and
 * live, beside TarsosDSP's YIN and beside aubio where that is installed.
 *
 * <p>Arguments: a seed; a SoundFont for the instruments, or {@code -} for the JDK's own sounds;
 * {@code held-out} for the voices, instruments, rooms and bands that nothing was fitted to; {@code
 * clips} to see each clip.
 */
public final class ListeningBench {

  private static final double G3_HZ = 195;

  /** What the clips are: those that constants were fitted on, or those that never were used. */
  private enum Clipset {
    DEVELOPMENT,
    HELD_OUT
  }

  private ListeningBench() {}

  /** Prints the table. */
  public static void main(String[] args) throws IOException {
    List<String> words = List.of(args);
    long seed = args.length > 0 ? Long.parseLong(args[0]) : 1000;
    Optional<File> sounds =
        args.length > 1 && !args[1].equals("-") ? Optional.of(new File(args[1])) : Optional.empty();
    Clipset set = words.contains("held-out") ? Clipset.HELD_OUT : Clipset.DEVELOPMENT;
    List<Listener> listeners =
        new ArrayList<>(List.of(new OurEar(false), new OurEar(true), new RawYin()));
    if (Aubio.isInstalled()) {
      listeners.add(new Aubio());
    } else {
      System.out.println("aubio is not installed (Debian: aubio-tools), so it has no row.");
    }
    System.out.println(
        "Shares from 0 to 1 by mir_eval's definitions: voicing recall and false alarm, raw pitch and"
            + " chroma accuracy, overall accuracy; precision, recall and F1 of notes, F1 with ends,"
            + " F1 of a live ear's first guesses; milliseconds from onset to first guess at G3 and"
            + " above, median and 90th percentile; how many times faster than real time.");
    System.out.println(
        "condition who         ear     VR    VFA   RPA   RCA   OA   | P    R    F1    F1off early |"
            + "  p50  p90 | speed");
    for (Map.Entry<String, List<Clip>> condition : conditions(set, seed, sounds).entrySet()) {
      for (Listener listener : listeners) {
        table(condition.getKey(), condition.getValue(), listener, words.contains("clips"));
      }
    }
  }

  private static void table(String condition, List<Clip> clips, Listener listener, boolean each)
      throws IOException {
    Map<String, List<double[]>> rows = new TreeMap<>();
    for (Clip clip : clips) {
      double[] row = row(clip, listener, condition.equals("known"));
      rows.computeIfAbsent(clip.who(), k -> new ArrayList<>()).add(row);
      rows.computeIfAbsent("all", k -> new ArrayList<>()).add(row);
      if (each) {
        print("  " + condition, clip.name(), listener, List.of(row));
      }
    }
    rows.forEach((who, all) -> print(condition, who, listener, all));
  }

  private static Map<String, List<Clip>> conditions(Clipset set, long seed, Optional<File> sounds)
      throws IOException {
    boolean heldOut = set == Clipset.HELD_OUT;
    Map<String, List<Clip>> conditions = new LinkedHashMap<>();
    // An electric piano and a fretless bass in a larger room, against a trio in a small one.
    Instruments.Band band = heldOut ? new Instruments.Band(4, 35, 52) : Instruments.Band.TRIO;
    for (Clip clip : heldOut ? Clips.heldOut(seed, sounds) : Clips.all(seed, sounds)) {
      long s = seed + clip.name().hashCode();
      put(conditions, "clean", Room.quiet(clip, s));
      put(conditions, "noise 20", Room.noisy(clip, 20, s));
      put(conditions, "noise 10", Room.noisy(clip, 10, s));
      put(
          conditions,
          "room",
          heldOut ? Room.reverberant(clip, 0.6, 0.4, s) : Room.reverberant(clip, 0.4, 0.5, s));
      Clip bled = Room.withBleed(clip, band, heldOut ? 0.4 : 0.25, s, sounds);
      put(conditions, "bleed", bled);
      put(conditions, "known", bled);
    }
    return conditions;
  }

  private static void put(Map<String, List<Clip>> map, String condition, Clip clip) {
    map.computeIfAbsent(condition, k -> new ArrayList<>()).add(clip);
  }

  private static double[] row(Clip clip, Listener listener, boolean known) throws IOException {
    long start = cpu();
    Hearing heard = listener.hear(clip, known);
    double speed = (double) clip.samples().length / Clip.RATE * 1e9 / (cpu() - start);
    FrameScore f = FrameScore.of(clip.hz(), heard.hz);
    NoteScore n = NoteScore.withoutOffsets(clip.notes(), heard.notes);
    NoteScore o = NoteScore.withOffsets(clip.notes(), heard.notes);
    NoteScore early = NoteScore.withoutOffsets(clip.notes(), heard.early);
    double[] late = lateness(clip, heard);
    return new double[] {
      f.voicingRecall(),
      f.voicingFalseAlarm(),
      f.rawPitchAccuracy(),
      f.rawChromaAccuracy(),
      f.overallAccuracy(),
      n.precision(),
      n.recall(),
      n.f1(),
      o.f1(),
      early.f1(),
      late[0],
      late[1],
      speed
    };
  }

  private static void print(String condition, String who, Listener listener, List<double[]> rows) {
    double[] m = new double[rows.get(0).length];
    for (int i = 0; i < m.length; i++) {
      int column = i;
      m[i] =
          rows.stream()
              .mapToDouble(r -> r[column])
              .filter(v -> !Double.isNaN(v))
              .average()
              .orElse(Double.NaN);
    }
    System.out.printf(
        Locale.ROOT,
        "%-9s %-11s %-7s %.3f %.3f %.3f %.3f %.3f | %.2f %.2f %.3f %.3f %.3f | %4.0f %4.0f | %.0f%n",
        condition,
        who,
        listener.name(),
        m[0],
        m[1],
        m[2],
        m[3],
        m[4],
        m[5],
        m[6],
        m[7],
        m[8],
        m[9],
        m[10],
        m[11],
        m[12]);
  }

  /** Median and ninetieth percentile of the time from onset to first guess, at G3 and above. */
  private static double[] lateness(Clip clip, Hearing live) {
    List<Double> late = new ArrayList<>();
    for (TrueNote note : clip.notes()) {
      if (note.hz() < G3_HZ) {
        continue;
      }
      live.told.stream()
          .filter(t -> Math.abs(t[1] - note.onsetSeconds()) <= 0.05)
          .filter(t -> Math.abs(1200 * Math.log(t[2] / note.hz()) / Math.log(2)) <= 50)
          .mapToDouble(t -> 1000 * (t[0] - note.onsetSeconds()))
          .min()
          .ifPresent(late::add);
    }
    double[] sorted = late.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    return sorted.length == 0
        ? new double[] {Double.NaN, Double.NaN}
        : new double[] {sorted[sorted.length / 2], sorted[(int) (sorted.length * 0.9)]};
  }

  private static long cpu() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  static Hearing hear(Clip clip, boolean live) {
    return new OurEar(live).hear(clip, false);
  }
}
