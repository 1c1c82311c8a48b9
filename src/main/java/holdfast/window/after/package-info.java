/**
 * What came of a take? First, if the player likes, how it felt; then the evidence, phrase by
 * phrase, to be seen, heard and read.
 */
package holdfast.window.after;
