/**
 * How does a task get to a student and the answer back, without a server?
 *
 * <p>Conventions: both are small ZIP files (APPNOTE.TXT of PKWARE) of open texts, an assignment
 * with the ending {@code .carry}, an answer with {@code .carried}. A file from elsewhere is not
 * trusted: only entries with names that we know are read, and never more bytes than such an entry
 * may have.
 */
package holdfast.book.assignment;
