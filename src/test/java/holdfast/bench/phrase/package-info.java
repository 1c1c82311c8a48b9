/**
 * How well are phrase ends found, and how fast? Made solos and takes with known ends: see {@code
 * SoloMaker} and {@code TakeMaker}.
 *
 * <p>Conventions: seeds are fixed; those from {@code SoloMaker.HOLD_OUT} on are held out and used
 * for nothing but measuring.
 */
package holdfast.bench.phrase;
