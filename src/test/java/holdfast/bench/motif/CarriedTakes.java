package holdfast.bench.motif;

import holdfast.chart.Chart;
import holdfast.melody.Note;
import holdfast.motif.Treatment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Whole takes as students send them in: an idea of four or five notes, then every two bars a phrase
 * that was made from it, or something new, played as a keyboard player does.
 */
public final class CarriedTakes {

  private static final double BEATS_A_PHRASE = 8;

  /** A third of the phrases is new material. */
  private static final int NEW_IN = 3;

  private CarriedTakes() {}

  /**
   * A take.
   *
   * @param chart its beats in fours
   * @return what is played, in beats from bar 1
   */
  public static List<Note> line(Chart chart, int choruses, long seed) {
    Random random = new Random(seed);
    Place home = new Place(chart.changes(), 0, chart.tempo());
    List<Note> idea = IdeaMaker.WALK.make(home, 4 + random.nextInt(2), random);
    List<Note> line = new ArrayList<>(idea);
    double end = choruses * chart.form().lengthBeats();
    for (double beat = BEATS_A_PHRASE; beat < end; beat += BEATS_A_PHRASE) {
      Place there = new Place(chart.changes(), beat, chart.tempo());
      Treatment[] all = Treatment.values();
      Treatment how = random.nextInt(NEW_IN) == 0 ? Treatment.NEW : all[random.nextInt(all.length)];
      Optional<List<Note>> phrase = new Making(home, there, idea, random).make(how, IdeaMaker.WALK);
      for (Note note : phrase.orElse(idea)) {
        if (note.onsetBeats() < BEATS_A_PHRASE - 1) {
          line.add(new Note(beat + note.onsetBeats(), note.durationBeats(), note.pitch()));
        }
      }
    }
    return Performer.KEYBOARD.play(line, chart.tempo(), random);
  }
}
