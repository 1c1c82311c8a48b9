/**
 * What does the backing play, and how is it heard or written down?
 *
 * <p>Conventions: beats are counted from the first beat of the first bar that is played, so that a
 * pick-up and the count-in have negative beats; a beat is the note value of the metre's lower
 * number. {@link holdfast.backing.Arrangement} and all that it uses are pure. {@link
 * holdfast.backing.BackingPlayer} plays it live, on one clock, through {@code
 * holdfast.backing.sound}; {@link holdfast.backing.BackingAudio} and {@link
 * holdfast.backing.BackingMidi} write it to files.
 *
 * <p>Constants: the swing ratio follows Friberg and Sundström (2002); what makes a voicing or a
 * bass line sound well is common practice, and each constant says so.
 */
package holdfast.backing;
