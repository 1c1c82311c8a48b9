/**
 * What is practised, in which way, and what next?
 *
 * <p>A {@link holdfast.practice.Way} is a way of practising with the coach; an {@link
 * holdfast.practice.Exercise} says what is practised in it, and a {@link holdfast.practice.Plan}
 * what should be practised next, after a take. Nothing here knows a screen: terminal and window
 * both show what a {@link holdfast.practice.PracticeAudience} is told.
 *
 * <p>Conventions: beats of a take count from the first bar that is played, those of an idea from
 * its own bar line. The coach's line is never judged; only what the student plays is. Sizes of
 * steps (how much slower, how many bars) are common practice of teachers, no source, and stand in
 * the classes that use them.
 */
package holdfast.practice;
