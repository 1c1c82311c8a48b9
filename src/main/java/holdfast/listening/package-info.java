/**
 * What was played, and when?
 *
 * <p>Conventions: seconds from the start of the take; pitches sounding, with cents beside them;
 * notes in increasing order of onset.
 */
package holdfast.listening;
