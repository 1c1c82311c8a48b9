package holdfast.bench.motif;

import holdfast.melody.Note;
import holdfast.motif.Family;
import holdfast.motif.Treatment;
import holdfast.theory.PitchClassSet;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Which rules come to the very notes that were made, before any noise. */
final class Readings {

  private Readings() {}

  /** Whether the phrase is the idea moved as one, or step for step along a scale at hand. */
  static boolean sameShape(List<Note> idea, List<Note> phrase, Making making) {
    return rigid(idea, phrase)
        || bySteps(idea, phrase, making.home().scale(), making.there().scale())
        || making
            .home()
            .changes()
            .key()
            .map(key -> bySteps(idea, phrase, key.scale(), key.scale()))
            .orElse(false);
  }

  /** All words that are right for a phrase that was made by one of them. */
  static Set<Treatment> of(Treatment made, List<Note> idea, List<Note> phrase) {
    Set<Treatment> words = EnumSet.of(made);
    if (idea.size() != phrase.size()) {
      return words;
    }
    if (made == Treatment.NEW) {
      // Whoever plays new notes in the idea's very rhythm has kept it, by intent or not.
      if (sameRhythm(idea, phrase)) {
        words.add(Treatment.RHYTHM_KEPT);
        words.add(Treatment.CONTOUR_KEPT);
      }
      return words;
    }
    if (made == Treatment.RHYTHM_KEPT && even(idea)) {
      // Even notes are anybody's rhythm: nothing in the phrase tells that it was kept.
      words.add(Treatment.NEW);
      return words;
    }
    if (sameRhythm(idea, phrase) && rigid(idea, phrase)) {
      words.clear();
      words.add(
          idea.get(0).pitch() == phrase.get(0).pitch() ? Treatment.LITERAL : Treatment.TRANSPOSED);
      return words;
    }
    if (made == Treatment.INVERTED && turned(idea, phrase)) {
      words.add(Treatment.RETROGRADE);
    }
    if (made == Treatment.RETROGRADE && mirrored(idea, phrase) && sameRhythm(idea, phrase)) {
      words.add(Treatment.INVERTED);
    }
    return words;
  }

  static Set<Family> families(Treatment made, List<Note> idea, List<Note> phrase) {
    if (made == Treatment.CONTOUR_KEPT && within(idea, phrase, 3)) {
      return EnumSet.of(Family.RESTATED, Family.VARIED);
    }
    if (made == Treatment.RHYTHM_KEPT && even(idea)) {
      return EnumSet.of(Family.VARIED, Family.NEW);
    }
    return EnumSet.of(made.family());
  }

  private static boolean within(List<Note> idea, List<Note> phrase, int semitones) {
    int least = Integer.MAX_VALUE;
    int most = Integer.MIN_VALUE;
    for (int i = 0; i < idea.size(); i++) {
      int off = phrase.get(i).pitch() - idea.get(i).pitch();
      least = Math.min(least, off);
      most = Math.max(most, off);
    }
    return most - least <= 2 * semitones;
  }

  private static boolean even(List<Note> notes) {
    double first = notes.get(1).onsetBeats() - notes.get(0).onsetBeats();
    for (int i = 2; i < notes.size(); i++) {
      double step = notes.get(i).onsetBeats() - notes.get(i - 1).onsetBeats();
      if (Math.abs(step - first) > 1e-9) {
        return false;
      }
    }
    return true;
  }

  static boolean sameRhythm(List<Note> idea, List<Note> phrase) {
    for (int i = 1; i < idea.size(); i++) {
      double was = idea.get(i).onsetBeats() - idea.get(0).onsetBeats();
      double is = phrase.get(i).onsetBeats() - phrase.get(0).onsetBeats();
      if (Math.abs(was - is) > 1e-9) {
        return false;
      }
    }
    return true;
  }

  private static boolean rigid(List<Note> idea, List<Note> phrase) {
    int by = phrase.get(0).pitch() - idea.get(0).pitch();
    for (int i = 0; i < idea.size(); i++) {
      if (phrase.get(i).pitch() - idea.get(i).pitch() != by) {
        return false;
      }
    }
    return true;
  }

  private static boolean turned(List<Note> idea, List<Note> phrase) {
    int n = idea.size();
    int by = phrase.get(0).pitch() - idea.get(n - 1).pitch();
    for (int i = 0; i < n; i++) {
      if (phrase.get(i).pitch() - idea.get(n - 1 - i).pitch() != by) {
        return false;
      }
    }
    return true;
  }

  private static boolean mirrored(List<Note> idea, List<Note> phrase) {
    int axis = phrase.get(0).pitch() + idea.get(0).pitch();
    for (int i = 0; i < idea.size(); i++) {
      if (phrase.get(i).pitch() + idea.get(i).pitch() != axis) {
        return false;
      }
    }
    return true;
  }

  private static boolean bySteps(
      List<Note> idea, List<Note> phrase, PitchClassSet from, PitchClassSet to) {
    for (int i = 1; i < idea.size(); i++) {
      int was = steps(from, idea.get(0).pitch(), idea.get(i).pitch());
      int is = steps(to, phrase.get(0).pitch(), phrase.get(i).pitch());
      if (was != is) {
        return false;
      }
    }
    return true;
  }

  private static int steps(PitchClassSet set, int from, int to) {
    int count = 0;
    for (int p = from; p != to; p += Integer.signum(to - from)) {
      count += set.contains(p) ? 1 : 0;
    }
    return to >= from ? count : -count;
  }
}
