/**
 * Who plays, and what they played: how is the practice book seen and kept in the window?
 *
 * <p>Conventions: the book is opened and read beside the event thread, and closed at once.
 */
package holdfast.window.book;
