/**
 * Which keys of a MIDI keyboard went down, and when?
 *
 * <p>Conventions: messages are stamped with {@link System#nanoTime} the moment they arrive, since
 * devices' own stamps follow the wall clock on some systems and can jump. The thread of the device
 * never waits and never allocates. Message layout: MIDI 1.0 Detailed Specification (MIDI
 * Association, 1996), "Channel Voice Messages".
 */
package holdfast.listening.keyboard;
