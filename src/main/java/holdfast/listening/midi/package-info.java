/**
 * What does this MIDI file, or this keyboard, say was played?
 *
 * <p>Conventions: tracks count from 1 in the order of the file, channels from 1 to 16 as musicians
 * count them; positions in a file are quarter notes ({@code quarters}) and seconds from its start;
 * byte offsets in messages count from 0. A take becomes a line in four steps, a class each: {@link
 * holdfast.listening.midi.MidiTakeFile} reads, {@link holdfast.listening.midi.LineChoice} picks the
 * melody, {@link holdfast.listening.midi.MonophonicLine} thins it to one note at a time, {@link
 * holdfast.listening.midi.TakePlacement} lays it over the bars of a chart.
 *
 * <p>Constants come from the MIDI 1.0 Detailed Specification and Standard MIDI Files 1.0 (MIDI
 * Association); limits that are ours say why.
 */
package holdfast.listening.midi;
