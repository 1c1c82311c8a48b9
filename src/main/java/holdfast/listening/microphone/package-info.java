/**
 * What does the microphone hear while the music plays?
 *
 * <p>Conventions: devices by the names that the system gives them; seconds from the start of the
 * take, with the delay from device to ear already taken off.
 *
 * <p>Two threads: the device's only copies sound into a ring, the session's reads it, listens and
 * tells. Neither waits for the other.
 */
package holdfast.listening.microphone;
