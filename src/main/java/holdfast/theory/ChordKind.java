package holdfast.theory;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A chord without its root: what {@code m7b5} means on any note. Most are rows of the table
 * chord-kinds.csv; a symbol that the table lacks and the grammar understands makes a further one.
 *
 * @param suffix what is printed after the root, {@code ""} for a major triad
 * @param degrees the notes that the symbol names, against the major scale of the root
 * @param omitted those of them that players leave out
 * @param musicXmlKind the kind-value of MusicXML 4.0
 * @param musicXmlChanges the degrees that MusicXML needs beside the kind
 * @param harte the chord after the colon in the notation of Harte and others (ISMIR 2005)
 * @param spellings other suffixes with the same meaning, as typed
 */
public record ChordKind(
    String suffix,
    List<Degree> degrees,
    List<Degree> omitted,
    String musicXmlKind,
    List<DegreeChange> musicXmlChanges,
    String harte,
    List<String> spellings) {

  /** Copies the lists and checks that the chord has notes. */
  public ChordKind {
    degrees = List.copyOf(degrees);
    omitted = List.copyOf(omitted);
    musicXmlChanges = List.copyOf(musicXmlChanges);
    spellings = List.copyOf(spellings);
    if (degrees.isEmpty()) {
      throw new IllegalArgumentException("a chord needs at least one note");
    }
    if (!degrees.containsAll(omitted)) {
      throw new IllegalArgumentException("a note that is left out must first be named: " + omitted);
    }
  }

  /** The kinds of the table, in its order. */
  public static List<ChordKind> known() {
    return ChordKinds.TABLE.kinds();
  }

  /**
   * The kind that a suffix spells ({@code m7b5}, {@code -7(b5)}, {@code ø}), or empty when it means
   * nothing. Capital and small letters differ in meaning: M7 is major, m7 minor.
   */
  public static Optional<ChordKind> read(String suffix) {
    return ChordKinds.TABLE.read(suffix);
  }

  /**
   * The kind with exactly these degrees, from the table or made for them.
   *
   * @throws IllegalArgumentException when no chord symbol says them
   */
  public static ChordKind of(List<Degree> degrees) {
    return reading(degrees)
        .orElseThrow(() -> new IllegalArgumentException("no chord symbol says " + degrees));
  }

  /**
   * The kind with exactly these degrees, from the table or made for them; empty when no chord
   * symbol says them.
   */
  public static Optional<ChordKind> reading(List<Degree> degrees) {
    return ChordKinds.TABLE.reading(degrees);
  }

  /** The degrees that sound when players play it: all but the omitted. */
  public List<Degree> sounding() {
    return degrees.stream().filter(d -> !omitted.contains(d)).toList();
  }

  /** Whether the symbol names a degree. */
  public boolean has(int number, int alter) {
    return degrees.contains(new Degree(number, alter));
  }

  /** Semitones above the root of all the named notes. */
  public PitchClassSet standardSteps() {
    return steps(degrees);
  }

  /** Semitones above the root of the notes that players play. */
  public PitchClassSet soundingSteps() {
    return steps(sounding());
  }

  private static PitchClassSet steps(List<Degree> degrees) {
    return PitchClassSet.of(degrees.stream().mapToInt(Degree::semitones).toArray());
  }

  /**
   * The degrees that say which chord it is and lead to the next one: third and seventh; the fourth
   * stands for a suspended third, the sixth for a missing seventh. A diminished chord has its third
   * and its fifth. A triad has the third alone, a bare fifth none.
   */
  public List<Degree> guideTones() {
    if (has(5, -1) && has(3, -1) && !has(7, -1)) {
      return List.of(new Degree(3, -1), new Degree(5, -1));
    }
    return Stream.concat(first(3, 4, 2).stream(), first(7, 6).stream()).toList();
  }

  private Optional<Degree> first(int... numbers) {
    for (int number : numbers) {
      for (Degree degree : degrees) {
        if (degree.number() == number) {
          return Optional.of(degree);
        }
      }
    }
    return Optional.empty();
  }
}
