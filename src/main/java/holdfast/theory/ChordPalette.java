package holdfast.theory;

import java.util.List;
import java.util.Optional;

/**
 * The notes that go with a chord where it stands in a tune: its own, those that colour it, those
 * that would rather move on. Advice and never an error: where the sources disagree, every reading
 * is allowed and {@link #disagreement} says so. The table is chord-scales.csv.
 *
 * <p>All sets hold sounding pitch classes. Make one for each place in a tune and keep it; asking it
 * is cheap.
 *
 * @param context what a musician calls the place: {@code ii-7}, {@code V7 to I}
 * @param root the pitch class of the root, 0 to 11; 0 without a chord
 * @param chordTones notes of the chord as it is played, the bass included. A written #11 and the
 *     pool of an altered chord are colours, not chord tones
 * @param tensions notes that colour the chord and can be held
 * @param scaleTones notes of a taught scale that are neither, and would rather move on
 * @param handled those scale tones (rarely an outside note) that all sources would not hold
 * @param disputed tensions that only some sources allow
 * @param guideTones third and seventh, or what stands for them
 * @param scales all scales that are taught for it and hold the chord, the first choice first
 * @param disagreement what the sources disagree about, in a sentence; empty when they agree
 */
public record ChordPalette(
    String context,
    int root,
    PitchClassSet chordTones,
    PitchClassSet tensions,
    PitchClassSet scaleTones,
    PitchClassSet handled,
    PitchClassSet disputed,
    PitchClassSet guideTones,
    List<Scale> scales,
    String disagreement) {

  private static final PitchClassSet ALL = PitchClassSet.of(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11);

  /** Copies the list of scales. */
  public ChordPalette {
    scales = List.copyOf(scales);
  }

  /**
   * The palette of a harmony.
   *
   * @param harmony what is played; without a chord every note is welcome
   * @param key the key of the tune, where it is known: it decides between the scales of a minor
   *     seventh and between the dominants
   * @param next what is played next, where it is known and different: it tells a dominant that
   *     resolves from one that does not
   */
  public static ChordPalette of(Harmony harmony, Optional<Key> key, Optional<Harmony> next) {
    return harmony
        .chord()
        .map(
            chord ->
                PaletteMixing.mix(
                    chord,
                    ScaleRow.of(
                        Place.of(
                            chord,
                            key,
                            next.flatMap(Harmony::chord).filter(other -> !other.equals(chord))))))
        .orElseGet(ChordPalette::free);
  }

  /** The palette of a harmony by itself. */
  public static ChordPalette of(Harmony harmony) {
    return of(harmony, Optional.empty(), Optional.empty());
  }

  private static ChordPalette free() {
    PitchClassSet none = PitchClassSet.EMPTY;
    return new ChordPalette("no chord", 0, none, ALL, none, none, none, none, List.of(), "");
  }

  /** What a pitch (any octave) is against the chord. */
  public ToneClass toneClass(int pitch) {
    if (chordTones.contains(pitch)) {
      return ToneClass.CHORD_TONE;
    }
    if (tensions.contains(pitch)) {
      return ToneClass.TENSION;
    }
    return scaleTones.contains(pitch) ? ToneClass.SCALE_TONE : ToneClass.OUTSIDE;
  }

  /**
   * What a pitch is when it is held or closes a phrase: as {@link #toneClass}, but a note that is
   * better not held counts as outside there.
   */
  public ToneClass toneClassWhenHeld(int pitch) {
    return betterNotHeld(pitch) ? ToneClass.OUTSIDE : toneClass(pitch);
  }

  /** Whether every source would rather move on from this pitch than hold it. */
  public boolean betterNotHeld(int pitch) {
    return handled.contains(pitch);
  }

  /** The first choice among the scales; empty without a chord. */
  public PitchClassSet scale() {
    return scales.isEmpty() ? PitchClassSet.EMPTY : scales.get(0).steps().transpose(root);
  }

  /**
   * The palette of a place where either of two chords may sound, as at a chord in parentheses: each
   * note counts as in the chord that it fits better.
   */
  public ChordPalette or(ChordPalette other) {
    PitchClassSet tones = chordTones.union(other.chordTones);
    PitchClassSet colours = tensions.union(other.tensions).minus(tones);
    PitchClassSet passing = scaleTones.union(other.scaleTones).minus(tones).minus(colours);
    return new ChordPalette(
        context + " or " + other.context,
        root,
        tones,
        colours,
        passing,
        handled.union(other.handled).minus(tones).minus(colours),
        disputed.union(other.disputed).intersection(colours),
        guideTones.union(other.guideTones),
        scales,
        disagreement.isEmpty() ? other.disagreement : disagreement);
  }
}
