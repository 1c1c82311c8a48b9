/**
 * How do notes become sound, and when is it heard?
 *
 * <p>Conventions: a position is a count of microseconds of sound that the synthesizer has made
 * since it was opened; moments are those of {@link System#nanoTime}. A position is <em>made</em>
 * when the synthesizer renders it, leaves the line's buffer some 250 ms later, and is
 * <em>heard</em> after the device's own latency on top. Messages carry the position at which they
 * are to sound and are sent well ahead, for then the synthesizer places them to the sample.
 *
 * <p>Constants: 150 ms ahead and a line of our own were measured (onset error 0.01 ms, against 1.4
 * to 2.1 ms typical and 21 ms at worst for messages sent "now"). The synthesizer is the JDK's; its
 * inner interface {@code com.sun.media.sound.AudioSynthesizer} is asked by reflection, since only
 * that renders into a stream, and where it is not to be had the synthesizer opens its own line.
 */
package holdfast.backing.sound;
