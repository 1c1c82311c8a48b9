/**
 * How well does the microphone hear?
 *
 * <p>Conventions: seconds from the start of a clip; frequencies in hertz, 0 where nothing is sung,
 * negative where nothing is heard but a guess is given; scores are shares from 0 to 1.
 *
 * <p>The scores follow the definitions of mir_eval (Raffel et al., "mir_eval: a transparent
 * implementation of common MIR metrics", ISMIR 2014). The clips are made by the project itself, so
 * that the truth is known to the sample.
 */
package holdfast.bench.listening;
