package holdfast.bench.motif;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Makes ideas of 3 to 7 notes as a student might: within four beats, over one chord. */
interface IdeaMaker {

  /** Notes whose onsets count from the bar's first beat. */
  List<Note> make(Place place, int notes, Random random);

  /** Steps and small leaps on the chord's scale, in rhythms cut from quarters and eighths. */
  IdeaMaker WALK =
      (place, notes, random) -> {
        double[] steps = rhythm(notes, random);
        int pitch = Place.nearest(place.scale(), 60 + random.nextInt(15));
        List<Note> made = new ArrayList<>();
        double onset = random.nextInt(4) == 0 ? 0.5 : 0;
        for (int i = 0; i < notes; i++) {
          double length = steps[i] * (random.nextInt(3) == 0 ? 0.6 : 0.95);
          made.add(new Note(onset, length, pitch));
          onset += steps[i];
          pitch = next(place, pitch, random);
        }
        return made;
      };

  /** Broken chords and neighbours, long first, in rhythms that halve the bar again and again. */
  IdeaMaker CELLS =
      (place, notes, random) -> {
        List<Double> cuts = new ArrayList<>(List.of(4.0));
        while (cuts.size() < notes) {
          int at = 0;
          for (int i = 1; i < cuts.size(); i++) {
            if (cuts.get(i) > cuts.get(at) || (random.nextBoolean() && cuts.get(i) >= 1)) {
              at = i;
            }
          }
          double whole = cuts.remove(at);
          boolean dotted = random.nextInt(3) == 0 && whole >= 1;
          cuts.add(at, dotted ? whole * 0.75 : whole / 2);
          cuts.add(at + 1, dotted ? whole * 0.25 : whole / 2);
        }
        int pitch = Place.nearest(place.palette().chordTones(), 58 + random.nextInt(18));
        List<Note> made = new ArrayList<>();
        double onset = 0;
        for (double cut : cuts) {
          made.add(new Note(onset, cut * 0.9, pitch));
          onset += cut;
          int way = random.nextBoolean() ? 1 : -1;
          pitch =
              switch (random.nextInt(5)) {
                case 0, 1 -> Place.step(place.palette().chordTones(), pitch, way);
                case 2 -> Place.step(place.scale(), pitch, way);
                case 3 -> Place.step(place.welcome(), pitch, 2 * way);
                default -> pitch;
              };
          pitch = Math.max(50, Math.min(84, pitch));
        }
        return made;
      };

  /** The next note of a walk along the scale: mostly a step, at times a leap or the same again. */
  static int next(Place place, int pitch, Random random) {
    int[] steps = {-4, -3, -2, -2, -1, -1, -1, -1, 0, 1, 1, 1, 1, 2, 2, 3, 4};
    int to = Place.step(place.scale(), pitch, steps[random.nextInt(steps.length)]);
    return to < 52 ? to + 12 : to > 82 ? to - 12 : to;
  }

  /** Steps of time that start a bar and fill at most four beats. */
  static double[] rhythm(int notes, Random random) {
    double[] values = {0.5, 0.5, 0.5, 1, 1, 1.5, 0.25, 0.75};
    while (true) {
      double[] steps = new double[notes];
      double sum = 0;
      for (int i = 0; i < notes; i++) {
        steps[i] = values[random.nextInt(notes > 5 ? 5 : values.length)];
        sum += i < notes - 1 ? steps[i] : 0.5;
      }
      steps[notes - 1] = 1 + random.nextInt(2);
      if (sum <= 4) {
        return steps;
      }
    }
  }
}
