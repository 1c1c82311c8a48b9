/**
 * How well does the judge of ideas do, and how fast? A labelled set that the project makes: ideas
 * over the shipped charts, every treatment by rule, new material from several sources, played with
 * the noise of a keyboard player or a singer.
 *
 * <p>Conventions: times in beats of the chart, pitches as MIDI note numbers; seeds are fixed; cases
 * of even number tune, cases of odd number are held out.
 */
package holdfast.bench.motif;
