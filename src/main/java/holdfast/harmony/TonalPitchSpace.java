package holdfast.harmony;

import holdfast.theory.PitchClassSet;

/**
 * How far is one chord from another, each heard in its region? Fred Lerdahl's Tonal Pitch Space
 * (Oxford University Press 2001, ch. 2): distance = i + j + k, where i counts steps between the
 * regions' scales on the circle of fifths, j steps between the roots on the circle of fifths within
 * the scale, and k the pitch classes that are new at the levels of root, fifth, triad and scale.
 */
public final class TonalPitchSpace {

  private static final int FIFTH = 7;

  /** Letters of the natural scale in fifths from F: two roots are so many fifths apart. */
  private static final int[] FIFTHS_BY_SEMITONES = {0, 2, 2, 3, 3, 1, 3, 1, 3, 3, 2, 2};

  private TonalPitchSpace() {}

  /**
   * A region: a major or a minor key; a minor one has the natural scale.
   *
   * @param tonic pitch class of the tonic, 0 to 11
   * @param minor whether it is minor
   */
  public record Region(int tonic, boolean minor) {

    /** Checks the tonic. */
    public Region {
      if (tonic < 0 || tonic > 11) {
        throw new IllegalArgumentException("a tonic is a pitch class 0 to 11, not " + tonic);
      }
    }

    /** The pitch classes of the region's scale. */
    public PitchClassSet scale() {
      return (minor
              ? PitchClassSet.of(0, 2, 3, 5, 7, 8, 10)
              : PitchClassSet.of(0, 2, 4, 5, 7, 9, 11))
          .transpose(tonic);
    }

    /** The tonic of the major key with the same scale. */
    private int majorTonic() {
      return Math.floorMod(tonic + (minor ? 3 : 0), 12);
    }
  }

  /**
   * A triad heard in a region.
   *
   * @param root pitch class of the root
   * @param triad its pitch classes, root and fifth among them
   * @param fifth pitch class of the fifth, perfect or not
   * @param region the region
   */
  public record Heard(int root, PitchClassSet triad, int fifth, Region region) {

    /** The tonic triad of a region. */
    public static Heard tonicOf(Region region) {
      return onDegree(region, 0);
    }

    /** The triad of thirds on a degree of a region's scale, 0 for the tonic to 6. */
    public static Heard onDegree(Region region, int degree) {
      int[] scale =
          java.util.stream.IntStream.range(0, 12)
              .map(step -> (region.tonic() + step) % 12)
              .filter(pc -> region.scale().contains(pc))
              .toArray();
      int third = scale[(degree + 2) % 7];
      int fifth = scale[(degree + 4) % 7];
      return new Heard(scale[degree], PitchClassSet.of(scale[degree], third, fifth), fifth, region);
    }
  }

  /** The distance from one chord to another: 0 for the same, 5 from I to V, 30 at most or so. */
  public static int distance(Heard from, Heard to) {
    return regionSteps(from.region(), to.region())
        + rootSteps(from, to)
        + newPitchClasses(from, to);
  }

  /** Steps between two regions' scales on the circle of fifths, 0 to 6. */
  public static int regionSteps(Region from, Region to) {
    int fifths = Math.floorMod((to.majorTonic() - from.majorTonic()) * FIFTH, 12);
    return Math.min(fifths, 12 - fifths);
  }

  private static int rootSteps(Heard from, Heard to) {
    int semitones = Math.floorMod(to.root() - from.root(), 12);
    // Within one scale the tritone (F to B) is a single, diminished, fifth.
    boolean oneScale = from.region().scale().equals(to.region().scale());
    return semitones == 6 && oneScale ? 1 : FIFTHS_BY_SEMITONES[semitones];
  }

  private static int newPitchClasses(Heard from, Heard to) {
    PitchClassSet root = PitchClassSet.of(to.root());
    PitchClassSet fifth = PitchClassSet.of(to.root(), to.fifth());
    return root.minus(PitchClassSet.of(from.root())).size()
        + fifth.minus(PitchClassSet.of(from.root(), from.fifth())).size()
        + to.triad().minus(from.triad()).size()
        + to.region().scale().minus(from.region().scale()).size();
  }
}
