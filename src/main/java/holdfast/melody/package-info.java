/**
 * What is a line of notes, as it is written down?
 *
 * <p>Conventions: onsets and durations in beats, in increasing order of onset; a beat is the note
 * value that the metre's lower number names. Pitches are sounding MIDI note numbers. What was
 * played, in seconds, is {@code holdfast.listening.PlayedNote}; the two meet where a take is laid
 * over a chart.
 */
package holdfast.melody;
