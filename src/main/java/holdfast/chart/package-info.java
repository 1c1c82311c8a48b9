/**
 * Which chord sounds when, and how is that written down?
 *
 * <p>Two models. What is <em>written</em>: a {@link holdfast.chart.Chart} with its heading, its
 * rows of {@link holdfast.chart.WrittenBar bars}, repeats, endings and remarks, just as a musician
 * typed it. What is <em>played</em>: a {@link holdfast.chart.Form}, repeats and endings played out,
 * and the {@link holdfast.chart.Changes} that everything else is judged against.
 *
 * <p>Conventions: times are in beats, and a beat is the note value that the metre's lower number
 * names. Beat 0 is the first beat of bar 1; a pick-up bar is bar 0 and lies before beat 0. Played
 * harmony sounds: a chart written for a transposing instrument is turned back into concert pitch
 * before it is played out.
 *
 * <p>The text format is our own; its grammar stands in {@code backing/README.md}. The exchange
 * format is MusicXML 4.0 (W3C Music Notation Community Group, 2021), element {@code harmony}.
 */
package holdfast.chart;
