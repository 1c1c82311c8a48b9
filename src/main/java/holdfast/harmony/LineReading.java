package holdfast.harmony;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.ToneClass;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Reads a line as an ear does that knows the changes: what each note does over its chord. The order
 * of the questions is the trade's: does it belong; does it come from the chord before or from the
 * next; does it lead by step somewhere that rests; and only then, does it rub.
 */
final class LineReading {

  /** A note that starts up to this long before a change may belong to the next chord. */
  private static final double EARLY_QUARTERS = 0.55;

  /** A long note that starts up to this long before a change may still be early. */
  private static final double EARLIEST_QUARTERS = 1.05;

  /** A note meets the next chord when it hangs over at least so far; less is a loose finger. */
  private static final double OVERHANG_QUARTERS = 0.25;

  /** A note that starts up to this long after a change may repeat a note of the chord before. */
  private static final double RESTRUCK_QUARTERS = 0.25;

  /** From here on a note is long: a quarter, played a little short. */
  private static final double LONG_QUARTERS = 0.85;

  /** The last note of a phrase is heard long from here on. */
  private static final double LONG_LANDING_QUARTERS = 0.45;

  /** Over a rest longer than this a line does not lead from note to note any more. */
  private static final double LOOSE_QUARTERS = 1.0;

  /** Before a rest longer than this a phrase has landed. */
  private static final double LANDING_REST_QUARTERS = 0.75;

  /** An appoggiatura off the beat is so much longer than the note that it gives way to. */
  private static final double LEANING_LENGTH = 1.5;

  /** Steps in one direction that a passing line may take before it rests. */
  private static final int LONGEST_PASSAGE = 3;

  private static final int STEP_SEMITONES = 2;

  private static final int FOURTH = 5;

  private static final double SAME_BEATS = 1e-6;

  /**
   * What one note does.
   *
   * @param chord the chord that it is judged by; empty where none sounds
   * @param goal the index of the note that it leads to or gives way to
   */
  record Reading(NoteRole role, Optional<ChordHere> chord, OptionalInt goal) {}

  private final List<Note> line;
  private final Changes changes;
  private final Beats beats;
  private final double[] changeAfter;
  private final List<Optional<ChordHere>> here;
  private final List<Optional<ChordHere>> next;

  LineReading(List<Note> line, Changes changes, Beats beats) {
    this.line = line;
    this.changes = changes;
    this.beats = beats;
    this.changeAfter = new double[line.size()];
    this.here = new ArrayList<>(line.size());
    this.next = new ArrayList<>(line.size());
    for (int i = 0; i < line.size(); i++) {
      double onset = line.get(i).onsetBeats();
      double change = changes.nextChange(onset).orElse(Double.POSITIVE_INFINITY);
      changeAfter[i] = change;
      here.add(ChordHere.at(changes, onset));
      next.add(Double.isFinite(change) ? ChordHere.at(changes, change) : Optional.empty());
    }
  }

  Note note(int i) {
    return line.get(i);
  }

  Changes changes() {
    return changes;
  }

  Beats beats() {
    return beats;
  }

  /** The beat of the next change after a note's onset; infinite where there is none. */
  double changeAfter(int i) {
    return changeAfter[i];
  }

  /** The chord after that change. */
  Optional<ChordHere> chordAfterChange(int i) {
    return next.get(i);
  }

  /** Whether a note is the last before a rest. */
  boolean isLanding(int i) {
    return i == line.size() - 1
        || beats.quarters(line.get(i + 1).onsetBeats() - line.get(i).endBeats())
            > LANDING_REST_QUARTERS;
  }

