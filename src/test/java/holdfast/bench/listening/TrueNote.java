package holdfast.bench.listening;

/**
 * One note of a clip, as made or as heard.
 *
 * @param onsetSeconds start, in seconds from the start of the clip
 * @param offsetSeconds end, in the same seconds
 * @param hz pitch in hertz
 */
public record TrueNote(double onsetSeconds, double offsetSeconds, double hz) {}
