package holdfast.motif;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.ChordPalette;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** What lies under each note, looked up once for each chord and remembered. */
final class Grounds {

  /** More chords than any tune or book has; beyond it the memory starts anew. */
  private static final int MOST = 4096;

  private record Place(Harmony harmony, Optional<Key> key, Optional<Harmony> next) {}

  private final Map<Place, Ground> known = new ConcurrentHashMap<>();

  /** The ground under the idea: its own chord, or the key alone. */
  Ground[] under(Motif idea, Context context) {
    Ground[] grounds = new Ground[idea.notes().size()];
    Ground ground =
        idea.chord()
            .map(chord -> of(chord, context.key(), Optional.empty()))
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
    for (int j = 0; j < grounds.length; j++) {
      double beat = phrase.get(j).onsetBeats();
      Optional<Harmony> next = changes.nextChange(beat).map(b -> changes.at(b).harmony());
      grounds[j] = of(changes.at(beat).harmony(), context.key(), next);
    }
    return grounds;
  }

  private static Ground keyAlone(Optional<Key> key) {
    return key.map(k -> new Ground(PitchClassSet.EMPTY, k.scale(), PitchClassSet.EMPTY))
        .orElse(Ground.UNKNOWN);
  }

  private Ground of(Harmony harmony, Optional<Key> key, Optional<Harmony> next) {
    if (!harmony.hasChord()) {
      return keyAlone(key);
    }
    if (known.size() > MOST) {
      known.clear();
    }
    return known.computeIfAbsent(new Place(harmony, key, next), Grounds::look);
  }

  private static Ground look(Place place) {
    ChordPalette palette = ChordPalette.of(place.harmony(), place.key(), place.next());
    // Steps are counted along scales of seven notes where one is taught; an eight-note scale of a
    // diminished chord has no steps in common with its neighbours'.
    PitchClassSet scale =
        palette.scales().stream()
            .filter(s -> s.steps().size() == Ladder.USUAL_RUNGS)
            .findFirst()
            .map(s -> s.steps().transpose(palette.root()))
            .orElse(palette.scale());
    PitchClassSet welcome = palette.chordTones().union(palette.tensions()).minus(palette.handled());
    return new Ground(palette.chordTones(), scale, welcome);
  }
}
