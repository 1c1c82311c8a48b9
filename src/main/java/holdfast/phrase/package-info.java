/**
 * Where does one musical thought end and the next begin?
 *
 * <p>Conventions: seconds from the start of the take, as the notes have them; a rest is the silence
 * from the last note-off to the next note-on; an inter-onset interval (IOI) runs from note-on to
 * note-on. Everything is measured against what was heard, never against a clock: {@link
 * holdfast.phrase.PhraseCutter} is told up to when the ear has heard everything. What is decided
 * live is never taken back there; with the whole take at hand {@link
 * holdfast.phrase.PhraseRevision} says which cuts it would rather have made.
 *
 * <p>Where the constants come from: the anchor is a rest of 0.30 s, which on 456 jazz solos with
 * phrases marked by experts finds the ends with F .879 (.896 under 90 beats a minute). What moves
 * away from it was set on the tune half of solos and takes that the tests make (SoloMaker,
 * TakeMaker), and kept mild because made players are not real ones. Boundary strength is the Local
 * Boundary Detection Model of Cambouropoulos (2001).
 */
package holdfast.phrase;
