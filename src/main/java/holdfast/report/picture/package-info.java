/**
 * What does a phrase look like? Painters that draw on any {@code Graphics2D}: the window's and,
 * through SVG, the report's.
 *
 * <p>Conventions: time runs to the right, pitch upwards; a painter is given its rectangle and keeps
 * inside it.
 */
package holdfast.report.picture;
