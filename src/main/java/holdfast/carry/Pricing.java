package holdfast.carry;

import holdfast.harmony.ToneName;
import holdfast.theory.Harmony;
import holdfast.theory.NoChord;
import holdfast.theory.NoteName;
import holdfast.theory.PitchClassSet;
import java.util.List;

/**
 * What each pitch of each note costs within one frame; see {@link Costs} for the sizes. A clash on
 * a note that counts and a bent shape have a price only as a last resort; else there is no such
 * way.
 */
final class Pricing implements Lattice.Price {

  /** A step: a half or a whole one. */
  private static final int STEP = 2;

  private final Question question;
  private final List<Slot> slots;
  private final Frame frame;
  private final List<Tones> tones;
  private final List<Integer> ideaLetters;
  private final boolean lastResort;
  private final PitchClassSet oldGuideTones;

  Pricing(
      Question question,
      List<Slot> slots,
      List<Tones> tones,
      List<Integer> ideaLetters,
      Frame frame,
      boolean lastResort) {
    this.lastResort = lastResort;
    this.question = question;
    this.slots = slots;
    this.tones = tones;
    this.frame = frame;
    this.ideaLetters = ideaLetters;
    this.oldGuideTones =
        frame.source().harmony().map(Harmony::guideTones).orElse(PitchClassSet.EMPTY);
  }

  /** How many pitches a note may take in a frame: some semitones down, none, or as many up. */
  static int choices() {
    return 2 * Costs.furthestMove() + 1;
  }

  /** The pitch that a choice means. */
  int pitch(int place, int choice) {
    return frame.base().get(place) + choice - Costs.furthestMove();
  }

  @Override
  public double of(int place, int choice) {
    int pitch = pitch(place, choice);
    boolean clashes = slots.get(place).counts() && !tones.get(place).rests(pitch);
    if (!question.range().contains(pitch) || (clashes && !lastResort)) {
      return Double.POSITIVE_INFINITY;
    }
    return moving(place, pitch)
        + tones.get(place).against(pitch)
        + (isStaying() ? guided(place, pitch) : 0)
        + (frame.kind() == Frame.Kind.SCALE_STEP && couldHaveStayed(place)
            ? Costs.COMMON_TONE_LEFT
            : 0);
  }

  /** What it costs to move a note by itself. */
  private double moving(int place, int pitch) {
    int moved = pitch - frame.base().get(place);
    if (moved == 0) {
      return 0;
    }
    double cost = weighed(place, moved);
    Tones here = tones.get(place);
    if (isStaying()) {
      boolean forNothing = couldHaveStayed(place) && guided(place, pitch) >= 0;
      boolean couldFall = here.isChordTone(frame.source().pitch(place) + 11);
      cost += forNothing ? Costs.FITTING_NOTE_MOVES : 0;
      cost += here.isChordTone(pitch) ? 0 : Costs.MOVES_TO_TENSION;
      cost += moved > 0 && couldFall ? Costs.RISES : 0;
    }
    return cost;
  }

  private double weighed(int place, int moved) {
    return Costs.move(moved) * (2 * place < slots.size() ? Costs.EARLY_MOVE : 1);
  }

  private boolean isStaying() {
    return frame.kind() == Frame.Kind.STAYS;
  }

  private boolean couldHaveStayed(int place) {
    return tones.get(place).rests(frame.source().pitch(place));
  }

  /** Guide tone to guide tone, for a note that was one. */
  private double guided(int place, int pitch) {
    Tones here = tones.get(place);
    int source = frame.source().pitch(place);
    if (!oldGuideTones.contains(source)) {
      return 0;
    }
    if (here.guideTones().contains(pitch) && Math.abs(pitch - source) <= STEP) {
      return Costs.GUIDE_TO_GUIDE;
    }
    boolean oneWasNear = false;
    for (int step = -STEP; step <= STEP; step++) {
      oneWasNear |= here.guideTones().contains(source + step);
    }
    return oneWasNear && !here.isChordTone(pitch) ? Costs.GUIDE_TONE_STRANDED : 0;
  }

  @Override
  public double step(int place, int before, int choice) {
    int from = pitch(place - 1, before);
    int to = pitch(place, choice);
    int meant = question.idea().pitch(place) - question.idea().pitch(place - 1);
    boolean bends = Integer.signum(to - from) != Integer.signum(meant);
    if (bends && !lastResort) {
      return Double.POSITIVE_INFINITY;
    }
    double cost = bending(place, from, to, meant) - together(place, from, to);
    return cost
        + (bends ? Costs.SHAPE : 0)
        + (isStranded(place - 1, from, to) ? Costs.LIGHT_NOTE_STRANDED : 0);
  }

  /** Whether a light note neither rests nor leads by step to one that does. */
  private boolean isStranded(int place, int pitch, int next) {
    boolean leads =
        next != pitch && Math.abs(next - pitch) <= STEP && tones.get(place + 1).rests(next);
    return !slots.get(place).counts() && !tones.get(place).rests(pitch) && !leads;
  }

  /** Whether everything that counts rests and every light note rests or leads on. */
  boolean fits(List<Integer> pitches) {
    for (int i = 0; i < pitches.size(); i++) {
      boolean rests = tones.get(i).rests(pitches.get(i));
      boolean light = !slots.get(i).counts();
      if (!rests && (!light || isStranded(i, pitches.get(i), pitches.get(i + 1)))) {
        return false;
      }
    }
    return true;
  }

  /** How far an interval of the idea is changed, in letters and in semitones. */
  private double bending(int place, int from, int to, int meant) {
    int letters = letter(place, to) - letter(place - 1, from);
    int meantLetters = ideaLetters.get(place) - ideaLetters.get(place - 1);
    return Costs.INTERVAL_STEP * Math.abs(letters - meantLetters)
        + Costs.INTERVAL_SEMITONE * Math.abs(to - from - meant);
  }

  /** A note that does not move keeps its letter, whatever the new chord calls it. */
  private int letter(int place, int pitch) {
    return pitch == question.idea().pitch(place)
        ? ideaLetters.get(place)
        : tones.get(place).letters(pitch);
  }

  /** What is saved where a note moves just as the one before it. */
  private double together(int place, int from, int to) {
    int moved = to - frame.base().get(place);
    boolean asBefore = moved != 0 && from - frame.base().get(place - 1) == moved;
    return asBefore ? (1 - Costs.TOGETHER) * weighed(place, moved) : 0;
  }

  /** How the idea is written over its own chord, in letter steps above the C of octave 0. */
  static List<Integer> ideaLetters(Question question) {
    Harmony harmony = question.idea().harmony().orElse(NoChord.SILENT);
    List<NoteName> names = ToneName.names(harmony, question.changes().key());
    return question.idea().notes().stream()
        .map(note -> Tones.letters(note.pitch(), names.get(note.pitch() % 12)))
        .toList();
  }
}
