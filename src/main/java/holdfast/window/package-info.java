/**
 * How does a musician see, hear and steer all this without a terminal?
 *
 * <p>Conventions: all of it runs on the event thread of Swing but the running of a take ({@code
 * window.play.TakeThread}), which is never waited for. Pages are small classes; {@link
 * holdfast.window.Pages} is the one place where they are named. Every word stands in {@code
 * words.properties} and its translations. Lengths are in the units of Swing, before the scale of
 * the screen and after the user's text size.
 */
package holdfast.window;
