/** What can be asked of Holdfast from a terminal? One small class for each command. */
package holdfast.command;
