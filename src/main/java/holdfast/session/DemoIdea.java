package holdfast.session;

import holdfast.chart.Changes;
import holdfast.harmony.Fit;
import holdfast.harmony.FitJudge;
import holdfast.melody.Note;
import holdfast.theory.ChordPalette;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;

/**
 * Makes up a small idea over a chord, as a teacher asks for it: chord tones, one step beside them
 * that leads back, a long last note that rests. Shapes and rhythms are common practice, no source.
 */
public final class DemoIdea {

  /**
   * The lowest root. With a fifth and a step above it, an idea stays within a young voice's reach.
   */
  private static final int LOWEST_ROOT = 58;

  /** A pulse lasts from 0.6 s up to twice that, so that an idea is neither rushed nor stretched. */
  private static final double SHORTEST_PULSE_SECONDS = 0.6;

  /** One note of a shape: a tone of the chord (0 root, 1 third, 2 fifth), or a step beside it. */
  private record Tone(int ofChord, int step) {}

  private static final Tone ROOT = new Tone(0, 0);
  private static final Tone ABOVE_ROOT = new Tone(0, 1);
  private static final Tone BELOW_THIRD = new Tone(1, -1);
  private static final Tone THIRD = new Tone(1, 0);
  private static final Tone FIFTH = new Tone(2, 0);
  private static final Tone ABOVE_FIFTH = new Tone(2, 1);

  private static final List<List<Tone>> SHAPES =
      List.of(
          List.of(FIFTH, THIRD, BELOW_THIRD, THIRD, ROOT),
          List.of(ROOT, THIRD, FIFTH, ABOVE_FIFTH, FIFTH),
          List.of(THIRD, FIFTH, ABOVE_FIFTH, FIFTH, ROOT),
          List.of(THIRD, ROOT, ABOVE_ROOT, THIRD, FIFTH),
          List.of(FIFTH, ABOVE_FIFTH, FIFTH, THIRD),
          List.of(ROOT, ABOVE_ROOT, THIRD, FIFTH));

  /** Lengths in pulses, for five notes and for four; of four pulses half a one is for breath. */
  private static final List<List<Double>> RHYTHMS =
      List.of(
          List.of(0.5, 0.5, 1.0, 0.5, 1.0),
          List.of(1.0, 0.5, 0.5, 0.5, 1.0),
          List.of(0.5, 1.0, 0.5, 0.5, 1.0),
          List.of(0.5, 0.5, 1.0, 1.5),
          List.of(1.0, 0.5, 0.5, 1.5));

  private DemoIdea() {}

  /**
   * An idea over the first chord, in beats from its bar's start: the first, in an order that the
   * seed shuffles, of those that sit in the chord.
   *
   * @param chord the chord it is said over; without a chord it is in the key, or in C
   * @param pulseBeats how many beats a pulse has
   */
  public static List<Note> over(Harmony chord, Optional<Key> key, double pulseBeats, long seed) {
    Harmony home = chord.hasChord() ? chord : home(key);
    List<List<Note>> ideas = new ArrayList<>();
    for (List<Tone> shape : SHAPES) {
      for (List<Double> rhythm : RHYTHMS) {
        if (rhythm.size() == shape.size()) {
          ideas.add(notes(shape, rhythm, home, key, pulseBeats));
        }
      }
    }
    Collections.shuffle(ideas, new Random(seed));
    Changes vamp = Changes.vamp(home, key);
    return ideas.stream()
        .filter(idea -> FitJudge.judge(idea, vamp).fit().map(Fit::sits).orElse(true))
        .findFirst()
        .orElse(ideas.get(0));
  }

  /** How many beats the pulse of an idea has at this tempo, in beats a minute. */
  public static double pulseBeats(double tempo) {
    double beats = 1;
    while (beats * 60 / tempo >= 2 * SHORTEST_PULSE_SECONDS) {
      beats /= 2;
    }
    while (beats * 60 / tempo < SHORTEST_PULSE_SECONDS) {
      beats *= 2;
    }
    return beats;
  }

  private static Harmony home(Optional<Key> key) {
    return key.map(k -> k.tonic().text() + (k.mode().hasMinorThird() ? "m" : ""))
        .map(Harmony::parse)
        .orElseGet(() -> Harmony.parse("C"));
  }

  private static List<Note> notes(
      List<Tone> shape, List<Double> rhythm, Harmony chord, Optional<Key> key, double pulseBeats) {
    ChordPalette palette = ChordPalette.of(chord, key, Optional.empty());
    int root = LOWEST_ROOT + Math.floorMod(palette.root() - LOWEST_ROOT, 12);
    List<Integer> tones =
        rootThirdAndFifth(
            chord.standardPitchClasses().transpose(-palette.root()),
            palette.scale().transpose(-palette.root()));
    List<Note> notes = new ArrayList<>();
    double onset = 0;
    for (int i = 0; i < shape.size(); i++) {
      Tone tone = shape.get(i);
      int pitch = beside(root + tones.get(tone.ofChord()), tone.step(), palette.scale());
      double length = rhythm.get(i) * pulseBeats;
      notes.add(new Note(onset, length, pitch));
      onset += length;
    }
    return notes;
  }

  /** Semitones above the root of these three, or of what stands for them in chord or scale. */
  private static List<Integer> rootThirdAndFifth(PitchClassSet chord, PitchClassSet scale) {
    int third = firstOf(chord, 4, 3, 5, 2).orElseGet(() -> firstOf(scale, 4, 3).orElse(4));
    int fifth = firstOf(chord, 7, 6, 8).orElse(7);
    return List.of(0, third, fifth);
  }

  private static OptionalInt firstOf(PitchClassSet tones, int... wanted) {
    return Arrays.stream(wanted).filter(tones::contains).findFirst();
  }

  /** The next pitch of the scale in that direction; the pitch itself for no step. */
  static int beside(int pitch, int step, PitchClassSet scale) {
    int there = pitch + step;
    while (step != 0 && !scale.isEmpty() && !scale.contains(there)) {
      there += step;
    }
    return there;
  }
}
