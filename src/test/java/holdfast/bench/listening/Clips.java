package holdfast.bench.listening;

import java.io.File;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** The choir and the band of the bench, each member with a line of its own. */
final class Clips {

  private static final double SECONDS = 14;

  private Clips() {}

  /** All clips, clean; another seed gives other lines and other voices. */
  static List<Clip> all(long seed, Optional<File> sounds) throws IOException {
    List<Clip> clips = new ArrayList<>(singers(seed));
    clips.addAll(instruments(seed, sounds));
    clips.addAll(whistles(seed));
    return clips;
  }

  static List<Clip> singers(long seed) {
    return List.of(
        sing("bass E2", seed, 40, 58, 1.0, 30, -30, 0, 0.5, false),
        sing("baritone", seed + 1, 45, 64, 1.03, 60, -26, -20, 0.6, false),
        sing("tenor vibrato", seed + 2, 50, 67, 1.07, 100, -28, 10, 0.3, false),
        sing("alto", seed + 3, 55, 74, 1.15, 40, -25, 0, 0.5, false),
        sing("soprano vibrato", seed + 4, 62, 81, 1.2, 90, -28, 0, 0.3, false),
        sing("child", seed + 5, 57, 74, 1.35, 0, -20, -35, 0.6, false),
        sing("child high", seed + 6, 62, 79, 1.4, 10, -18, 20, 0.6, false),
        sing("hum", seed + 7, 53, 69, 1.1, 20, -30, 0, 0.0, true),
        sing("breathy", seed + 8, 57, 76, 1.17, 30, -12, -40, 0.6, false));
  }

  private static Clip sing(
      String name,
      long seed,
      int low,
      int high,
      double tract,
      double vibrato,
      double breath,
      double tuning,
      double consonants,
      boolean hums) {
    Random random = new Random(seed * 31 + 5);
    List<Line.Sung> line = Line.random(random, SECONDS, low, high, 0.18, 0.9, 0.5);
    return new Singer(seed, tract, vibrato, breath, tuning, consonants, hums).sing(name, line);
  }

  static List<Clip> instruments(long seed, Optional<File> sounds) throws IOException {
    String who = sounds.isPresent() ? "sampled" : "instruments";
    List<Clip> clips = new ArrayList<>();
    // General MIDI 1.0 programs, counted from 0.
    int[][] players = {
      {56, 55, 80}, {65, 52, 80}, {66, 46, 74}, {73, 62, 93}, {40, 56, 88},
      {24, 45, 76}, {71, 52, 84}, {0, 48, 84}, {42, 38, 67}, {57, 42, 70},
    };
    String[] names = {
      "trumpet", "alto sax", "tenor sax", "flute", "violin",
      "guitar", "clarinet", "piano line", "cello", "trombone"
    };
    for (int i = 0; i < players.length; i++) {
      Random random = new Random(seed * 17 + i);
      List<Line.Sung> line =
          Line.random(random, SECONDS, players[i][1], players[i][2], 0.14, 0.8, 0.4);
      clips.add(Instruments.play(names[i], who, players[i][0], line, sounds));
    }
    return clips;
  }

  static List<Clip> whistles(long seed) {
    List<Line.Sung> low = Line.random(new Random(seed + 71), SECONDS, 80, 98, 0.16, 0.8, 0.6);
    List<Line.Sung> high = Line.random(new Random(seed + 72), SECONDS, 92, 108, 0.16, 0.8, 0.6);
    return List.of(
        Whistler.whistle("whistle", seed + 71, low),
        Whistler.whistle("piccolo to C8", seed + 72, high));
  }
}
