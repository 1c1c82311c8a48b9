package holdfast.carry;

import holdfast.chart.ChordSpan;
import holdfast.harmony.Beats;
import holdfast.harmony.ChordHere;
import holdfast.melody.Note;
import holdfast.theory.PitchClassSet;
import holdfast.theory.ToneClass;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The place of one note of the idea in the tune: how much it counts, and which chords it meets.
 *
 * @param counts whether it is strong, long or last, so that it has to rest
 * @param last whether the idea ends on it
 * @param chords the chords that sound under it for some time, in order; none where none sounds
 * @param comingChord for a pick-up the chord that the idea goes to, which it may already announce
 */
record Slot(boolean counts, boolean last, List<ChordHere> chords, Optional<ChordHere> comingChord) {

  /** A note of this many quarters or more is long. */
  private static final double LONG_QUARTERS = 0.85;

  /** A note of the next chord's first moment: less than this, in quarters, is not met. */
  private static final double MEETS_QUARTERS = 0.3;

  private static final double ROUNDING_BEATS = 1e-6;

  Slot {
    chords = List.copyOf(chords);
  }

  static List<Slot> of(Question question) {
    List<Note> notes = question.idea().notes();
    List<Slot> slots = new ArrayList<>();
    for (int i = 0; i < notes.size(); i++) {
      slots.add(of(question, notes.get(i), i == notes.size() - 1));
    }
    return slots;
  }

  private static Slot of(Question question, Note note, boolean last) {
    Beats beats = new Beats(question.metre());
    boolean pickUp = note.onsetBeats() < -ROUNDING_BEATS;
    boolean isLong = beats.quarters(note.durationBeats()) >= LONG_QUARTERS;
    boolean isStrong =
        switch (beats.place(note.onsetBeats())) {
          case DOWNBEAT, MID_BAR -> true;
          case OTHER_BEAT, OFF_BEAT -> false;
        };
    boolean counts = last || isLong || (isStrong && !pickUp);
    double start = question.startBeat() + note.onsetBeats();
    double end = start + note.durationBeats();
    List<ChordHere> chords = new ArrayList<>();
    for (ChordSpan span : question.changes().between(start, end)) {
      double from = Math.max(start, span.startBeat());
      double met = beats.quarters(Math.min(end, span.endBeat()) - from);
      if (from == start || met >= MEETS_QUARTERS) {
        ChordHere.at(question.changes(), from)
            .filter(chord -> !chords.contains(chord))
            .ifPresent(chords::add);
      }
    }
    Optional<ChordHere> coming =
        pickUp ? ChordHere.at(question.changes(), question.startBeat()) : Optional.empty();
    return new Slot(counts, last, chords, coming);
  }

  /** Whether no chord says anything about the note. */
  boolean isFree() {
    return chords.isEmpty() && comingChord.isEmpty();
  }

  /** The chord that explains the note: the one it announces, or the last that it meets. */
  Optional<ChordHere> chord() {
    return comingChord.or(
        () -> chords.isEmpty() ? Optional.empty() : Optional.of(chords.get(chords.size() - 1)));
  }

  /** Whether the note can stay on this pitch, by every reading, over all that it meets. */
  boolean rests(int pitch) {
    if (comingChord.isPresent() && rests(comingChord.get(), pitch)) {
      return true;
    }
    return chords.stream().allMatch(chord -> rests(chord, pitch))
        && (comingChord.isEmpty() || !chords.isEmpty());
  }

  private boolean rests(ChordHere chord, int pitch) {
    return chord.rests(pitch) && chord.toneClassWhenHeld(pitch) != ToneClass.OUTSIDE;
  }

  /** What the pitch is against what it meets: the hardest chord, but for a pick-up the kindest. */
  ToneClass toneClass(int pitch) {
    if (isFree()) {
      return ToneClass.CHORD_TONE;
    }
    ToneClass hardest = ToneClass.CHORD_TONE;
    for (ChordHere chord : chords) {
      ToneClass here = counts ? chord.toneClassWhenHeld(pitch) : chord.toneClass(pitch);
      hardest = here.compareTo(hardest) > 0 ? here : hardest;
    }
    if (comingChord.isEmpty()) {
      return hardest;
    }
    ToneClass coming = comingChord.get().toneClass(pitch);
    return chords.isEmpty() || coming.compareTo(hardest) < 0 ? coming : hardest;
  }

  /** Whether the pitch is a tension by one reading of several. */
  boolean isDisputed(int pitch) {
    return chord().map(chord -> chord.isDisputed(pitch)).orElse(false);
  }

  /** The guide tones of the chord that explains the note. */
  PitchClassSet guideTones() {
    return chord().map(chord -> chord.palette().guideTones()).orElse(PitchClassSet.EMPTY);
  }

  /** The first choice among the scales of that chord; empty without one. */
  PitchClassSet scale() {
    return chord().map(chord -> chord.palette().scale()).orElse(PitchClassSet.EMPTY);
  }
}
