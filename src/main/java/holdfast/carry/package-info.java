/**
 * Where could the idea go over the next chord?
 *
 * <p>Never a lick: the player's own idea, skewed just enough that it fits. Rhythm is kept exactly
 * and so is the shape; what already fits stays, what clashes moves to the nearest note that rests,
 * guide tone to guide tone; or the whole idea moves a scale step, or with a chord that moves in
 * parallel. The answers are the cheapest ways under costs that stand in {@link
 * holdfast.carry.Costs} with their reasons, found exactly, and at most two that truly differ.
 *
 * <p>Conventions: an idea's notes are in beats from the start of its own bar, a pick-up before 0;
 * it is placed at a beat of the tune. Pitches are sounding MIDI note numbers. The costs follow
 * common practice of teachers of improvisation (no published source) and are held against twelve
 * worked examples.
 */
package holdfast.carry;
