/**
 * What did the user give us that we cannot use, and how is it mended?
 *
 * <p>Convention: one sentence names the file, the place and the mend.
 */
package holdfast.mistake;
