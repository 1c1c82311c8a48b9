package holdfast.bench.motif;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Phrases that are not the idea, of several kinds. */
enum NewMaterial {
  SCALE_RUN,
  ARPEGGIO,
  WALK,
  OTHER_IDEA,
  SAME_NOTE_VALUES,
  CHROMATIC,
  REPEATED_NOTE;

  /** Notes whose onsets count from the bar's first beat. */
  List<Note> make(Place place, List<Note> idea, IdeaMaker maker, Random random) {
    int notes = 3 + random.nextInt(5);
    return switch (this) {
      case SCALE_RUN -> run(place, notes, random, (p, way) -> Place.step(place.scale(), p, way));
      case ARPEGGIO ->
          run(place, notes, random, (p, way) -> Place.step(place.palette().chordTones(), p, way));
      case CHROMATIC -> run(place, notes, random, (p, way) -> p + way);
      case REPEATED_NOTE -> run(place, notes, random, (p, way) -> p);
      case WALK -> IdeaMaker.WALK.make(place, notes, random);
      case OTHER_IDEA -> maker.make(place, notes, random);
      case SAME_NOTE_VALUES -> sameValues(place, idea, random);
    };
  }

  private interface Way {
    int next(int pitch, int way);
  }

  private static List<Note> run(Place place, int notes, Random random, Way way) {
    double step = random.nextInt(3) == 0 ? 1 : 0.5;
    int direction = random.nextBoolean() ? 1 : -1;
    int pitch = Place.nearest(place.palette().chordTones(), 60 + random.nextInt(15));
    List<Note> made = new ArrayList<>();
    double onset = random.nextInt(3) * 0.5;
    for (int i = 0; i < notes; i++) {
      made.add(new Note(onset, step * 0.9, pitch));
      onset += i == notes - 3 && random.nextInt(3) == 0 ? 2 * step : step;
      pitch = way.next(pitch, direction);
    }
    return made;
  }

  /** The idea's own note values in another order, other pitches. */
  private static List<Note> sameValues(Place place, List<Note> idea, Random random) {
    List<Double> steps = new ArrayList<>();
    for (int i = 1; i < idea.size(); i++) {
      steps.add(idea.get(i).onsetBeats() - idea.get(i - 1).onsetBeats());
    }
    java.util.Collections.shuffle(steps, random);
    int pitch = Place.nearest(place.scale(), 60 + random.nextInt(15));
    List<Note> made = new ArrayList<>();
    double onset = 0;
    for (int i = 0; i < idea.size(); i++) {
      double step = i < steps.size() ? steps.get(i) : 1;
      made.add(new Note(onset, step * 0.9, pitch));
      onset += step;
      pitch = IdeaMaker.next(place, pitch, random);
    }
    return made;
  }
}
