package holdfast.bench.motif;

import holdfast.melody.Note;
import holdfast.motif.Player;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Plays what was written as people do: late and early, beside the note, a note too few or many. */
enum Performer {
  /** Timing sd 20 ms, one note in a hundred a neighbouring key. */
  KEYBOARD(Player.KEYBOARD, 0.020, 0, 0.01, 0),
  /** Pitch sd 30 cents, timing sd 45 ms, three notes in a hundred dropped or added. */
  SINGER(Player.VOICE, 0.045, 30, 0, 0.03);

  final Player player;
  private final double timingSeconds;
  private final double cents;
  private final double slips;
  private final double droppedOrAdded;

  Performer(
      Player player, double timingSeconds, double cents, double slips, double droppedOrAdded) {
    this.player = player;
    this.timingSeconds = timingSeconds;
    this.cents = cents;
    this.slips = slips;
    this.droppedOrAdded = droppedOrAdded;
  }

  /** The notes as played at a tempo; at least two are left of two or more. */
  List<Note> play(List<Note> written, double tempo, Random random) {
    double sd = timingSeconds * tempo / 60;
    List<Note> played = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    int left = written.size();
    for (Note note : written) {
      if (left > 2 && random.nextDouble() < droppedOrAdded / 2) {
        left--;
        continue;
      }
      double onset = Math.max(last + 0.02, note.onsetBeats() + sd * random.nextGaussian());
      double length = Math.max(0.05, note.durationBeats() * (0.9 + 0.1 * random.nextGaussian()));
      double sung = note.pitch() + cents / 100 * random.nextGaussian();
      int pitch = (int) Math.round(sung);
      double beside = 100 * (sung - pitch);
      if (random.nextDouble() < slips) {
        pitch += (random.nextBoolean() ? 1 : -1) * (1 + random.nextInt(2));
      }
      played.add(new Note(onset, length, pitch, beside));
      last = onset;
      if (random.nextDouble() < droppedOrAdded / 2) {
        last = onset + Math.max(0.1, note.durationBeats() / 2);
        played.add(new Note(last, 0.2, pitch + random.nextInt(5) - 2, beside));
      }
    }
    return played;
  }
}
