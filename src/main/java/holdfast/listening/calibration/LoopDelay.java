package holdfast.listening.calibration;

/**
 * How long sound takes through loudspeaker, air and microphone.
 *
 * @param seconds from a sample's leaving the output's line to its standing ready in the input's;
 *     never negative
 * @param spreadSeconds how far apart the single measurements that count lie
 * @param heard how many chirps counted
 * @param sent how many were played
 */
public record LoopDelay(double seconds, double spreadSeconds, int heard, int sent) {}
