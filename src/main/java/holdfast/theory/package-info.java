/**
 * What is this chord, this scale, this note called, and which notes belong to it?
 *
 * <p>Conventions: pitches are MIDI note numbers with middle C (C4) = 60; pitch classes count from C
 * = 0; intervals are in semitones. Everything here is a value or a pure function; nothing knows of
 * time, files or sound.
 */
package holdfast.theory;
