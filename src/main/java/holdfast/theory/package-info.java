/**
 * What is this chord, this scale, this note called, and which notes belong to it?
 *
 * <p>Conventions: pitches are MIDI note numbers with middle C (C4) = 60; pitch classes count from C
 * = 0; intervals are in semitones, or in letter steps and semitones where spelling matters. Names
 * are typed with {@code b} and {@code #} ({@code text()}) and shown with ♭ and ♯ ({@code
 * display()}). Everything here is a value or a pure function; nothing knows of time, files or
 * sound.
 *
 * <p>The tables lie beside the classes as readable text, each with its sources in its head: {@code
 * chord-kinds.csv} (MusicXML 4.0, Harte 2005, common practice), {@code chord-ambiguities.csv}
 * (common practice), {@code chord-scales.csv} and {@code scales.csv} (two handouts, memory, common
 * practice, and shares counted in the Weimar Jazz Database), {@code key-profiles.csv} (Krumhansl
 * and Kessler 1982, Temperley, Bellman, Aarden, Albrecht and Shanahan).
 */
package holdfast.theory;
