/**
 * What did the player do with the idea?
 *
 * <p>Conventions: times in beats at the edge, in pulses of the idea inside; pitches sounding MIDI
 * note numbers; probabilities 0 to 1, their logarithms natural.
 *
 * <p>The judge is a Bayesian comparison of explanations. Sources of its constants: treatments and
 * their words from Schoenberg, Fundamentals of Musical Composition, ch. III, and theory glossaries;
 * human timing and singers' pitch spread as {@link holdfast.motif.Player} tells; the weights of
 * similarity from published comparisons on annotated folk song motifs and on listeners' ratings, as
 * {@code Similarity} tells; what is marked "common practice" is our own choice, measured on a
 * labelled set of which one half was never used for tuning.
 */
package holdfast.motif;
