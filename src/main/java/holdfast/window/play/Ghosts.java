package holdfast.window.play;

import holdfast.backing.Arrangement;
import holdfast.carry.CarriedThrough;
import holdfast.carry.Habit;
import holdfast.carry.PitchRange;
import holdfast.carry.Statement;
import holdfast.melody.Note;
import holdfast.melody.WrittenRhythm;
import holdfast.motif.Motif;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The idea where it could go, bar by bar of the form.
 *
 * @param byBar notes in beats from the first beat of the bar of this number; a note that hangs over
 *     stands in the next bar too, from before its first beat
 */
record Ghosts(Map<Integer, List<Note>> byBar) {

  static final Ghosts NONE = new Ghosts(Map.of());

  /** An idea is told from around where it was played: a fifth more to either side. */
  private static final int ROOM_SEMITONES = 7;

  /** Onsets so near before a bar line are meant to be on it, in beats. */
  private static final double ON_THE_LINE_BEATS = 0.26;

  /** A first note at most so long before a bar line leads to it, in beats. */
  private static final double LONGEST_PICK_UP_BEATS = 1.5;

  /** The notes that could be played in a bar. */
  List<Note> in(int bar) {
    return byBar.getOrDefault(bar, List.of());
  }

  /** Carries the idea through the form; none where it does not fit into it. */
  static Ghosts of(Motif idea, Arrangement arrangement) {
    Metre metre = arrangement.metre();
    int bars = arrangement.form().bars().size();
    try {
      List<Note> fromItsBar = fromItsBar(WrittenRhythm.of(idea.notes(), metre), metre.beats());
      int low = fromItsBar.stream().mapToInt(Note::pitch).min().orElse(60);
      int high = fromItsBar.stream().mapToInt(Note::pitch).max().orElse(72);
      CarriedThrough carried =
          CarriedThrough.of(
              new Statement(fromItsBar, idea.chord()),
              arrangement.form(),
              arrangement.chart().changes(),
              new PitchRange(
                  Math.max(0, low - ROOM_SEMITONES), Math.min(127, high + ROOM_SEMITONES)),
              Habit.UNKNOWN,
              1);
      Map<Integer, List<Note>> byBar = new HashMap<>();
      for (Note note : carried.line()) {
        int first = (int) Math.floor(note.onsetBeats() / metre.beats());
        int last = (int) Math.floor((note.endBeats() - 1e-6) / metre.beats());
        for (int bar = first; bar <= last; bar++) {
          byBar
              .computeIfAbsent(1 + Math.floorMod(bar, bars), b -> new ArrayList<>())
              .add(later(note, -(double) bar * metre.beats()));
        }
      }
      return new Ghosts(byBar);
    } catch (IllegalArgumentException tooLong) {
      return NONE;
    }
  }

  private static List<Note> fromItsBar(List<Note> notes, int beatsInBar) {
    double first = notes.get(0).onsetBeats();
    double bar = Math.floor((first + ON_THE_LINE_BEATS) / beatsInBar) * beatsInBar;
    double line = bar + beatsInBar;
    double behind = notes.get(notes.size() - 1).endBeats() - line;
    boolean leads = line - first <= LONGEST_PICK_UP_BEATS && behind > line - first;
    double start = leads ? line : bar;
    return notes.stream().map(note -> later(note, -start)).toList();
  }

  private static Note later(Note note, double beats) {
    return new Note(note.onsetBeats() + beats, note.durationBeats(), note.pitch());
  }
}
