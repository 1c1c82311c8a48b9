package holdfast.backing;

/**
 * A beat is being heard.
 *
 * @param beat which, from the first bar's first; below 0 in the count-in and the pick-up
 * @param place the bar; in the count-in the bar to come
 * @param beatOfBar which beat of that bar, from 1
 * @param nanoTime the moment at which it is heard
 */
public record BeatNotice(int beat, BarPlace place, int beatOfBar, long nanoTime) {}
