/**
 * How does a file get to the disk whole or not at all?
 *
 * <p>Convention: a mistake of the user's (a missing folder, no room, no leave) is told in one
 * sentence, and what stood there before still stands there.
 */
package holdfast.disk;
