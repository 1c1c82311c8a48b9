/**
 * Ideas, one after another, over a chord or two: how are they shown as they come?
 *
 * <p>Conventions: as in {@link holdfast.window.play}, the session runs on a thread of its own and
 * the event thread looks at what it left.
 */
package holdfast.window.invent;
