/**
 * When is a beat?
 *
 * <p>Conventions: a beat is the note value that the metre's lower number names; tempo is in such
 * beats a minute; seconds start where the owner says, mostly at the start of a take.
 */
package holdfast.time;
