/**
 * Which chart is played, and how is one written?
 *
 * <p>Conventions: our charts cannot be changed; a change makes a copy in the folder {@code charts}
 * of the user's, where every file is a chart as {@code backing/README.md} describes it.
 */
package holdfast.window.charts;
