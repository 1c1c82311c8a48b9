package holdfast.session;

import java.util.Optional;

/**
 * Where a running take is: what a player glances at.
 *
 * @param chorus counted from 1; 0 during the count-in
 * @param bar the bar of the form, from 1
 * @param barsInForm how many bars the form has
 * @param beat the beat of the bar, from 1
 * @param beatsInBar how many beats a bar has
 * @param chord the chord that sounds, as a musician reads it
 * @param nextChord the chord after it
 * @param hearing whether a note of the player's sounds at this moment
 * @param listening whether the input is there
 * @param warning what to look out for in the next bar
 */
public record Moment(
    int chorus,
    int bar,
    int barsInForm,
    int beat,
    int beatsInBar,
    String chord,
    String nextChord,
    boolean hearing,
    boolean listening,
    Optional<String> warning) {}
