package holdfast.phrase;

import holdfast.melody.Note;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Where in the idea are we? Follows a phrase under way, note by note, against the idea's rhythm and
 * contour at its own speed, twice as slow and twice as fast, with notes left out and put in, and
 * against free play. From that it tells how likely the phrase is over: surely after the idea's last
 * note, hardly in its middle, even where the idea itself holds a rest.
 *
 * <p>Each way through the idea keeps its best path (Viterbi 1967); the chances below are chances of
 * single steps. They are ours, set on the tune half of the made takes.
 */
final class IdeaFollower {

  /** Longest idea that is followed; longer ones are not small ideas any more. */
  static final int MOST_NOTES = 64;

  /** The idea as it is, augmented, diminished; and how usual each is. */
  private static final double[] STRETCH = {1, 2, 0.5};

  private static final double[] STRETCH_CHANCE = {0.55, 0.05, 0.05};

  /** Before a note is heard: the phrase has nothing to do with the idea. */
  private static final double FREE_CHANCE = 0.35;

  private static final double LEFT_OUT = 0.03;
  private static final double PUT_IN = 0.04;

  /** Chance that the phrase ends: after the idea's last note, in its middle, in free play. */
  private static final double END_WHEN_COMPLETE = 0.9;

  private static final double END_WHEN_CUT_SHORT = 0.4;
  private static final double END_AS_FRAGMENT = .035;
  private static final double END_IN_FREE_PLAY = 0.08;

  /** The idea's last note is left early when it sounds for less than this part of its length. */
  private static final double CUT_SHORT = 0.55;

  /** Chance that the next phrase follows without a rest. */
  private static final double JOINED = .15;

  /** Rest between restatements: median and steepness of its log-logistic distribution. */
  private static final double REST_SECONDS = 1.1;

  private static final double REST_STEEPNESS = 2.5;

  /** Steepness of free IOIs about the usual one, and of the odds about the patience. */
  private static final double FREE_STEEPNESS = 4;

  /** A note is in time within so many times the spread of timing. */
  private static final double IN_TIME = 2;

  /** Notes that start closer together than this are one stroke, in seconds. */
  private static final double SHORTEST_IOI = 0.02;

  /** Weight of a step that goes the idea's way, and of one that does not, against free play. */
  private static final double SAME_DIRECTION = 1.5;

  private static final double OTHER_DIRECTION = 0.6;

  private final double[] onsets;
  private final double lengthBeats;
  private final int[] pitches;
  private final int notes;

  // One state for each stretch and place; the last element of each array is free play.
  private final int free;
  private double[] weight;
  private double[] anchor;
  private int[] lastPitch;
  private double[] nextWeight;
  private double[] nextAnchor;
  private int[] nextPitch;
  private double secondsPerBeat;

  /** Log of how much likelier the notes so far are than the same notes in free play. */
  private double logGain;

  /**
   * Follows this idea.
   *
   * @param idea in order of onset, 2 to {@value #MOST_NOTES} notes
   */
  IdeaFollower(List<Note> idea) {
    notes = idea.size();
    if (notes < 2 || notes > MOST_NOTES) {
      throw new IllegalArgumentException(
          "an idea to follow has 2 to " + MOST_NOTES + " notes, not " + notes);
    }
    onsets = idea.stream().mapToDouble(Note::onsetBeats).toArray();
    for (int i = 1; i < notes; i++) {
      if (onsets[i] < onsets[i - 1]) {
        throw new IllegalArgumentException("the notes of an idea must be in order of onset");
      }
    }
    pitches = idea.stream().mapToInt(Note::pitch).toArray();
    lengthBeats = idea.get(notes - 1).durationBeats();
    free = STRETCH.length * notes;
    weight = new double[free + 1];
    anchor = new double[free + 1];
    lastPitch = new int[free + 1];
    nextWeight = new double[free + 1];
    nextAnchor = new double[free + 1];
    nextPitch = new int[free + 1];
  }

  /** The first note of a phrase. */
  void begin(double onset, int pitch, double beatSeconds) {
    secondsPerBeat = beatSeconds;
    Arrays.fill(weight, 0);
    Arrays.fill(anchor, onset);
    Arrays.fill(lastPitch, pitch);
    for (int s = 0; s < STRETCH.length; s++) {
      weight[s * notes] = STRETCH_CHANCE[s] * (1 - LEFT_OUT);
      weight[s * notes + 1] = STRETCH_CHANCE[s] * LEFT_OUT;
    }
    weight[free] = FREE_CHANCE;
    logGain = 0;
  }

