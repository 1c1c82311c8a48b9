/**
 * What does a player see while a take runs?
 *
 * <p>Conventions: the take runs on a thread of its own ({@link holdfast.window.play.TakeThread})
 * and leaves what happened in {@link holdfast.window.play.LiveScene}; the event thread looks there
 * at every frame and is never waited for. Beats count from bar 1 of the first chorus.
 */
package holdfast.window.play;
