/**
 * What happened in one take, from the first note to what is said about it?
 *
 * <p>Conventions: a take's beats count from bar 1 of its first chorus (a pick-up is negative); its
 * seconds count from the start of the recording. Here what was played (seconds) meets the chart
 * (beats). The life of a take is one method, {@code Coach.judge}.
 */
package holdfast.session;
