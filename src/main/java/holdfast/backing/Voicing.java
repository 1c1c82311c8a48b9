package holdfast.backing;

import holdfast.theory.PitchClassSet;
import java.util.List;

/**
 * A chord as it lies under the hands, without the bass.
 *
 * @param pitches MIDI note numbers, from the lowest up, no two the same
 */
public record Voicing(List<Integer> pitches) {

  /** Checks the order. */
  public Voicing {
    pitches = List.copyOf(pitches);
    if (pitches.isEmpty()) {
      throw new IllegalArgumentException("a voicing has at least one note");
    }
    for (int i = 1; i < pitches.size(); i++) {
      if (pitches.get(i) <= pitches.get(i - 1)) {
        throw new IllegalArgumentException("a voicing goes up from its lowest note: " + pitches);
      }
    }
  }

  /** The lowest note. */
  public int lowest() {
    return pitches.get(0);
  }

  /** The note that is heard most, the highest. */
  public int top() {
    return pitches.get(pitches.size() - 1);
  }

  /** What sounds, octaves left aside. */
  public PitchClassSet pitchClasses() {
    return PitchClassSet.of(pitches.stream().mapToInt(Integer::intValue).toArray());
  }
}
