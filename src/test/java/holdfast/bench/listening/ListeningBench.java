package holdfast.bench.listening;

import holdfast.listening.audio.Resampler;
import holdfast.listening.pitch.BleedCanceller;
import holdfast.listening.pitch.Ear;
import holdfast.listening.pitch.Frames;
import holdfast.listening.pitch.Levels;
import holdfast.listening.pitch.NoteListener;
import java.io.File;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The accuracy bench: prints how well the ear hears each group under each condition, on a file and
 * live. Arguments: a seed; a SoundFont for the instruments, or {@code -} for the JDK's own sounds;
 * {@code clips} to see each clip.
 */
public final class ListeningBench {

  private static final double G3_HZ = 195;

  private ListeningBench() {}

  /** What one hearing of a clip gave. */
  static final class Hearing implements NoteListener {
    final double[] hz;
    final List<TrueNote> notes = new ArrayList<>();

    /** What the first guesses of a live ear came to. */
    final List<TrueNote> early = new ArrayList<>();

    /** When each note was first told, in seconds, and when it had begun. */
    final List<double[]> told = new ArrayList<>();

    double heardSeconds;

    Hearing(int frames) {
      hz = new double[frames];
    }

    @Override
    public void began(double onsetSeconds, double cents, double levelDb) {
      told.add(new double[] {heardSeconds, onsetSeconds, Frames.hertz(cents)});
    }

    @Override
    public void ended(
        double onsetSeconds, double endSeconds, double cents, double levelDb, double confidence) {
      notes.add(new TrueNote(onsetSeconds, endSeconds, Frames.hertz(cents)));
    }

    @Override
    public void takenBack() {}
  }

  /** Prints the table. */
  public static void main(String[] args) throws IOException {
    long seed = args.length > 0 ? Long.parseLong(args[0]) : 1000;
    Optional<File> sounds =
        args.length > 1 && !args[1].equals("-") ? Optional.of(new File(args[1])) : Optional.empty();
    boolean detail = args.length > 2;
    System.out.println(
        "condition who            VR    VFA   RPA   RCA   OA   |  P    R    F1   F1off |"
            + " live F1  ms p50 p90 | times real time");
    for (Map.Entry<String, List<Clip>> condition : conditions(seed, sounds).entrySet()) {
      boolean known = condition.getKey().equals("known");
      Map<String, List<double[]>> rows = new TreeMap<>();
      for (Clip clip : condition.getValue()) {
        double[] row = row(clip, known);
        rows.computeIfAbsent(clip.who(), k -> new ArrayList<>()).add(row);
        rows.computeIfAbsent("all", k -> new ArrayList<>()).add(row);
        if (detail) {
          print("  " + condition.getKey(), clip.name(), List.of(row));
        }
      }
      rows.forEach((who, all) -> print(condition.getKey(), who, all));
    }
  }

  static Map<String, List<Clip>> conditions(long seed, Optional<File> sounds) throws IOException {
    Map<String, List<Clip>> conditions = new LinkedHashMap<>();
    for (Clip clip : Clips.all(seed, sounds)) {
      long s = seed + clip.name().hashCode();
      put(conditions, "clean", Room.quiet(clip, s));
      put(conditions, "noise 20", Room.noisy(clip, 20, s));
      put(conditions, "noise 10", Room.noisy(clip, 10, s));
      put(conditions, "room", Room.reverberant(clip, 0.4, s));
      Clip bled = Room.withBleed(clip, s, sounds);
      put(conditions, "bleed", bled);
      put(conditions, "known", bled);
    }
    return conditions;
  }

  private static void put(Map<String, List<Clip>> map, String condition, Clip clip) {
    map.computeIfAbsent(condition, k -> new ArrayList<>()).add(clip);
  }

  private static double[] row(Clip clip, boolean known) {
    long start = cpu();
    Hearing file = hear(clip, false, known);
    double speed = (double) clip.samples().length / Clip.RATE * 1e9 / (cpu() - start);
    Hearing live = hear(clip, true, known);
    FrameScore f = FrameScore.of(clip.hz(), file.hz);
    NoteScore n = NoteScore.withoutOffsets(clip.notes(), file.notes);
    NoteScore o = NoteScore.withOffsets(clip.notes(), file.notes);
    NoteScore l = NoteScore.withoutOffsets(clip.notes(), live.notes);
    double[] late = lateness(clip, live);
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
      l.f1(),
      late[0],
      late[1],
      speed
    };
  }

  private static void print(String condition, String who, List<double[]> rows) {
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
        "%-9s %-13s %.3f %.3f %.3f %.3f %.3f | %.2f %.2f %.3f %.3f | %.3f %5.0f %4.0f | %.0f%n",
        condition, who, m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8], m[9], m[10], m[11],
        m[12]);
  }

  /** Median and ninetieth percentile of the time from onset to decision, at G3 and above. */
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
    return hear(clip, live, false);
  }

  static Hearing hear(Clip clip, boolean live, boolean withBacking) {
    Hearing hearing = new Hearing(clip.hz().length);
    Resampler resampler = new Resampler(Clip.RATE);
    float[] ear = new float[resampler.mostOutput(clip.samples().length)];
    int n = resampler.push(clip.samples(), 0, clip.samples().length, ear);
    float[] samples = Arrays.copyOf(ear, n);
    if (clip.backing().isPresent() && withBacking) {
      float[] known = new float[ear.length];
      new Resampler(Clip.RATE).push(clip.backing().get(), 0, clip.backing().get().length, known);
      samples = BleedCanceller.clean(samples, known);
    }
    Ear chain =
        new Ear(
            Resampler.EAR_RATE,
            live,
            Ear.LOWEST_HZ,
            Ear.HIGHEST_HZ,
            Levels.of(samples, n),
            (frame, cents, sung, sure, level, flux) -> {
              if (frame % 2 == 0 && frame / 2 < hearing.hz.length) {
                hearing.hz[(int) (frame / 2)] = sung ? Frames.hertz(cents) : -Frames.hertz(cents);
              }
            },
            hearing);
    int block = 80;
    for (int i = 0; i < n; i += block) {
      hearing.heardSeconds = (double) Math.min(n, i + block) / Resampler.EAR_RATE;
      chain.push(samples, i, Math.min(block, n - i));
    }
    chain.end();
    return hearing;
  }
}
