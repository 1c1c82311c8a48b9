package holdfast.motif;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.ChordPalette;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import holdfast.theory.Scale;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** What lies under each note. An idea's chord is looked up once and remembered. */
final class Grounds {

  /** More chords than any tune or book has; beyond it the memory starts anew. */
  private static final int MOST = 4096;

  private record Place(Harmony harmony, Optional<Key> key) {}

  private final Map<Place, Ground> known = new ConcurrentHashMap<>();

  /** The ground under the idea: its own chord, or the key alone. */
  Ground[] under(Motif idea, Context context) {
    Ground[] grounds = new Ground[idea.notes().size()];
    Ground ground =
        idea.chord()
            .map(chord -> of(chord, context.key()))
            .orElseGet(() -> keyAlone(context.key()));
    Arrays.fill(grounds, ground);
    return grounds;
  }

  /** The ground under each note of a phrase. */
  Ground[] under(List<Note> phrase, Context context) {
    Ground[] grounds = new Ground[phrase.size()];
    if (context.changes().isEmpty()) {
      Arrays.fill(grounds, keyAlone(context.key()));
      return grounds;
    }
    Changes changes = context.changes().get();
    Optional<ChordPalette> before = Optional.empty();
    for (int j = 0; j < grounds.length; j++) {
      ChordPalette palette = changes.paletteAt(phrase.get(j).onsetBeats());
      // The same object as long as the chord lasts.
      boolean same = before.isPresent() && isSame(before.get(), palette);
      grounds[j] = same ? grounds[j - 1] : look(palette, context.key());
      before = Optional.of(palette);
    }
    return grounds;
  }

  @SuppressWarnings("ReferenceEquality") // a palette is one object for as long as its chord lasts
  private static boolean isSame(ChordPalette one, ChordPalette other) {
    return one == other;
  }

  private static Ground keyAlone(Optional<Key> key) {
    return key.map(k -> new Ground(PitchClassSet.EMPTY, k.scale(), PitchClassSet.EMPTY))
        .orElse(Ground.UNKNOWN);
  }

  private Ground of(Harmony harmony, Optional<Key> key) {
    if (known.size() > MOST) {
      known.clear();
    }
    return known.computeIfAbsent(
        new Place(harmony, key),
        place -> look(ChordPalette.of(harmony, key, Optional.empty()), key));
  }

  private static Ground look(ChordPalette palette, Optional<Key> key) {
    if (palette.chordTones().isEmpty()) {
      return keyAlone(key);
    }
    return new Ground(palette.chordTones(), stepScale(palette), welcome(palette));
  }

  /** Notes that may be held: chord tones and tensions. */
  static PitchClassSet welcome(ChordPalette palette) {
    return palette.chordTones().union(palette.tensions()).minus(palette.handled());
  }

  /**
   * The scale along which steps are counted: one of seven notes where one is taught, since the
   * eight-note scale of a diminished chord has no steps in common with its neighbours'.
   */
  private static PitchClassSet stepScale(ChordPalette palette) {
    for (Scale scale : palette.scales()) {
      if (scale.steps().size() == Ladder.USUAL_RUNGS) {
        return scale.steps().transpose(palette.root());
      }
    }
    return palette.scale();
  }
}
