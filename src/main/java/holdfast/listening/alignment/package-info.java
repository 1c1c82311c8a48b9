/**
 * Where in a recording does the backing lie that we know?
 *
 * <p>Conventions: seconds of the take are seconds of the recording as its file counts them; seconds
 * of the backing count from the first sample of the rendered sound; a stretch of 1.01 means that
 * the take runs 1 % slower than the backing. The backing comes in as sound and a few times; nothing
 * here knows who plays it.
 *
 * <p>The way: coarse by cross-correlating chroma and onset strength over all starts and speeds,
 * fine by onset strength window by window, finest by the sound itself, with a line laid through the
 * windows that agree. Constants are our own unless a source stands beside them, and were chosen on
 * made-up takes with known truth (AlignmentTest).
 */
package holdfast.listening.alignment;