  /** What a note does. */
  Reading read(int i) {
    Optional<ChordHere> now = here.get(i);
    Optional<ChordHere> then = next.get(i);
    boolean meetsNext = then.isPresent() && hangsOver(i) >= OVERHANG_QUARTERS;
    if (now.isEmpty()) {
      return meetsNext && isPushed(i)
          ? belonging(i, then.get()).orElseGet(() -> leading(i, then.get()))
          : new Reading(NoteRole.UNJUDGED, Optional.empty(), OptionalInt.empty());
    }
    ChordHere chord = now.get();
    if (meetsNext && isPushed(i)) {
      return pushed(i, chord, then.get());
    }
    if (chord.belongs(pitch(i))) {
      return meetsNext && !then.get().belongs(pitch(i))
          ? overstaying(i, chord, then.get())
          : colouring(i, chord);
    }
    if (then.isPresent() && isEarly(i, EARLY_QUARTERS) && continuesInto(i, then.get())) {
      return new Reading(NoteRole.ANTICIPATION, then, OptionalInt.empty());
    }
    if (isRestruck(i) && resolvesByStep(i)) {
      return reading(NoteRole.SUSPENSION, chord, i + 1);
    }
    Reading leading = leading(i, chord);
    boolean comesEarly =
        then.isPresent()
            && then.get().rests(pitch(i))
            && (isEarly(i, EARLY_QUARTERS) || (meetsNext && isEarly(i, EARLIEST_QUARTERS)));
    return comesEarly && leading.goal().isEmpty()
        ? new Reading(NoteRole.ANTICIPATION, then, OptionalInt.empty())
        : leading;
  }

  /** A note that belongs; a short one that belongs by some readings only may rather lead on. */
  private Reading colouring(int i, ChordHere chord) {
    boolean isShort = beats.quarters(line.get(i).durationBeats()) < LONG_QUARTERS;
    if (isShort && chord.isDisputed(pitch(i))) {
      Optional<ChordHere> then = next.get(i);
      if (then.isPresent() && isEarly(i, EARLY_QUARTERS) && continuesInto(i, then.get())) {
        return new Reading(NoteRole.ANTICIPATION, then, OptionalInt.empty());
      }
      Reading leading = leading(i, chord);
      if (leading.goal().isPresent()) {
        return leading;
      }
    }
    return chord.toneClass(pitch(i)) == ToneClass.TENSION && isBlue(i, chord)
        ? reading(NoteRole.BLUE_NOTE, chord)
        : belonging(i, chord).orElseThrow();
  }

  /** A note that starts just before a change and sounds mostly after it is the next chord's. */
  private Reading pushed(int i, ChordHere now, ChordHere then) {
    if (then.belongs(pitch(i))) {
      return now.belongs(pitch(i))
          ? belonging(i, then).orElseThrow()
          : new Reading(NoteRole.ANTICIPATION, Optional.of(then), OptionalInt.empty());
    }
    return now.belongs(pitch(i)) && resolvesByStep(i)
        ? reading(NoteRole.SUSPENSION, then, i + 1)
        : leading(i, then);
  }

  /** A note that belongs to its chord and hangs over into one where it does not. */
  private Reading overstaying(int i, ChordHere now, ChordHere then) {
    if (resolvesByStep(i) && line.get(i + 1).onsetBeats() >= changeAfter[i] - SAME_BEATS) {
      return reading(NoteRole.SUSPENSION, then, i + 1);
    }
    double tooLong = isLanding(i) ? LONG_LANDING_QUARTERS : LONG_QUARTERS;
    return hangsOver(i) >= tooLong
        ? reading(NoteRole.HELD_AGAINST, then)
        : belonging(i, now).orElseThrow();
  }

  private Optional<Reading> belonging(int i, ChordHere chord) {
    ToneClass toneClass = chord.toneClass(line.get(i).pitch());
    return switch (toneClass) {
      case CHORD_TONE -> Optional.of(reading(NoteRole.CHORD_TONE, chord));
      case TENSION -> Optional.of(reading(NoteRole.TENSION, chord));
      case SCALE_TONE, OUTSIDE -> Optional.empty();
    };
  }

