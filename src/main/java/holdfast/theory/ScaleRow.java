package holdfast.theory;

import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A row of chord-scales.csv: a place in a tune, and what goes with a chord there.
 *
 * @param context what a musician calls the place
 * @param families the kinds of chord it speaks of
 * @param key {@code major}, {@code minor}, {@code modal} or {@code any}
 * @param roots semitones of the roots above the tonic; empty for any
 * @param next how the chord must go on, in the table's words
 * @param scales the taught scales, the first choice first
 * @param tensions notes that colour the chord, in semitones above its root
 * @param handle notes better not held, likewise
 * @param disputed notes about which the sources disagree, likewise
 * @param disagreement what they disagree about; empty when they agree
 */
record ScaleRow(
    String context,
    List<ChordFamily> families,
    String key,
    PitchClassSet roots,
    String next,
    List<Scale> scales,
    PitchClassSet tensions,
    PitchClassSet handle,
    PitchClassSet disputed,
    String disagreement) {

  private static final Map<ChordFamily, List<ScaleRow>> TABLE =
      Table.named("chord-scales.csv").rows().stream()
          .map(ScaleRow::read)
          .flatMap(row -> row.families().stream().map(family -> Map.entry(family, row)))
          .collect(
              Collectors.groupingBy(
                  Map.Entry::getKey,
                  Collectors.mapping(Map.Entry::getValue, Collectors.toUnmodifiableList())));

  private static ScaleRow read(Table.Row row) {
    return new ScaleRow(
        row.get("context"),
        row.words("families").stream().map(ChordFamily::named).toList(),
        row.get("key"),
        steps(
            row.words("degrees").stream().filter(word -> !word.equals("any")),
            RomanNumeral::semitones),
        row.get("next"),
        row.parts("scales").stream().map(Scale::named).toList(),
        steps(row.words("tensions").stream(), word -> Degree.parse(word).semitones()),
        steps(row.words("handle").stream(), word -> Degree.parse(word).semitones()),
        steps(row.words("disputed").stream(), word -> Degree.parse(word).semitones()),
        row.get("disagreement"));
  }

  private static PitchClassSet steps(Stream<String> words, ToIntFunction<String> semitones) {
    return PitchClassSet.of(words.mapToInt(semitones).toArray());
  }

  /** The first row that speaks of the place. */
  static ScaleRow of(Place place) {
    for (ScaleRow row : TABLE.getOrDefault(place.family(), List.of())) {
      if (row.speaksOf(place)) {
        return row;
      }
    }
    throw new IllegalStateException("chord-scales.csv has no row for " + place.family().text());
  }

  private boolean speaksOf(Place place) {
    boolean root = roots.isEmpty() || (place.key().isPresent() && roots.contains(place.step()));
    return root && place.isIn(key) && place.goesOn(next);
  }
}
