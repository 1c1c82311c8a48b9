package holdfast.session;

import holdfast.backing.Arrangement;
import holdfast.backing.BackingAudio;
import holdfast.backing.Performance;
import holdfast.backing.sound.SoundBank;
import holdfast.listening.alignment.KnownBacking;
import holdfast.listening.alignment.RenderedBacking;
import holdfast.listening.audio.DrawnSound;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What one or many takes were played along to, as sound: made as far as it is asked for, once for
 * all takes at the written tempo, and for a single take at a tempo that only it has.
 */
public final class Renderings implements AutoCloseable {

  /** Speeds that a recorder and a player's device may differ by, with room to spare. */
  private static final double SLOWEST = 1.06;

  private final Arrangement arrangement;
  private final SoundBank bank;
  private final Map<Integer, RenderedBacking> made = new HashMap<>();

  /** Nothing is made yet; may be asked from any thread. */
  public Renderings(Arrangement arrangement, SoundBank bank) {
    this.arrangement = arrangement;
    this.bank = bank;
  }

  /** What it is that was played along to. */
  public Arrangement arrangement() {
    return arrangement;
  }

  private synchronized RenderedBacking shared(int rounds) {
    return made.computeIfAbsent(rounds, number -> render(1, number));
  }

  private RenderedBacking render(double tempoRatio, int rounds) {
    Arrangement faster = arrangement.at(arrangement.tempo() * tempoRatio);
    Performance performance = Performance.of(faster, rounds);
    return new RenderedBacking(
        new DrawnSound(
            BackingAudio.stream(performance, bank),
            BackingAudio.rate(),
            BackingAudio.seconds(performance)));
  }

  ForOneTake forTake(double seconds) {
    return new ForOneTake(seconds);
  }

  @Override
  public synchronized void close() {
    made.values().forEach(RenderedBacking::close);
    made.clear();
  }

  /** The backing as long as one recording may need it. */
  final class ForOneTake implements AutoCloseable {

    private final int rounds;
    private final Map<Rendering, RenderedBacking> own = new HashMap<>();

    private record Rendering(double tempoRatio, int rounds) {}

    private ForOneTake(double seconds) {
      int needed = (int) Math.ceil(SLOWEST * seconds / chorusSeconds()) + 1;
      // Takes of nearly the same length share one.
      this.rounds = Math.max(4, 2 * Integer.highestOneBit(needed - 1));
    }

    private double beatSeconds() {
      return 60 / arrangement.tempo();
    }

    private double chorusSeconds() {
      return arrangement.bars().size() * arrangement.metre().beats() * beatSeconds();
    }

    KnownBacking backing() {
      Performance performance = Performance.of(arrangement, rounds);
      return new KnownBacking(
          ratio -> sound(ratio, OptionalInt.empty()),
          -performance.tempoMap().secondsAt(performance.firstBeat()),
          beatSeconds(),
          chorusSeconds());
    }

    /** It stops after so many choruses, or lasts longer than the recording. */
    RenderedBacking sound(double tempoRatio, OptionalInt stops) {
      int lasting = stops.orElse(rounds);
      return tempoRatio == 1
          ? shared(lasting)
          : own.computeIfAbsent(
              new Rendering(tempoRatio, lasting),
              wanted -> render(wanted.tempoRatio(), wanted.rounds()));
    }

    @Override
    public void close() {
      own.values().forEach(RenderedBacking::close);
    }
  }
}
