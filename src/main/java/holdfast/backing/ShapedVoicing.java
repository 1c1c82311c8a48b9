package holdfast.backing;

/**
 * A voicing and how well it lies by itself, whatever came before.
 *
 * @param voicing the notes
 * @param cost 0 for the ideal shape, in the same measure as semitones of movement
 */
record ShapedVoicing(Voicing voicing, double cost) {}
