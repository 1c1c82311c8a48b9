package holdfast.theory;

import java.util.stream.IntStream;

/**
 * A set of pitch classes, octave and spelling left aside: the notes of a chord, a scale, a tension
 * list. Pitch classes run from 0 to 11 with C = 0, as MIDI note numbers do modulo 12.
 *
 * @param mask bit i is set when pitch class i belongs to the set
 */
public record PitchClassSet(int mask) {

  /** The set that holds nothing, as under a bar without a chord. */
  public static final PitchClassSet EMPTY = new PitchClassSet(0);

  private static final int ALL = 0xFFF;

  /** Checks that only the twelve lowest bits are used. */
  public PitchClassSet {
    if ((mask & ~ALL) != 0) {
      throw new IllegalArgumentException(
          "a pitch class set uses bits 0 to 11, not " + Integer.toBinaryString(mask));
    }
  }

  /** The set of the given pitches or pitch classes; any integer counts modulo 12. */
  public static PitchClassSet of(int... pitches) {
    int mask = 0;
    for (int pitch : pitches) {
      mask |= 1 << Math.floorMod(pitch, 12);
    }
    return new PitchClassSet(mask);
  }

  /** Whether the pitch (any octave) belongs to the set. */
  public boolean contains(int pitch) {
    return (mask >> Math.floorMod(pitch, 12) & 1) != 0;
  }

  /** Every member moved up by so many semitones (down when negative). */
  public PitchClassSet transpose(int semitones) {
    int n = Math.floorMod(semitones, 12);
    return new PitchClassSet((mask << n | mask >> (12 - n)) & ALL);
  }

  /** Members of either set. */
  public PitchClassSet union(PitchClassSet other) {
    return new PitchClassSet(mask | other.mask);
  }

  /** Members of both sets. */
  public PitchClassSet intersection(PitchClassSet other) {
    return new PitchClassSet(mask & other.mask);
  }

  /** Members of this set that the other lacks. */
  public PitchClassSet minus(PitchClassSet other) {
    return new PitchClassSet(mask & ~other.mask);
  }

  /** How many pitch classes belong to the set. */
  public int size() {
    return Integer.bitCount(mask);
  }

  /** Whether the set holds nothing. */
  public boolean isEmpty() {
    return mask == 0;
  }

  /** The members in increasing order. */
  public IntStream stream() {
    return IntStream.range(0, 12).filter(this::contains);
  }
}