  /** A note that does not rest: where does it lead, and if nowhere, does it rub? */
  private Reading leading(int i, ChordHere chord) {
    OptionalInt passage = endOfPassage(i);
    if (passage.isPresent()) {
      return reading(NoteRole.PASSING, chord, passage.getAsInt());
    }
    if (stepIn(i) && stepOut(i) && rests(i + 1) && pitch(i - 1) == pitch(i + 1)) {
      return reading(NoteRole.NEIGHBOUR, chord, i + 1);
    }
    OptionalInt closesIn = enclosed(i);
    if (closesIn.isPresent()) {
      return reading(NoteRole.ENCLOSURE, chord, closesIn.getAsInt());
    }
    if (resolvesByStep(i) && (mayResolveToTension(i, chord) || isChordTone(i + 1))) {
      return reading(resolution(i, chord), chord, i + 1);
    }
    if (isBlue(i, chord)) {
      return reading(NoteRole.BLUE_NOTE, chord);
    }
    double quarters = beats.quarters(line.get(i).durationBeats());
    if (quarters >= (isLanding(i) ? LONG_LANDING_QUARTERS : LONG_QUARTERS)) {
      return reading(NoteRole.HELD_AGAINST, chord);
    }
    if (stepIn(i) && rests(i - 1)) {
      return reading(NoteRole.NEIGHBOUR, chord);
    }
    return chord.toneClass(pitch(i)) == ToneClass.SCALE_TONE
        ? reading(NoteRole.SCALE_TONE, chord)
        : reading(NoteRole.OUTSIDE, chord);
  }

  /** Which kind of resolution, for a note that gives way by step but neither passes nor returns. */
  private NoteRole resolution(int i, ChordHere chord) {
    Note note = line.get(i);
    Note goal = line.get(i + 1);
    boolean leans =
        beats.place(note.onsetBeats()).compareTo(beats.place(goal.onsetBeats())) < 0
            || note.durationBeats() >= LEANING_LENGTH * goal.durationBeats();
    if (leans && !stepIn(i)) {
      return NoteRole.APPOGGIATURA;
    }
    return isHalfStep(i, i + 1)
            && (chord.toneClass(pitch(i)) == ToneClass.OUTSIDE || chord.isDisputed(pitch(i)))
        ? NoteRole.APPROACH
        : NoteRole.NEIGHBOUR;
  }

  /** A note from outside gives way to a tension only by a half step: a whole one sounds new. */
  private boolean mayResolveToTension(int i, ChordHere chord) {
    return chord.toneClass(pitch(i)) != ToneClass.OUTSIDE || isHalfStep(i, i + 1);
  }

  /** Where a stepwise line through this note, in one direction, comes to rest. */
  private OptionalInt endOfPassage(int i) {
    if (!stepIn(i)) {
      return OptionalInt.empty();
    }
    int direction = Integer.signum(pitch(i) - pitch(i - 1));
    for (int k = i; k < i + LONGEST_PASSAGE; k++) {
      if (!stepOut(k) || Integer.signum(pitch(k + 1) - pitch(k)) != direction) {
        return OptionalInt.empty();
      }
      if (rests(k + 1)) {
        return OptionalInt.of(k + 1);
      }
    }
    return OptionalInt.empty();
  }

  /** The note that this one and its partner close in on, from above and below. */
  private OptionalInt enclosed(int i) {
    if (isEnclosure(i, i + 1, i + 2)) {
      return OptionalInt.of(i + 2);
    }
    return isEnclosure(i - 1, i, i + 1) ? OptionalInt.of(i + 1) : OptionalInt.empty();
  }

  private boolean isEnclosure(int first, int second, int goal) {
    return first >= 0
        && connected(first)
        && connected(second)
        && Integer.signum(pitch(first) - pitch(goal))
            == -Integer.signum(pitch(second) - pitch(goal))
        && isStep(first, goal)
        && isStep(second, goal)
        && (isHalfStep(first, goal) || isHalfStep(second, goal))
        && isChordTone(goal);
  }

