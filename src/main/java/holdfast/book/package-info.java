/**
 * What has been played so far, by whom, and what became of it?
 *
 * <p>Conventions: a take is a folder of open files, and the files are the truth; an index beside
 * them can be thrown away and is made anew. Times of day are the machine's own, in ISO 8601. Names
 * of students are first names or nicknames, compared without regard to case. Nothing leaves the
 * machine.
 */
package holdfast.book;
