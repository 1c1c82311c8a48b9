/**
 * How did a whole class carry its ideas, and who would be glad of a word?
 *
 * <p>Conventions: each returned take becomes one line of JSON in an open file, written the moment
 * it is judged and never changed; the page and the table are made from these lines alone. Lines of
 * several machines are put together by putting their files together. What is said of a student is
 * gentle and names a place in the tune, never a grade.
 */
package holdfast.book.overview;
