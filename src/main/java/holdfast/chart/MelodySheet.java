package holdfast.chart;

import holdfast.melody.Note;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import java.util.List;
import java.util.Optional;

/**
 * A melody over the chords of a form, to be written down: a lead sheet.
 *
 * @param title what stands over it
 * @param form what it goes over, chorus after chorus; the harmony is written above it
 * @param key the key signature; without one there is none
 * @param tempo beats a minute
 * @param notes one at a time, in order of onset, in beats from bar 1 of the first chorus; a pick-up
 *     is negative, at most a bar long
 * @param words what is written above the staff, in order
 * @param phrases its phrases, in order and one after another; may be empty
 */
public record MelodySheet(
    String title,
    Form form,
    Optional<Key> key,
    double tempo,
    List<NamedNote> notes,
    List<Words> words,
    List<Phrase> phrases) {

  /** A melody without marks of its phrases. */
  public MelodySheet(
      String title,
      Form form,
      Optional<Key> key,
      double tempo,
      List<NamedNote> notes,
      List<Words> words) {
    this(title, form, key, tempo, notes, words, List.of());
  }

  /**
   * Notes that are said in one breath, under one slur.
   *
   * @param firstOnset where its first note begins, in the beats of the notes
   * @param lastOnset where its last note begins
   */
  public record Phrase(double firstOnset, double lastOnset) {}

  /**
   * A note with the name that it is written under.
   *
   * @param note when and how long it sounds, and its pitch
   * @param name a name of that pitch
   */
  public record NamedNote(Note note, NoteName name) {

    /** Checks that the name is one of the pitch. */
    public NamedNote {
      if (Math.floorMod(note.pitch(), 12) != name.pitchClass()) {
        throw new IllegalArgumentException("MIDI note " + note.pitch() + " is no " + name.text());
      }
    }
  }

  /**
   * Words above the staff.
   *
   * @param beat where they stand, in the beats of the notes
   * @param text what they say
   */
  public record Words(double beat, String text) {}

  /** Checks the order of the notes, and copies. */
  public MelodySheet {
    notes = List.copyOf(notes);
    words = List.copyOf(words);
    phrases = List.copyOf(phrases);
    double before = -form.metre().beats();
    for (NamedNote note : notes) {
      if (note.note().onsetBeats() < before) {
        throw new IllegalArgumentException(
            "the notes of a melody come in order, a pick-up of a bar at most first, but one starts"
                + " at beat "
                + note.note().onsetBeats());
      }
      before = note.note().onsetBeats();
    }
  }

  /** How many choruses it goes over, at least one. */
  int choruses() {
    double end = notes.stream().mapToDouble(n -> n.note().endBeats()).max().orElse(0);
    // A hair over the double bar is rounding.
    return (int) Math.max(1, Math.ceil(end / form.lengthBeats() - 1e-6));
  }
}