  /**
   * One more note of the same phrase.
   *
   * @param previous onset of the note before
   * @param usualIoi the IOI that is usual in this playing, in seconds
   */
  void next(double previous, double onset, int pitch, double usualIoi) {
    Arrays.fill(nextWeight, 0);
    double anywhere = anywhere(onset - previous, usualIoi);
    // Whoever plays on after the idea's last note is free again.
    double carriedOn = 0;
    double total = 0;
    for (int from = 0; from < free; from++) {
      if (weight[from] == 0) {
        continue;
      }
      int place = from % notes;
      double left = weight[from] * (1 - endChance(from, onset - previous));
      double waited = onset - anchor[from];
      if (place + 1 < notes) {
        step(from, 1, left * (1 - LEFT_OUT - PUT_IN), waited, onset, pitch);
        if (place + 2 < notes) {
          step(from, 2, left * LEFT_OUT, waited, onset, pitch);
        }
        double due = seconds(from, place + 1);
        keep(from, from, left * PUT_IN * (waited < due ? anywhere : 0), anchor[from]);
      } else {
        carriedOn += left * anywhere;
      }
    }
    carriedOn += weight[free] * (1 - END_IN_FREE_PLAY) * anywhere;
    nextWeight[free] = carriedOn;
    for (double w : nextWeight) {
      total += w;
    }
    if (total == 0) {
      // Unlike anything: free play, whatever it is.
      total = anywhere;
      nextWeight[free] = total;
    }
    logGain += Math.log(total / anywhere);
    for (int i = 0; i <= free; i++) {
      nextWeight[i] /= total;
    }
    swap();
  }

  private void step(int from, int by, double chance, double waited, double onset, int pitch) {
    int to = from + by;
    double due = seconds(from, to % notes);
    double likely = chance * Arrival.now(waited, due);
    int way = Integer.signum(pitches[to % notes] - pitches[from % notes]);
    boolean same = way == Integer.signum(pitch - lastPitch[from]);
    likely *= same ? SAME_DIRECTION : OTHER_DIRECTION;
    if (keep(from, to, likely, onset)) {
      nextPitch[to] = pitch;
    }
  }

  private boolean keep(int from, int to, double likely, double newAnchor) {
    if (likely <= nextWeight[to]) {
      return false;
    }
    nextWeight[to] = likely;
    nextAnchor[to] = newAnchor;
    nextPitch[to] = lastPitch[from];
    return true;
  }

  private void swap() {
    double[] w = weight;
    weight = nextWeight;
    nextWeight = w;
    double[] a = anchor;
    anchor = nextAnchor;
    nextAnchor = a;
    int[] p = lastPitch;
    lastPitch = nextPitch;
    nextPitch = p;
  }

  /** Seconds from the state's place in the idea to another place. */
  private double seconds(int state, int place) {
    return (onsets[place] - onsets[state % notes]) * STRETCH[state / notes] * secondsPerBeat;
  }

  private double endChance(int state, double sounded) {
    if (state % notes < notes - 1) {
      return END_AS_FRAGMENT;
    }
    double written = lengthBeats * STRETCH[state / notes] * secondsPerBeat;
    return sounded < CUT_SHORT * written ? END_WHEN_CUT_SHORT : END_WHEN_COMPLETE;
  }

  /**
   * Log of how much likelier the notes of this phrase are, with its end here, than the same notes
   * in free play.
   *
   * @param sounded how long the last note sounded, in seconds
   */
  double logGainIfOver(double sounded) {
    double ends = 0;
    for (int i = 0; i < free; i++) {
      ends += weight[i] * endChance(i, sounded);
    }
    return logGain + Math.log(ends / END_IN_FREE_PLAY + weight[free]);
  }

