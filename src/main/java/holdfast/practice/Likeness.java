package holdfast.practice;

import holdfast.harmony.ToneName;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How near a line that was sung back comes to the one that was heard. An octave makes no
 * difference: a child sings a man's line in its own.
 *
 * @param same how many notes are the same
 * @param of how many notes the line has that was heard
 * @param heardNotes how many notes came back
 * @param firstOther the first note that differs, counted from 0; the number of notes where none
 *     does
 * @param octaves how many semitones all of it lies above the line, a multiple of 12
 */
record Likeness(int same, int of, int heardNotes, int firstOther, int octaves) {

  private static final int OCTAVE = 12;

  /** Compares two lines, note by note in order. */
  static Likeness of(List<Note> line, List<Note> back) {
    int notes = Math.min(line.size(), back.size());
    TreeMap<Integer, Integer> byOctave = new TreeMap<>();
    for (int i = 0; i < notes; i++) {
      int away = back.get(i).pitch() - line.get(i).pitch();
      if (away % OCTAVE == 0) {
        byOctave.merge(away, 1, Integer::sum);
      }
    }
    int octaves = 0;
    int same = 0;
    for (var entry : byOctave.entrySet()) {
      boolean nearer = entry.getValue() == same && Math.abs(entry.getKey()) < Math.abs(octaves);
      if (entry.getValue() > same || nearer) {
        octaves = entry.getKey();
        same = entry.getValue();
      }
    }
    int first = 0;
    while (first < notes && back.get(first).pitch() - line.get(first).pitch() == octaves) {
      first++;
    }
    return new Likeness(same, line.size(), back.size(), first, octaves);
  }

  /** Whether every note came back and none was added. */
  boolean isWhole() {
    return same == of && heardNotes == of;
  }

  /** Whether it is the line but for a note or two: more than half of it came back. */
  boolean isNear() {
    return 2 * same > of && Math.abs(heardNotes - of) <= 1;
  }

  /** Where it first differs, in a sentence; empty where that cannot be said of one note. */
  Optional<String> difference(List<Note> line, List<Note> back, Harmony chord, Optional<Key> key) {
    if (firstOther >= Math.min(line.size(), back.size())) {
      return Optional.empty();
    }
    String mine = ToneName.shown(line.get(firstOther).pitch(), chord, key);
    String yours = ToneName.shown(back.get(firstOther).pitch(), chord, key);
    return Optional.of(
        "note " + (firstOther + 1) + " was " + mine + " with me and " + yours + " with you");
  }
}
