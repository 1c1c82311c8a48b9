package holdfast.carry;

import holdfast.harmony.ChordHere;
import holdfast.harmony.ToneName;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.NoChord;
import holdfast.theory.NoteName;
import holdfast.theory.PitchClassSet;
import holdfast.theory.ToneClass;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a slot says of each pitch, worked out once for all frames. */
final class Tones {

  private static final int LETTERS_IN_AN_OCTAVE = 7;

  private final double[] against = new double[12];
  private final boolean[] rests = new boolean[12];
  private final boolean[] chordTone = new boolean[12];
  private final List<NoteName> names;
  private final PitchClassSet guideTones;

  private Tones(Slot slot, List<NoteName> names) {
    this.names = names;
    for (int pc = 0; pc < 12; pc++) {
      ToneClass toneClass = slot.toneClass(pc);
      rests[pc] = slot.isFree() || slot.rests(pc);
      chordTone[pc] = toneClass == ToneClass.CHORD_TONE;
      double cost = Costs.against(toneClass, slot.isDisputed(pc));
      against[pc] = slot.counts() ? cost + (rests[pc] ? 0 : Costs.CLASH) : Costs.LIGHT * cost;
      if (slot.last() && rests[pc] && !chordTone[pc]) {
        against[pc] += Costs.ENDS_ON_TENSION;
      }
    }
    guideTones = slot.guideTones();
  }

  static List<Tones> of(List<Slot> slots, Optional<Key> key) {
    // Most notes of an idea meet the same chord, and count or do not.
    Map<Slot, Tones> known = new HashMap<>();
    Map<Harmony, List<NoteName>> names = new HashMap<>();
    List<Tones> all = new ArrayList<>();
    for (Slot slot : slots) {
      Harmony harmony = slot.chord().map(ChordHere::harmony).orElse(NoChord.SILENT);
      List<NoteName> spelled = names.computeIfAbsent(harmony, h -> ToneName.names(h, key));
      all.add(known.computeIfAbsent(slot, s -> new Tones(s, spelled)));
    }
    return all;
  }

  /** What the pitch costs against the chords that it meets. */
  double against(int pitch) {
    return against[pitch % 12];
  }

  /** Whether the pitch can stay. */
  boolean rests(int pitch) {
    return rests[pitch % 12];
  }

  /** Whether the pitch is a chord tone of all that it meets. */
  boolean isChordTone(int pitch) {
    return chordTone[pitch % 12];
  }

  /** The guide tones of the chord. */
  PitchClassSet guideTones() {
    return guideTones;
  }

  /** How many letter steps above the C of octave 0 the pitch is written here. */
  int letters(int pitch) {
    return letters(pitch, names.get(pitch % 12));
  }

  /** How many letter steps above the C of octave 0 a pitch of this name is written. */
  static int letters(int pitch, NoteName name) {
    // The letter's own octave: B sharp below middle C sounds as C4 and is written in octave 3.
    int octave = Math.floorDiv(pitch - name.alter(), 12) - 1;
    return LETTERS_IN_AN_OCTAVE * octave + name.letter().step();
  }
}
