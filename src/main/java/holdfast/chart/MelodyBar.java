package holdfast.chart;

import holdfast.theory.Harmony;
import java.util.List;
import java.util.Optional;

/**
 * One bar of a melody as it is written; times in {@link NoteValue#TICKS} from where its first beat
 * is or, in a pick-up bar, would be.
 *
 * @param number counted from 1; 0 is the pick-up bar
 * @param startTick where what is written begins
 * @param endTick where the bar line stands
 * @param notes notes and rests that fill it; none where the whole bar rests
 * @param chords the chords in it, in order
 * @param words the words above it, in order
 * @param section the name of the section that begins here
 * @param endsChorus whether the last bar of a chorus
 */
public record MelodyBar(
    int number,
    long startTick,
    long endTick,
    List<Written> notes,
    List<Chord> chords,
    List<Word> words,
    Optional<String> section,
    boolean endsChorus) {

  /**
   * A note or a rest on paper.
   *
   * @param piece when, and in which value
   * @param note the note; a rest has none
   * @param tiedFrom whether a tie leads to it
   * @param tiedOn whether a tie leads on from it
   * @param beat the beat that it starts in, whose tuplet it belongs to
   * @param group the beats that are beamed together
   */
  public record Written(
      RhythmPiece piece,
      Optional<MelodySheet.NamedNote> note,
      boolean tiedFrom,
      boolean tiedOn,
      int beat,
      long group) {

    /** How many beams it can have; a rest has none. */
    public int beams() {
      return note.isPresent() ? piece.value().beams() : 0;
    }
  }

  /** A chord at a tick. */
  public record Chord(long tick, Harmony harmony) {}

  /** Words at a tick. */
  public record Word(long tick, String text) {}

  /** Copies. */
  public MelodyBar {
    notes = List.copyOf(notes);
    chords = List.copyOf(chords);
    words = List.copyOf(words);
  }
}
