package holdfast.bench.listening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** A whistler: nearly one sine, with breath, glides between notes and a light vibrato. */
final class Whistler {

  private Whistler() {}

  static Clip whistle(String name, long seed, List<Line.Sung> line) {
    Random random = new Random(seed);
    double seconds = line.get(line.size() - 1).end() + 0.8;
    int n = (int) (seconds * Clip.RATE);
    float[] samples = new float[n];
    double[] hz = new double[(int) (seconds / Clip.FRAME_SECONDS)];
    List<TrueNote> notes = new ArrayList<>();
    double phase = 0;
    double air = 0;
    for (int k = 0; k < line.size(); k++) {
      Line.Sung note = line.get(k);
      boolean followed = k + 1 < line.size() && line.get(k + 1).joined();
      boolean samePitch = k > 0 && line.get(k - 1).midi() == note.midi();
      boolean joined = note.joined() && !samePitch;
      double end =
          followed && line.get(k + 1).midi() != note.midi() ? note.end() : note.end() - 0.05;
      double pitch = 440 * Math.pow(2, (note.midi() - 69 + random.nextGaussian() * 0.1) / 12);
      double from = joined ? 100.0 * (line.get(k - 1).midi() - note.midi()) : 0;
      for (int i = (int) (note.start() * Clip.RATE); i < (int) ((end + 0.03) * Clip.RATE); i++) {
        double since = (double) i / Clip.RATE - note.start();
        double cents = from * Math.exp(-since / 0.02) + 15 * Math.sin(2 * Math.PI * 5.5 * since);
        double now = pitch * Math.pow(2, cents / 1200);
        phase += now / Clip.RATE;
        double envelope = joined ? 1 : Math.min(1, since / 0.03);
        double left = end + 0.03 - note.start() - since;
        envelope *= Math.min(1, left / 0.03);
        air = 0.7 * air + 0.3 * random.nextGaussian();
        double x = 2 * Math.PI * phase;
        samples[i] = (float) (0.3 * envelope * (Math.sin(x) + 0.05 * Math.sin(2 * x) + 0.04 * air));
        int frame = (int) Math.round((double) i / Clip.RATE / Clip.FRAME_SECONDS);
        if (frame < hz.length && envelope > 0.1) {
          hz[frame] = now;
        }
      }
      notes.add(new TrueNote(note.start(), end + 0.015, pitch));
    }
    return new Clip(name, "whistles", samples, hz, notes, Optional.empty());
  }
}
