package holdfast.chart;

import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * How a stretch of time in a bar is written in note values, so that the beats can be seen: what
 * starts off the beat is tied over to the next one, what crosses the middle of a bar is tied there,
 * and a beat that is not cut in halves is a tuplet. Common practice of engravers, no source.
 *
 * <p>All times are in {@link NoteValue#TICKS}, from where the bar's first beat is or would be.
 */
final class BarRhythm {

  /** The smallest part of a quarter note that is written plainly: a 64th note. */
  private static final long FINEST = NoteValue.TICKS / 16;

  private static final int[] TUPLETS = {3, 5, 7, 9};

  /** The shortest note that a tuplet is written with: a 128th. */
  private static final long FINEST_OF_A_TUPLET = NoteValue.TICKS / 32;

  /** A tuplet's plain time is cut into so many parts at most. */
  private static final long MOST_PARTS = 16;

  private final long beat;
  private final long group;
  private final long middle;
  private final int[] tuplets;

  /**
   * The rhythm of one bar.
   *
   * @param cuts where notes start or end in it
   */
  BarRhythm(Metre metre, Collection<Long> cuts) {
    this.beat = Math.round(NoteValue.TICKS * metre.quartersPerBeat());
    boolean isCompound = metre.unit() >= 8 && metre.beats() > 3 && metre.beats() % 3 == 0;
    this.group = isCompound ? 3 * beat : beat;
    boolean hasMiddle = !isCompound && metre.beats() >= 4 && metre.beats() % 2 == 0;
    this.middle = hasMiddle ? metre.beats() / 2 * beat : 0;
    this.tuplets = new int[metre.beats()];
    for (int i = 0; i < tuplets.length; i++) {
      tuplets[i] = tuplet(i * beat, cuts);
    }
  }

  private int tuplet(long start, Collection<Long> cuts) {
    List<Long> inside =
        cuts.stream().map(cut -> cut - start).filter(cut -> cut > 0 && cut < beat).toList();
    long finest = Math.min(FINEST, beat / 4);
    if (inside.stream().allMatch(cut -> cut % finest == 0)) {
      return 1;
    }
    for (int tuplet : TUPLETS) {
      long parts = parts(tuplet);
      if (parts > 0 && inside.stream().allMatch(cut -> cut * parts % beat == 0)) {
        return tuplet;
      }
    }
    return TUPLETS[0];
  }

  /** How many parts a beat has in which a tuplet can be written; 0 where it has none. */
  private long parts(int tuplet) {
    long plain = Math.min(MOST_PARTS, beat / FINEST_OF_A_TUPLET);
    return plain / Integer.highestOneBit(tuplet) * tuplet;
  }

  /** The group of beats, counted from 0, whose notes are beamed together. */
  long groupAt(long tick) {
    return tick / group;
  }

  /** The beat that a tick falls in, counted from 0. */
  int beatAt(long tick) {
    return (int) Math.min(tuplets.length - 1, tick / beat);
  }

  /** The place on paper that is nearest: none but in a beat that no one tuplet can hold. */
  long placed(long tick) {
    int at = beatAt(tick);
    long within = tick - at * beat;
    long parts = tuplets[at] == 1 ? beat / Math.min(FINEST, beat / 4) : parts(tuplets[at]);
    return at * beat + Math.round((double) within * parts / beat) * beat / parts;
  }

  /** The pieces that fill the time from one tick to another. */
  List<RhythmPiece> pieces(long from, long to) {
    List<RhythmPiece> pieces = new ArrayList<>();
    long at = from;
    while (at < to) {
      int tuplet = tuplets[beatAt(at)];
      long until = tuplet > 1 ? Math.min(to, nextBeat(at)) : plainUntil(at, to);
      long before = at;
      at = fill(pieces, at, until, tuplet);
      if (at == before) {
        // Less than the shortest note: nobody can write it, and nobody hears it.
        break;
      }
    }
    return pieces;
  }

  private static long fill(List<RhythmPiece> pieces, long from, long until, int tuplet) {
    long at = from;
    int normal = Integer.highestOneBit(tuplet);
    for (NoteValue value : NoteValue.filling((until - from) * tuplet / normal)) {
      long ticks = value.ticks() * normal / tuplet;
      pieces.add(new RhythmPiece(at, ticks, value, tuplet));
      at += ticks;
    }
    return at;
  }

  private long plainUntil(long at, long to) {
    if (at % beat != 0) {
      return Math.min(to, nextBeat(at));
    }
    long until = to;
    for (long next = nextBeat(at); next < until; next += beat) {
      if (tuplets[beatAt(next)] > 1) {
        until = next;
      }
    }
    if (group > beat) {
      return compoundUntil(at, until);
    }
    // A half note on the second beat of four is read at sight all the same.
    boolean crosses =
        middle > 0 && at > 0 && at < middle && until > middle && until - at != 2 * beat;
    return crosses ? middle : until;
  }

  /** Dotted values that hold whole groups of three beats, or what is left of the group. */
  private long compoundUntil(long at, long until) {
    long groups = (until - at) / group;
    if (at % group != 0 || groups == 0) {
      return Math.min(until, (at / group + 1) * group);
    }
    return at + Long.highestOneBit(groups) * group;
  }

  private long nextBeat(long at) {
    return (at / beat + 1) * beat;
  }
}
