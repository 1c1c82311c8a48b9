/**
 * How many different ideas does a player find over a chord or two?
 *
 * <p>Every phrase is kept as an idea. It is the same as an earlier one when the judge of
 * restatement hears that one in it, only in other clothes: moved, in another octave, slower or
 * faster, or with one ornament. Nothing here gives an idea away: starters are a rhythm, a shape, a
 * few notes, a question, a word.
 *
 * <p>Conventions: an idea's notes are in beats of the take in which it was played.
 */
package holdfast.practice.invent;
