/**
 * Which pitches are sung, frame by frame, and which notes do they make?
 *
 * <p>Conventions: sound comes in at {@link holdfast.listening.audio.Resampler#EAR_RATE}; a frame
 * stands every {@link holdfast.listening.pitch.Frames#HOP_SECONDS}; frequencies in hertz; pitch in
 * cents is 100 times the MIDI number (A4 = 6900), at A = 440 Hz.
 *
 * <p>The chain: {@code Autocorrelation} (how periodic, at which lags) → {@code FrameAnalysis}
 * (candidates with probabilities, level, noise) → {@code PitchPath} (fixed-lag Viterbi over pitch
 * and voicing) → {@code NoteFinder} (attack, stable, gap) → {@code Tuning} (the player's own A).
 * Each is a small object that takes values and gives values; none knows a device, a thread or a
 * clock, and none allocates in steady state.
 *
 * <p>Constants come from the papers named at each class; those that were fitted say on what.
 */
package holdfast.listening.pitch;
