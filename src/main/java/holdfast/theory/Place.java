package holdfast.theory;

import java.util.Optional;

/**
 * Where a chord stands in a tune, as far as the table of chord scales asks.
 *
 * @param family what kind of chord it is
 * @param key the key of the tune, where it is known
 * @param step semitones of the root above the tonic, 0 to 11; 0 without a key
 * @param next how it goes on, where that is known
 */
record Place(ChordFamily family, Optional<Key> key, int step, Optional<Next> next) {

  private static final int FOURTH = 5;
  private static final int SEMITONE_DOWN = 11;

  /**
   * The chord after it.
   *
   * @param way semitones from root to root upwards, 0 to 11
   * @param minor whether its third is minor
   * @param dominant whether it is a dominant seventh
   * @param onTonic whether its root is the key's tonic
   */
  record Next(int way, boolean minor, boolean dominant, boolean onTonic) {}

  static Place of(ChordSymbol chord, Optional<Key> key, Optional<ChordSymbol> following) {
    int root = chord.root().pitchClass();
    return new Place(
        ChordFamily.of(chord.kind()),
        key,
        key.map(k -> up(k.tonic().pitchClass(), root)).orElse(0),
        following.map(next -> next(root, key, next)));
  }

  private static Next next(int root, Optional<Key> key, ChordSymbol next) {
    int nextRoot = next.root().pitchClass();
    return new Next(
        up(root, nextRoot),
        next.kind().has(3, -1),
        ChordFamily.of(next.kind()).isDominant(),
        key.filter(k -> k.tonic().pitchClass() == nextRoot).isPresent());
  }

  private static int up(int from, int to) {
    return Math.floorMod(to - from, 12);
  }

  /** Whether the key is {@code major}, {@code minor}, {@code modal} or {@code any}. */
  boolean isIn(String kindOfKey) {
    return switch (kindOfKey) {
      case "any" -> true;
      case "modal" -> key.filter(k -> k.mode() != Mode.MAJOR && k.mode() != Mode.MINOR).isPresent();
      case "minor" -> key.filter(k -> k.mode().hasMinorThird()).isPresent();
      case "major" -> key.filter(k -> !k.mode().hasMinorThird()).isPresent();
      default -> throw new IllegalStateException("chord-scales.csv: no key is " + kindOfKey);
    };
  }

  /** Whether the chord goes on as the table's word says. */
  boolean goesOn(String word) {
    return switch (word) {
      case "any" -> true;
      case "up4?" -> next.isEmpty() || upAFourth();
      case "up4-major" -> next.filter(n -> !n.minor() && !n.dominant()).isPresent() && upAFourth();
      case "up4-minor" -> next.filter(Next::minor).isPresent() && upAFourth();
      case "down1" -> next.filter(n -> n.way() == SEMITONE_DOWN).isPresent();
      case "tonic-dominant" -> next.filter(n -> n.dominant() && n.onTonic()).isPresent();
      case "still" -> !upAFourth() && !goesOn("down1");
      default -> throw new IllegalStateException("chord-scales.csv: no next is " + word);
    };
  }

  private boolean upAFourth() {
    return next.filter(n -> n.way() == FOURTH).isPresent();
  }
}
