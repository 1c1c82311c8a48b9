package holdfast.bench.motif;

import holdfast.motif.Treatment;

/** What an idea is given to wear, and nothing else is done to it. */
enum Dress {
  /** Moved, by anything but octaves. */
  TRANSPOSED(Treatment.TRANSPOSED),
  /** Moved by an octave. */
  OCTAVE(Treatment.TRANSPOSED),
  /** Twice or half as fast, or half as fast again. */
  TEMPO(Treatment.AUGMENTED),
  /** One short note more. */
  ORNAMENT(Treatment.ORNAMENTED);

  private final Treatment made;

  Dress(Treatment made) {
    this.made = made;
  }

  /** The treatment whose rule makes it. */
  Treatment made() {
    return made;
  }
}
