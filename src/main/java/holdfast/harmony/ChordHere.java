package holdfast.harmony;

import holdfast.chart.Changes;
import holdfast.chart.ChordSpan;
import holdfast.theory.ChordPalette;
import holdfast.theory.Harmony;
import holdfast.theory.OptionalChord;
import holdfast.theory.ToneClass;
import java.util.Optional;

/**
 * The chord that a note meets. Where the chart writes an optional chord, the one before may still
 * sound, and a note may fit either.
 *
 * @param harmony what the chart asks for
 * @param palette its notes
 * @param without what sounds when an optional chord is left out
 */
public record ChordHere(Harmony harmony, ChordPalette palette, Optional<ChordHere> without) {

  /** Far enough in front of a chord's start to be in the one before: less than any played note. */
  private static final double JUST_BEFORE_BEATS = 1e-6;

  /** The chord at a beat; empty where none sounds. */
  public static Optional<ChordHere> at(Changes changes, double beat) {
    ChordSpan span = changes.at(beat);
    if (!span.harmony().hasChord()) {
      return Optional.empty();
    }
    Optional<ChordHere> without =
        span.harmony() instanceof OptionalChord
            ? plainChordBefore(changes, span)
            : Optional.empty();
    return Optional.of(new ChordHere(span.harmony(), changes.paletteAt(beat), without));
  }

  private static Optional<ChordHere> plainChordBefore(Changes changes, ChordSpan span) {
    double beat = span.startBeat() - JUST_BEFORE_BEATS;
    Harmony before = changes.at(beat).harmony();
    return before.hasChord() && !(before instanceof OptionalChord)
        ? Optional.of(new ChordHere(before, changes.paletteAt(beat), Optional.empty()))
        : Optional.empty();
  }

  /** What the pitch is against this chord, by the kinder reading where there are two. */
  public ToneClass toneClass(int pitch) {
    return kinder(palette.toneClass(pitch), without.map(other -> other.toneClass(pitch)));
  }

  /** As {@link #toneClass}, where the note is held: what is better not held is outside there. */
  public ToneClass toneClassWhenHeld(int pitch) {
    return kinder(
        palette.toneClassWhenHeld(pitch), without.map(other -> other.toneClassWhenHeld(pitch)));
  }

  private static ToneClass kinder(ToneClass here, Optional<ToneClass> other) {
    return other.filter(o -> o.compareTo(here) < 0).orElse(here);
  }

  /** Whether the pitch can stay: a chord tone, or a tension, be it by one reading of several. */
  public boolean belongs(int pitch) {
    return toneClass(pitch).compareTo(ToneClass.TENSION) <= 0;
  }

  /** Whether the pitch is a tension by one reading of several, and by no better one. */
  public boolean isDisputed(int pitch) {
    return toneClass(pitch) == ToneClass.TENSION
        && palette.disputed().contains(pitch)
        && !without.map(other -> other.belongs(pitch)).orElse(false);
  }

  /** Whether a line comes to rest on the pitch, by every reading. */
  public boolean rests(int pitch) {
    return belongs(pitch) && !isDisputed(pitch);
  }

  /** Whether the chord has a major third and a minor seventh, as dominants and blues chords do. */
  public boolean isDominant() {
    int root = root();
    return harmony.standardPitchClasses().contains(root + 4)
        && harmony.standardPitchClasses().contains(root + 10);
  }

  /** Whether the chord has a minor third and no major one. */
  public boolean isMinor() {
    int root = root();
    return harmony.standardPitchClasses().contains(root + 3)
        && !harmony.standardPitchClasses().contains(root + 4);
  }

  /** The root's pitch class. */
  public int root() {
    return harmony.chord().orElseThrow().root().pitchClass();
  }
}
