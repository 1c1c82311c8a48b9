package holdfast.carry;

import holdfast.theory.ToneClass;

/**
 * What each departure costs. One unit is about the trouble of moving one note by a half step and
 * changing two intervals by it. The order follows teachers' rules (common practice, no source); the
 * sizes were set on the twelve worked examples by hand.
 */
final class Costs {

  /** A note moves by so many semitones: a step at most, unless nothing else fits. */
  private static final double[] MOVE = {0, 0.6, 0.9, 2.4, 3.2};

  /** A note in the first half of the idea: by its beginning it is known. */
  static final double EARLY_MOVE = 1.15;

  /** A note that would have fitted moves all the same: common tones stay. */
  static final double FITTING_NOTE_MOVES = 0.5;

  /** A note that moves just as the one before it did is heard as part of one move. */
  static final double TOGETHER = 0.35;

  /** Each letter step by which an interval of the idea is changed: a third becomes a fourth. */
  static final double INTERVAL_STEP = 0.4;

  /** Each semitone by which an interval is changed: a major third becomes a minor one. */
  static final double INTERVAL_SEMITONE = 0.15;

  /** A note that comes again in the idea comes again differently. */
  static final double RETURNS_DIFFERENTLY = 1.0;

  /** A note moves to a tension, and not to a chord tone. */
  static final double MOVES_TO_TENSION = 0.4;

  /** A note rises, though a half step below it lies a chord tone: tension likes to fall. */
  static final double RISES = 0.15;

  /** A guide tone of the old chord goes to a guide tone of the new one. */
  static final double GUIDE_TO_GUIDE = -0.4;

  /** A guide tone of the old chord goes to no chord tone, though a guide tone is a step away. */
  static final double GUIDE_TONE_STRANDED = 0.3;

  /** The idea ends on a tension. */
  static final double ENDS_ON_TENSION = 1.2;

  /** A light note that does not rest leads nowhere by step. */
  static final double LIGHT_NOTE_STRANDED = 1.2;

  /** Light notes matter less in what they are against the chord. */
  static final double LIGHT = 0.6;

  /** Everything that counts fits as it is, and every light note rests or leads on: it is kept. */
  static final double LITERAL_FITS = -0.8;

  /** The whole idea moves by a scale step, */
  static final double SCALE_STEP = 2.3;

  /** and each note that could have stayed. */
  static final double COMMON_TONE_LEFT = 0.2;

  /** The whole idea moves by one interval, though neither scale, chord nor range asks for it. */
  static final double MOVES_FOR_NOTHING = 1.5;

  /** The whole idea moves with a chord that moves in parallel, */
  static final double PARALLEL = 1.0;

  /** and each semitone of that way, since far is hard to hear and to sing. */
  static final double PARALLEL_SEMITONE = 0.45;

  /** The whole idea moves by an octave, where the range asks for it. */
  static final double OCTAVE = 2.0;

  /** The idea goes back to its first statement rather than on from the last one. */
  static final double BACK_TO_FIRST = 0.3;

  /** A player's habit, for each natural logarithm of likelihood. */
  static final double HABIT = 1.0;

  /** A note that counts clashes: only where nothing else is left. */
  static final double CLASH = 50;

  /** The shape bends: only where nothing else is left. */
  static final double SHAPE = 200;

  /** From here on an answer holds a clash or a bend. */
  static final double LAST_RESORT = 40;

  /** A second answer that costs so much more than the first is no help. */
  static final double WORTH_SAYING = 4.5;

  private Costs() {}

  /** The furthest that a single note may move, in semitones. */
  static int furthestMove() {
    return MOVE.length - 1;
  }

  static double move(int semitones) {
    return MOVE[Math.abs(semitones)];
  }

  /** What a note is against the chord: chord tones first, then tensions. */
  static double against(ToneClass toneClass, boolean disputed) {
    return switch (toneClass) {
      case CHORD_TONE -> 0;
      case TENSION -> disputed ? 0.8 : 0.35;
      case SCALE_TONE -> 0.7;
      case OUTSIDE -> 1.4;
    };
  }
}
