package holdfast.harmony;

import holdfast.theory.Harmony;

/**
 * One chord of a form, with how much it takes the ear by surprise.
 *
 * @param bar the bar of the form that it starts in, counted from 1
 * @param startBeat where it starts, in beats
 * @param harmony the chord
 * @param surprisalBits how rare the change to it is in jazz, in bits
 * @param outside how many of its notes lie outside both the key of the tune and that of the moment
 * @param distance how far it lies from home in Tonal Pitch Space, in its nearest reading
 * @param unexpected whether a listener would not predict it
 * @param reason why, in a phrase; empty where it is no surprise
 */
public record Turn(
    int bar,
    double startBeat,
    Harmony harmony,
    double surprisalBits,
    int outside,
    int distance,
    boolean unexpected,
    String reason) {}
