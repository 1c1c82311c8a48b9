package holdfast.theory;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * From the {@code <kind>} and {@code <degree>} elements of MusicXML 4.0 to a chord kind. The way
 * back is {@link ChordKind#musicXmlKind} and {@link ChordKind#musicXmlChanges}.
 *
 * <p>The kinds that name a function and not a chord on its root (Neapolitan, Italian, French,
 * German, Tristan and pedal) are read as what sounds nearest: {@link #nearestSound}.
 */
public final class MusicXmlKind {

  /** Functional kinds and the suffix of what sounds nearest; common practice, no source. */
  private static final Map<String, String> NEAREST =
      Map.of(
          "Neapolitan", "",
          "Italian", "7",
          "French", "7b5",
          "German", "7",
          "Tristan", "m7b5",
          "pedal", "5");

  private MusicXmlKind() {}

  /**
   * The chord kind that a kind-value and its degrees make; empty when the value is not covered or
   * no chord symbol says those notes. {@code other} starts from the root alone.
   *
   * @param kindValue the text of the kind element, as {@code dominant-ninth}
   * @param changes the degree elements in order
   */
  public static Optional<ChordKind> read(String kindValue, List<DegreeChange> changes) {
    return base(kindValue)
        .flatMap(
            degrees -> {
              List<Degree> chord = new ArrayList<>(degrees);
              changes.forEach(change -> apply(change, degrees, chord));
              return ChordKind.reading(ChordMaking.besideThird(chord));
            });
  }

  /** The chord that sounds nearest to a kind-value that names a function; empty for all others. */
  public static Optional<ChordKind> nearestSound(String kindValue) {
    return Optional.ofNullable(NEAREST.get(kindValue)).flatMap(ChordKind::read);
  }

  private static Optional<List<Degree>> base(String kindValue) {
    if (kindValue.equals("other")) {
      return Optional.of(List.of(new Degree(1, 0)));
    }
    return ChordKind.known().stream()
        .filter(kind -> kind.musicXmlChanges().isEmpty() && kind.musicXmlKind().equals(kindValue))
        .map(ChordKind::degrees)
        .findFirst();
  }

  private static void apply(DegreeChange change, List<Degree> base, List<Degree> chord) {
    int number = change.value();
    Optional<Degree> there = base.stream().filter(d -> d.number() == number).findFirst();
    switch (change.type()) {
      case ADD -> chord.add(added(change));
      case ALTER -> {
        // Some programs alter a degree that the kind lacks, and mean that it is added.
        there.ifPresent(chord::remove);
        chord.add(
            there
                .map(d -> new Degree(number, d.alter() + change.alter()))
                .orElseGet(() -> added(change)));
      }
      case SUBTRACT -> there.ifPresent(chord::remove);
    }
  }

  /** An added degree counts against a dominant chord, whose seventh is flat. */
  private static Degree added(DegreeChange change) {
    return new Degree(change.value(), change.alter() - (change.value() == 7 ? 1 : 0));
  }
}
