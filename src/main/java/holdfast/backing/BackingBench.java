package holdfast.backing;

import holdfast.backing.sound.Capture;
import holdfast.backing.sound.SoundBank;
import holdfast.backing.sound.SoundChoice;
import holdfast.time.TempoMap;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.util.Optional;

/**
 * Plays a backing for a while and measures how well it keeps time: how late the scheduling thread
 * is, how far the onsets lie from their beats in what the recording device hears (in an audio
 * loop), what garbage collection and the whole cost.
 */
public final class BackingBench {

  /** The capture runs before the first count and after the last note. */
  private static final long MARGIN_MILLIS = 500;

  /** Compiling and loading are over by then, so that what is left is the steady cost. */
  private static final double STEADY_AFTER_SECONDS = 5;

  private BackingBench() {}

  /**
   * What was measured.
   *
   * @param seconds how long was played
   * @param lateness how late messages were sent
   * @param gaps how often the sound device ran dry
   * @param onsets what the capture says; empty without a loop
   * @param collections garbage collections in that time
   * @param collectionMillis how long they took together
   * @param steadyCpu of one core, after the first seconds; a busy thread of ours left out
   * @param output where it was played
   * @param trouble why it was silent, if it was
   */
  public record Measured(
      double seconds,
      Lateness lateness,
      int gaps,
      Optional<OnsetErrors> onsets,
      long collections,
      long collectionMillis,
      double steadyCpu,
      String output,
      Optional<String> trouble) {}

  /**
   * Plays the performance to its end in real time and measures.
   *
   * @param busy whether another thread keeps one core busy meanwhile
   */
  public static Measured run(Performance performance, SoundChoice choice, boolean busy)
      throws InterruptedException {
    Optional<BusyCore> burner = busy ? Optional.of(BusyCore.start()) : Optional.empty();
    try (SoundPlayer player = SoundPlayer.open(choice)) {
      Optional<Capture> capture = player.trouble().isPresent() ? Optional.empty() : Capture.start();
      try {
        return play(performance, choice, player, capture, burner);
      } finally {
        capture.ifPresent(Capture::close);
      }
    } finally {
      burner.ifPresent(BusyCore::close);
    }
  }

  private static Measured play(
      Performance performance,
      SoundChoice choice,
      SoundPlayer player,
      Optional<Capture> capture,
      Optional<BusyCore> burner)
      throws InterruptedException {
    Thread.sleep(MARGIN_MILLIS);
    int gapsBefore = player.out().gaps();
    long collections = collections();
    long collectionMillis = collectionMillis();
    long start = System.nanoTime();
    double cpu = 0;
    long steadyFrom = start;
    Lateness lateness;
    try (Playback playback = player.start(performance)) {
      while (playback.isRunning()) {
        Thread.sleep(20);
        if (cpu == 0 && System.nanoTime() - start > STEADY_AFTER_SECONDS * 1e9) {
          cpu = cpuSeconds(burner);
          steadyFrom = System.nanoTime();
        }
      }
      lateness = playback.lateness();
    }
    double steadySeconds = (System.nanoTime() - steadyFrom) / 1e9;
    double steadyCpu = cpu == 0 ? Double.NaN : (cpuSeconds(burner) - cpu) / steadySeconds;
    int gaps = player.out().gaps() - gapsBefore;
    long collected = collections() - collections;
    long collectedMillis = collectionMillis() - collectionMillis;
    Thread.sleep(MARGIN_MILLIS);
    double seconds = (System.nanoTime() - start) / 1e9;
    Optional<OnsetErrors> onsets =
        capture.flatMap(c -> onsets(performance, choice.bank(), c.samples()));
    return new Measured(
        seconds,
        lateness,
        gaps,
        onsets,
        collected,
        collectedMillis,
        steadyCpu,
        player.output(),
        player.trouble());
  }

  private static Optional<OnsetErrors> onsets(
      Performance performance, SoundBank bank, float[] captured) {
    float[] rendered = Capture.mono(BackingAudio.render(performance, bank));
    TempoMap tempo = performance.tempoMap();
    double zero = tempo.secondsAt(performance.firstBeat());
    double[] seconds =
        performance.events().stream()
            .mapToDouble(event -> tempo.secondsAt(event.onsetBeats()) - zero)
            .distinct()
            .toArray();
    return OnsetErrors.find(captured, rendered, seconds);
  }

  private static double cpuSeconds(Optional<BusyCore> without) {
    return (ProcessCost.cpuNanos() - without.map(BusyCore::cpuNanos).orElse(0L)) / 1e9;
  }

  private static long collections() {
    return ManagementFactory.getGarbageCollectorMXBeans().stream()
        .mapToLong(GarbageCollectorMXBean::getCollectionCount)
        .sum();
  }

  private static long collectionMillis() {
    return ManagementFactory.getGarbageCollectorMXBeans().stream()
        .mapToLong(GarbageCollectorMXBean::getCollectionTime)
        .sum();
  }
}
