package holdfast.theory;

import java.util.Locale;

/** Chords that take the same scales: what the third, fifth, seventh and altered tensions say. */
public enum ChordFamily {
  MAJOR,
  MAJOR_SIXTH,
  MAJOR_SEVENTH,
  LYDIAN_MAJOR,
  AUGMENTED_MAJOR,
  AUGMENTED,
  MINOR,
  MINOR_SIXTH,
  MINOR_SEVENTH,
  MINOR_MAJOR,
  HALF_DIMINISHED,
  DIMINISHED,
  DIMINISHED_SEVENTH,
  DOMINANT,
  LYDIAN_DOMINANT,
  FLAT_NINTH_DOMINANT,
  FLAT_THIRTEENTH_DOMINANT,
  OCTATONIC_DOMINANT,
  AUGMENTED_DOMINANT,
  ALTERED_DOMINANT,
  SUSPENDED,
  SUSPENDED_SECOND,
  POWER;

  /** The family of a chord kind. */
  public static ChordFamily of(ChordKind kind) {
    if (kind.has(3, 0)) {
      return kind.has(7, -1) ? dominant(kind) : major(kind);
    }
    if (kind.has(3, -1)) {
      return minor(kind);
    }
    if (kind.has(4, 0)) {
      return SUSPENDED;
    }
    return kind.has(2, 0) ? SUSPENDED_SECOND : POWER;
  }

  /** Whether it is a dominant seventh, whatever its tensions. */
  public boolean isDominant() {
    return switch (this) {
      case DOMINANT,
          LYDIAN_DOMINANT,
          FLAT_NINTH_DOMINANT,
          FLAT_THIRTEENTH_DOMINANT,
          OCTATONIC_DOMINANT,
          AUGMENTED_DOMINANT,
          ALTERED_DOMINANT ->
          true;
      default -> false;
    };
  }

  /** The name in the table of chord scales: {@code minor-seventh}. */
  String text() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static ChordFamily named(String text) {
    return valueOf(text.toUpperCase(Locale.ROOT).replace('-', '_'));
  }

  private static ChordFamily major(ChordKind kind) {
    boolean lydian = kind.has(11, 1) || kind.has(5, -1);
    if (kind.has(7, 0)) {
      return kind.has(5, 1) ? AUGMENTED_MAJOR : lydian ? LYDIAN_MAJOR : MAJOR_SEVENTH;
    }
    if (kind.has(6, 0)) {
      return MAJOR_SIXTH;
    }
    return kind.has(5, 1) ? AUGMENTED : MAJOR;
  }

  private static ChordFamily minor(ChordKind kind) {
    boolean flatFifth = kind.has(5, -1) && !kind.has(5, 0);
    if (kind.has(7, -2)) {
      return DIMINISHED_SEVENTH;
    }
    if (kind.has(7, -1)) {
      return flatFifth ? HALF_DIMINISHED : MINOR_SEVENTH;
    }
    if (flatFifth) {
      return DIMINISHED;
    }
    if (kind.has(7, 0)) {
      return MINOR_MAJOR;
    }
    return kind.has(6, 0) ? MINOR_SIXTH : MINOR;
  }

  private static ChordFamily dominant(ChordKind kind) {
    boolean alteredNinth = kind.has(9, -1) || kind.has(9, 1);
    boolean naturalFifth = kind.has(5, 0) || !(kind.has(5, -1) || kind.has(5, 1));
    if (!naturalFifth && alteredNinth) {
      return ALTERED_DOMINANT;
    }
    if (kind.has(5, 1)) {
      return AUGMENTED_DOMINANT;
    }
    if (alteredNinth) {
      return kind.has(13, 0) || kind.has(11, 1) ? OCTATONIC_DOMINANT : FLAT_NINTH_DOMINANT;
    }
    if (kind.has(11, 1) || kind.has(5, -1)) {
      return LYDIAN_DOMINANT;
    }
    return kind.has(13, -1) ? FLAT_THIRTEENTH_DOMINANT : DOMINANT;
  }
}
