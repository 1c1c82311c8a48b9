/**
 * How late does the sound come, how loud and how wide does this player sing: measured in steps.
 *
 * <p>Conventions: each step runs beside the event thread and keeps what it found at once.
 */
package holdfast.window.calibration;