  /** The latest moment at which the idea's next note is still in time, if one is awaited. */
  OptionalDouble awaitedUntil() {
    int best = free;
    double awaiting = 0;
    double all = 0;
    for (int i = 0; i <= free; i++) {
      all += weight[i];
      if (i < free && i % notes < notes - 1) {
        awaiting += weight[i];
        best = best == free || weight[i] > weight[best] ? i : best;
      }
    }
    if (awaiting < 0.5 * all) {
      return OptionalDouble.empty();
    }
    double due = seconds(best, best % notes + 1);
    return OptionalDouble.of(anchor[best] + due + IN_TIME * Arrival.timing(due));
  }

  /**
   * How likely the phrase is over, 0 to 1, when it is silent still.
   *
   * @param now seconds of the take
   * @param rest seconds of silence up to now
   * @param sounded how long the last note sounded, in seconds
   * @param patience the rest that would end a phrase if no idea were known
   */
  double isOver(double now, double rest, double sounded, double patience) {
    double silent = Spread.logLogisticAbove(rest, REST_SECONDS, REST_STEEPNESS) * (1 - JOINED);
    double over = 0;
    double on = 0;
    for (int i = 0; i < free; i++) {
      if (weight[i] == 0) {
        continue;
      }
      double end = endChance(i, sounded);
      over += weight[i] * end * silent;
      int place = i % notes;
      double awaited =
          place + 1 < notes
              ? Arrival.later(now - anchor[i], seconds(i, place + 1))
              : Spread.logLogisticAbove(rest, patience / 2, FREE_STEEPNESS);
      on += weight[i] * (1 - end) * awaited;
    }
    double freeOver = weight[free] * END_IN_FREE_PLAY * silent;
    over += freeOver;
    on += freeOver / odds(rest, patience);
    return over / (over + on);
  }

  /**
   * How likely a note that starts now is the first of a new phrase, 0 to 1.
   *
   * @param previous onset of the note before
   * @param rest seconds of silence in front of it, 0 where there was none
   * @param sounded how long the note before sounded, in seconds
   * @param usualIoi the IOI that is usual in this playing, in seconds
   * @param patience the rest that would end a phrase if no idea were known
   */
  double startsAnew(
      double onset,
      double previous,
      double rest,
      double sounded,
      double usualIoi,
      double patience) {
    double rested = Spread.logLogistic(rest, REST_SECONDS, REST_STEEPNESS) * (1 - JOINED);
    double anywhere = anywhere(onset - previous, usualIoi);
    double anew = 0;
    double on = 0;
    for (int i = 0; i < free; i++) {
      if (weight[i] == 0) {
        continue;
      }
      double end = endChance(i, sounded);
      int place = i % notes;
      double waited = onset - anchor[i];
      if (place == notes - 1) {
        double length = lengthBeats * STRETCH[i / notes] * secondsPerBeat;
        anew += weight[i] * end * (rested + JOINED * followsOn(waited, length));
        on += weight[i] * (1 - end) * anywhere;
      } else {
        anew += weight[i] * end * rested;
        double due = Arrival.now(waited, seconds(i, place + 1)) * (1 - LEFT_OUT - PUT_IN);
        double inserted = waited < seconds(i, place + 1) ? PUT_IN * anywhere : 0;
        double skipping =
            place + 2 < notes ? LEFT_OUT * Arrival.now(waited, seconds(i, place + 2)) : 0;
        on += weight[i] * (1 - end) * (due + inserted + skipping);
      }
    }
    double freeAnew = weight[free] * END_IN_FREE_PLAY * rested;
    anew += freeAnew;
    on += freeAnew > 0 ? freeAnew / odds(rest, patience) : weight[free] * anywhere;
    return anew / (anew + on);
  }

  /** Density of free play's next onset. */
  private static double anywhere(double ioi, double usualIoi) {
    return Spread.logLogistic(Math.max(ioi, SHORTEST_IOI), usualIoi, FREE_STEEPNESS);
  }

  /** Density of a joined phrase's first onset, counted from the idea's last one. */
  private double followsOn(double waited, double length) {
    double bar = 4 * secondsPerBeat;
    double soonest = 0.85 * length;
    double latest = length + bar;
    double some = waited > soonest && waited < latest ? 1 / (latest - soonest) : 0;
    return 0.5 * Spread.normal(waited, length, Arrival.timing(length)) + 0.5 * some;
  }

  private static double odds(double rest, double patience) {
    return Math.pow(Math.max(rest, 1e-3) / patience, FREE_STEEPNESS);
  }
}
