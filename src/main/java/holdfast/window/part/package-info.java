/**
 * What are pages put together from? Text that breaks its lines, columns, rows that wrap, buttons.
 *
 * <p>Convention: a layout is given its width and answers with the height that it needs; so nothing
 * is cut off where text is large or a language wordy.
 */
package holdfast.window.part;
