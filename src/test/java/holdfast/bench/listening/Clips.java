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
    // General MIDI 1.0 programs, counted from 0, and the range of each line.
    int[][] players = {
      {56, 55, 80}, {65, 52, 80}, {66, 46, 74}, {73, 62, 93}, {40, 56, 88},
      {24, 45, 76}, {71, 52, 84}, {0, 48, 84}, {42, 38, 67}, {57, 42, 70},
    };
    String[] names = {
      "trumpet", "alto sax", "tenor sax", "flute", "violin",
      "guitar", "clarinet", "piano line", "cello", "trombone"
    };
    return players(players, names, seed, sounds);
  }

  private static List<Clip> players(
      int[][] players, String[] names, long seed, Optional<File> sounds) throws IOException {
    String who = sounds.isPresent() ? "sampled" : "instruments";
    List<Clip> clips = new ArrayList<>();
    for (int i = 0; i < players.length; i++) {
      Random random = new Random(seed * 17 + i);
      List<Line.Sung> line =
          Line.random(random, SECONDS, players[i][1], players[i][2], 0.14, 0.8, 0.4);
      clips.add(Instruments.play(names[i], who, players[i][0], line, sounds));
    }
    return clips;
  }

  /** Clips that nothing is ever fitted to: other voices, other instruments, other lines. */
  static List<Clip> heldOut(long seed, Optional<File> sounds) throws IOException {
    List<Clip> clips = new ArrayList<>();
    clips.add(sing("bass", seed, 40, 60, 0.96, 45, -24, 15, 0.7, false));
    clips.add(sing("man straight", seed + 1, 48, 66, 1.05, 5, -22, -45, 0.4, false));
    clips.add(sing("woman low", seed + 2, 52, 70, 1.12, 25, -21, 5, 0.7, false));
    clips.add(sing("woman wide vibrato", seed + 3, 58, 77, 1.18, 80, -27, -10, 0.4, false));
    clips.add(sing("child A3", seed + 4, 57, 72, 1.3, 5, -17, 30, 0.7, false));
    clips.add(sing("child G5", seed + 5, 64, 79, 1.42, 20, -19, -25, 0.5, false));
    clips.add(sing("hum low", seed + 6, 46, 62, 1.02, 10, -28, 10, 0.0, true));
    int[][] players = {
      {68, 58, 86}, {60, 45, 72}, {64, 58, 84}, {70, 38, 65}, {25, 45, 76},
      {41, 50, 79}, {74, 67, 91}, {22, 57, 82}, {11, 55, 84}, {26, 45, 76},
    };
    String[] names = {
      "oboe", "horn", "soprano sax", "bassoon", "steel guitar",
      "viola", "recorder", "harmonica", "vibraphone", "jazz guitar"
    };
    clips.addAll(players(players, names, seed, sounds));
    List<Line.Sung> line = Line.random(new Random(seed + 9), SECONDS, 78, 96, 0.16, 0.8, 0.6);
    clips.add(Whistler.whistle("whistle", seed + 9, line));
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
