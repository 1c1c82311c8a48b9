package holdfast.harmony;

import holdfast.theory.ChordSymbol;
import holdfast.theory.Degree;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import holdfast.theory.Spelling;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** What a note over a chord is called: its name, and its place above the root. */
public final class ToneName {

  /** The place above the root of each step that a chord leaves unnamed, as tensions are counted. */
  private static final List<Degree> BY_STEP =
      List.of(
          new Degree(1, 0),
          new Degree(9, -1),
          new Degree(9, 0),
          new Degree(9, 1),
          new Degree(3, 0),
          new Degree(11, 0),
          new Degree(11, 1),
          new Degree(5, 0),
          new Degree(13, -1),
          new Degree(13, 0),
          new Degree(7, -1),
          new Degree(7, 0));

  private ToneName() {}

  /** The name as shown, {@code E♭}, as {@link Spelling} finds it. */
  public static String shown(int pitch, Harmony harmony, Optional<Key> key) {
    return name(pitch, harmony, key).display();
  }

  /** The name, as {@link Spelling} finds it. */
  public static NoteName name(int pitch, Harmony harmony, Optional<Key> key) {
    return new Spelling(key, harmony).name(pitch);
  }

  /** The names of all twelve pitch classes from C up, over a harmony. */
  public static List<NoteName> names(Harmony harmony, Optional<Key> key) {
    return IntStream.range(0, 12).mapToObj(pc -> name(pc, harmony, key)).toList();
  }

  /** The place above the root in a word: {@code third}, {@code flat ninth}, {@code bass}. */
  public static String place(int pitch, Harmony harmony) {
    ChordSymbol chord = harmony.chord().orElseThrow();
    int pitchClass = Math.floorMod(pitch, 12);
    Optional<Degree> own =
        chord.kind().degrees().stream()
            .filter(d -> chord.spell(d).pitchClass() == pitchClass)
            .findAny();
    if (own.isPresent()) {
      return ownWord(own.get());
    }
    if (chord.lowest().pitchClass() == pitchClass) {
      return "bass";
    }
    Degree degree = BY_STEP.get(step(pitch, chord));
    return switch (degree.number()) {
      case 7 -> degree.alter() < 0 ? "minor seventh" : "major seventh";
      case 3 -> "major third";
      default -> altered(degree) + ordinal(degree.number());
    };
  }

  /** The chord's own third, fifth, seventh need no "flat": they are what the chord says. */
  private static String ownWord(Degree degree) {
    return (degree.number() > 7 ? altered(degree) : "") + ordinal(degree.number());
  }

  private static String altered(Degree degree) {
    return degree.alter() < 0 ? "flat " : degree.alter() > 0 ? "sharp " : "";
  }

  private static String ordinal(int number) {
    return switch (number) {
      case 1 -> "root";
      case 2 -> "second";
      case 3 -> "third";
      case 4 -> "fourth";
      case 5 -> "fifth";
      case 6 -> "sixth";
      case 7 -> "seventh";
      case 9 -> "ninth";
      case 11 -> "eleventh";
      case 13 -> "thirteenth";
      default -> number + "th";
    };
  }

  private static int step(int pitch, ChordSymbol chord) {
    return Math.floorMod(pitch - chord.root().pitchClass(), 12);
  }
}
