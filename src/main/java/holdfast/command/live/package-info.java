/**
 * What does the player see in the terminal while a take runs, and which keys can they press?
 *
 * <p>Convention: one line at the bottom is written over and over (where we are); what was heard
 * stands above it, a line a phrase. Where there is no terminal, only those lines are written.
 */
package holdfast.command.live;
