package holdfast.theory;

import java.util.List;
import java.util.Optional;

/**
 * A chord as a chart names it: root, kind, and the bass where it is not the root.
 *
 * @param root the root
 * @param kind what stands above it
 * @param bass the note after the slash; empty when the root is the bass
 */
public record ChordSymbol(NoteName root, ChordKind kind, Optional<NoteName> bass)
    implements Harmony {

  /** A bass that is the root needs no slash. */
  public ChordSymbol {
    bass = bass.filter(note -> !note.equals(root));
  }

  /**
   * Reads one chord symbol in any usual spelling: {@code Ebmaj7}, {@code E♭Δ}, {@code F#m7b5/A}.
   *
   * @throws UnknownChordException when the text is no chord symbol; it names the nearest ones
   */
  public static ChordSymbol parse(String symbol) {
    return parse(symbol, LetterNames.ENGLISH);
  }

  /**
   * As {@link #parse(String)}, with the letters as a country uses them.
   *
   * @throws UnknownChordException when the text is no chord symbol; it names the nearest ones
   */
  public static ChordSymbol parse(String symbol, LetterNames letters) {
    return SymbolReading.read(symbol, letters)
        .orElseThrow(() -> new UnknownChordException(symbol, NearestSymbols.of(symbol, letters)));
  }

  /** The lowest note: the one after the slash, or the root. */
  public NoteName lowest() {
    return bass.orElse(root);
  }

  /** The names of the chord's notes in the order of its degrees, the bass apart. */
  public List<NoteName> notes() {
    return kind.degrees().stream().map(this::spell).toList();
  }

  /** What a degree of this chord is called: the seventh of E♭7 is D♭. */
  public NoteName spell(Degree degree) {
    NoteName name = root.transpose(degree.interval());
    // A diminished seventh that would need a double flat is written as a sixth.
    return degree.equals(new Degree(7, -2)) ? name.simplified() : name;
  }

  @Override
  public Optional<ChordSymbol> chord() {
    return Optional.of(this);
  }

  PitchClassSet soundingPitchClasses() {
    return kind.soundingSteps()
        .transpose(root.pitchClass())
        .union(PitchClassSet.of(lowest().pitchClass()));
  }

  PitchClassSet spelledPitchClasses() {
    return kind.standardSteps().transpose(root.pitchClass());
  }

  PitchClassSet guideTonePitchClasses() {
    return PitchClassSet.of(
        kind.guideTones().stream().mapToInt(d -> d.semitones() + root.pitchClass()).toArray());
  }

  /** The same chord an interval higher, without double accidentals in its root or bass. */
  @Override
  public ChordSymbol transpose(Interval interval) {
    NoteName there = root.transpose(interval);
    NoteName plain = there.simplified();
    // When the root is respelled the bass goes with it, so that both keep their distance.
    Interval way = plain.equals(there) ? interval : Interval.up(root, plain);
    return new ChordSymbol(plain, kind, bass.map(note -> note.transpose(way).simplified()));
  }

  @Override
  public ChordSymbol transpose(Interval interval, Key there) {
    ChordSymbol moved = transpose(interval);
    NoteName name = usual(moved.root, there);
    ChordSymbol usual = moved.transpose(Interval.up(moved.root, name));
    return new ChordSymbol(
        usual.root,
        kind,
        usual.bass.map(note -> usual.notes().contains(note) ? note : usual(note, there)));
  }

  /** E♯, B♯, F♭ and C♭ are read with effort: only a key that has them keeps them. */
  private static NoteName usual(NoteName name, Key key) {
    NoteName natural = NoteName.plain(name.pitchClass(), name.alter() > 0);
    boolean odd = natural.alter() == 0 && name.alter() != 0;
    boolean ofKey =
        key.scale().contains(name.pitchClass()) && key.spell(name.pitchClass()).equals(name);
    return odd && !ofKey ? natural : name;
  }

  @Override
  public String text() {
    return root.text() + kind.suffix() + bass.map(note -> "/" + note.text()).orElse("");
  }

  @Override
  public String display() {
    return root.display()
        + kind.suffix().replaceAll("b(?=[0-9])", "♭").replaceAll("#(?=[0-9])", "♯")
        + bass.map(note -> "/" + note.display()).orElse("");
  }
}
