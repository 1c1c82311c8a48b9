/**
 * Through what is a player heard, and how is it opened?
 *
 * <p>Conventions: inputs go by the names that people know them by; a calibration belongs to a pair
 * of devices, the output's name as {@link holdfast.backing.BackingPlayer#output()} gives it and the
 * input's as {@link holdfast.session.input.InputChoice#name()} does. The terminal and the window
 * choose and open inputs here, so that both hear alike.
 */
package holdfast.session.input;
