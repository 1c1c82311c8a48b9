/**
 * How does each note stand in the chord under it, and how well does a phrase sit in its chords?
 *
 * <p>A note has a {@link holdfast.harmony.NoteRole role}: it belongs, colours, passes, leans, stays
 * from the chord before or comes early from the next, or it rubs. The role follows from the pitch
 * class over the chord, the place in the bar, the length, how the note is reached and left, and the
 * chords before and after. A phrase has a {@link holdfast.harmony.Fit fit}: a number and a word.
 *
 * <p>Conventions: notes and changes in the same beats, a beat being the note value that the metre's
 * lower number names; lengths are weighed in quarter notes, so that a 6/8 bar reads as it sounds. A
 * step is one or two semitones.
 *
 * <p>Experts play chord tones only half of the time, so the share of chord tones is never a score.
 * What counts is landing, long notes, resolution, and how usual a note is over its chord. Constants
 * come from counts over 456 transcribed jazz solos of the Weimar Jazz Database ({@code
 * notes-over-chords.csv} beside these classes), and from weights of the trade ({@link
 * holdfast.harmony.TradeWeights}); each stands beside its use.
 */
package holdfast.harmony;