  /**
   * Whether it is the lowered third or fifth of home, over a dominant or over the minor home chord.
   * Home is the key's tonic; without a key it is a dominant that does not resolve a fourth up.
   */
  private boolean isBlue(int i, ChordHere chord) {
    boolean leaves =
        next.get(i).map(n -> Math.floorMod(n.root() - chord.root(), 12) == FOURTH).orElse(false);
    if (changes.key().isEmpty() && (leaves || !chord.isDominant())) {
      return false;
    }
    int home = changes.key().map(key -> key.tonic().pitchClass()).orElse(chord.root());
    boolean isHome = home == chord.root();
    boolean carriesBlues = chord.isDominant() || (isHome && chord.isMinor());
    // A tension that belongs by its chord is blue only over home itself.
    boolean isColour = chord.belongs(pitch(i)) && !isHome;
    int step = Math.floorMod(pitch(i) - home, 12);
    return carriesBlues && !isColour && (step == 3 || step == 6);
  }

  private boolean isRestruck(int i) {
    if (i == 0 || !connected(i - 1) || pitch(i - 1) != pitch(i)) {
      return false;
    }
    double change = changeAfter[i - 1];
    double since = beats.quarters(line.get(i).onsetBeats() - change);
    return since >= -SAME_BEATS && since <= RESTRUCK_QUARTERS && rests(i - 1);
  }

  /** Whether an early note goes on into the next chord: held over, or struck again there. */
  private boolean continuesInto(int i, ChordHere then) {
    if (!then.rests(pitch(i))) {
      return false;
    }
    boolean struckAgain =
        connected(i)
            && pitch(i + 1) == pitch(i)
            && line.get(i + 1).onsetBeats() >= changeAfter[i] - SAME_BEATS;
    return struckAgain || hangsOver(i) >= OVERHANG_QUARTERS;
  }

  private boolean isEarly(int i, double quarters) {
    return beats.quarters(changeAfter[i] - line.get(i).onsetBeats()) <= quarters;
  }

  private boolean isPushed(int i) {
    return isEarly(i, EARLY_QUARTERS)
        && hangsOver(i) >= beats.quarters(changeAfter[i] - line.get(i).onsetBeats());
  }

  private double hangsOver(int i) {
    return beats.quarters(line.get(i).endBeats() - changeAfter[i]);
  }

  private boolean resolvesByStep(int i) {
    return stepOut(i) && rests(i + 1);
  }

  /** Whether a note rests in its own chord, or in the next one that it comes early for. */
  private boolean rests(int i) {
    Optional<ChordHere> then = next.get(i);
    boolean restsEarly =
        then.isPresent() && isEarly(i, EARLY_QUARTERS) && then.get().rests(pitch(i));
    return restsEarly || here.get(i).map(chord -> chord.rests(pitch(i))).orElse(true);
  }

  private boolean isChordTone(int i) {
    return here.get(i).map(chord -> chord.toneClass(pitch(i)) == ToneClass.CHORD_TONE).orElse(true)
        || (isEarly(i, EARLY_QUARTERS)
            && next.get(i)
                .map(chord -> chord.toneClass(pitch(i)) == ToneClass.CHORD_TONE)
                .orElse(false));
  }

  private boolean stepIn(int i) {
    return i > 0 && connected(i - 1) && isStep(i - 1, i);
  }

  private boolean stepOut(int i) {
    return connected(i) && isStep(i, i + 1);
  }

  private boolean isStep(int i, int k) {
    int distance = Math.abs(pitch(i) - pitch(k));
    return distance > 0 && distance <= STEP_SEMITONES;
  }

  private boolean isHalfStep(int i, int k) {
    return Math.abs(pitch(i) - pitch(k)) == 1;
  }

  /** Whether a note leads on to one that follows without much of a rest. */
  private boolean connected(int i) {
    return i + 1 < line.size()
        && beats.quarters(line.get(i + 1).onsetBeats() - line.get(i).endBeats()) <= LOOSE_QUARTERS;
  }

  private int pitch(int i) {
    return line.get(i).pitch();
  }

  private static Reading reading(NoteRole role, ChordHere chord) {
    return new Reading(role, Optional.of(chord), OptionalInt.empty());
  }

  private static Reading reading(NoteRole role, ChordHere chord, int goal) {
    return new Reading(role, Optional.of(chord), OptionalInt.of(goal));
  }
}
