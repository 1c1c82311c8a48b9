package holdfast.bench.motif;

import holdfast.melody.Note;
import holdfast.motif.Treatment;
import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Makes a phrase out of an idea by one treatment's rule. Where the rule comes to nothing of its own
 * (a palindrome turned round), there is no phrase.
 */
final class Making {

  private static final double[] PACES = {2, 1.5, 2 / 3.0, 0.5};

  private final Place home;
  private final Place there;
  private final List<Note> idea;
  private final Random random;
  private final int n;

  Making(Place home, Place there, List<Note> idea, Random random) {
    this.home = home;
    this.there = there;
    this.idea = idea;
    this.random = random;
    this.n = idea.size();
  }

  Optional<List<Note>> make(Treatment treatment, IdeaMaker maker) {
    return switch (treatment) {
      case LITERAL -> Optional.of(idea);
      case TRANSPOSED -> Optional.of(moved(transposition()));
      case SEQUENCE -> sequence();
      case RHYTHM_KEPT -> rhythmKept();
      case CONTOUR_KEPT -> contourKept();
      case INVERTED -> inverted();
      case RETROGRADE -> retrograde();
      case AUGMENTED -> Optional.of(stretched(carried(), random.nextInt(10) < 7 ? 2 : 1.5));
      case DIMINISHED -> Optional.of(stretched(carried(), random.nextInt(10) < 8 ? 0.5 : 2 / 3.0));
      case FRAGMENT -> fragment();
      case EXTENDED -> Optional.of(extended());
      case ORNAMENTED -> ornamented(carried(), 1 + random.nextInt(2));
      case NEW -> {
        NewMaterial[] kinds = NewMaterial.values();
        yield Optional.of(kinds[random.nextInt(kinds.length)].make(there, idea, maker, random));
      }
    };
  }

  /** The whole idea in other clothes and with nothing else done to it. */
  Optional<List<Note>> dressed(Dress dress) {
    return switch (dress) {
      case TRANSPOSED -> Optional.of(moved(transposition())).filter(made -> !isOctave(made));
      case OCTAVE -> Optional.of(moved(random.nextBoolean() ? 12 : -12));
      case TEMPO -> Optional.of(stretched(idea, PACES[random.nextInt(PACES.length)]));
      case ORNAMENT -> ornamented(idea, 1);
    };
  }

  private boolean isOctave(List<Note> made) {
    return (made.get(0).pitch() - idea.get(0).pitch()) % 12 == 0;
  }

  private int transposition() {
    int[] by = {-12, -7, -5, -4, -3, -2, -1, 1, 2, 3, 4, 5, 7, 12};
    int best = by[random.nextInt(by.length)];
    // Players move to where most notes sit well, mostly.
    for (int tries = 0; tries < 2; tries++) {
      int other = by[random.nextInt(by.length)];
      if (sitting(other) > sitting(best)) {
        best = other;
      }
    }
    return best;
  }

  private int sitting(int by) {
    return (int) idea.stream().filter(x -> there.welcome().contains(x.pitch() + by)).count();
  }

  private List<Note> moved(int by) {
    return idea.stream()
        .map(x -> new Note(x.onsetBeats(), x.durationBeats(), x.pitch() + by))
        .toList();
  }

  private static List<Note> withPitches(List<Note> notes, int[] pitches) {
    List<Note> made = new ArrayList<>();
    for (int i = 0; i < notes.size(); i++) {
      Note x = notes.get(i);
      made.add(new Note(x.onsetBeats(), x.durationBeats(), pitches[i]));
    }
    return made;
  }

  private int[] pitches() {
    return idea.stream().mapToInt(Note::pitch).toArray();
  }

  private boolean rigid(int[] pitches) {
    for (int i = 1; i < n; i++) {
      if (pitches[i] - pitches[0] != idea.get(i).pitch() - idea.get(0).pitch()) {
        return false;
      }
    }
    return true;
  }

  private boolean contourAsIdea(int[] pitches) {
    for (int i = 1; i < n; i++) {
      if (Integer.signum(pitches[i] - pitches[i - 1])
          != Integer.signum(idea.get(i).pitch() - idea.get(i - 1).pitch())) {
        return false;
      }
    }
    return true;
  }

  private Optional<List<Note>> sequence() {
    for (int tries = 0; tries < 20; tries++) {
      int[] p =
          switch (random.nextInt(3)) {
            case 0 -> alongKey();
            case 1 -> acrossScales();
            default -> skewed();
          };
      if (p.length == n && !rigid(p)) {
        return Optional.of(withPitches(idea, p));
      }
    }
    return Optional.empty();
  }

  private int[] alongKey() {
    PitchClassSet key = home.changes().key().orElseThrow().scale();
    int by = (random.nextBoolean() ? 1 : -1) * (1 + random.nextInt(4));
    int[] p = pitches();
    for (int i = 0; i < n; i++) {
      if (!key.contains(p[i])) {
        return new int[0];
      }
      p[i] = Place.step(key, p[i], by);
    }
    return p;
  }

  /** From the idea's chord scale to the phrase's, step for step. */
  private int[] acrossScales() {
    PitchClassSet from = home.scale();
    PitchClassSet to = there.scale();
    int[] p = pitches();
    if (from.size() != to.size()) {
      return new int[0];
    }
    int anchor = Place.nearest(to, p[0]);
    if (random.nextInt(3) == 0) {
      anchor = Place.step(to, anchor, random.nextInt(7) - 3);
    }
    int[] made = new int[n];
    for (int i = 0; i < n; i++) {
      if (!from.contains(p[i])) {
        return new int[0];
      }
      int steps = 0;
      for (int q = p[0]; q != p[i]; q += Integer.signum(p[i] - p[0])) {
        steps += from.contains(q) ? 1 : 0;
      }
      made[i] = Place.step(to, anchor, p[i] >= p[0] ? steps : -steps);
    }
    return made;
  }

  /** Only what clashes moves, to the nearest note that fits. */
  private int[] skewed() {
    int[] p = pitches();
    for (int i = 0; i < n; i++) {
      if (!there.welcome().contains(p[i])) {
        int to = Place.nearest(there.welcome(), p[i]);
        if (Math.abs(to - p[i]) > 2) {
          return new int[0];
        }
        p[i] = to;
      }
    }
    return contourAsIdea(p) ? p : new int[0];
  }

  private Optional<List<Note>> rhythmKept() {
    for (int tries = 0; tries < 50; tries++) {
      int[] p = new int[n];
      p[0] = Place.nearest(there.scale(), idea.get(0).pitch() + random.nextInt(9) - 4);
      for (int i = 1; i < n; i++) {
        p[i] = IdeaMaker.next(there, p[i - 1], random);
      }
      if (!contourAsIdea(p) && !Readings.sameShape(idea, withPitches(idea, p), this)) {
        return Optional.of(withPitches(idea, p));
      }
    }
    return Optional.empty();
  }

  private Optional<List<Note>> contourKept() {
    for (int tries = 0; tries < 50; tries++) {
      int[] p = new int[n];
      p[0] = Place.nearest(there.welcome(), idea.get(0).pitch() + random.nextInt(7) - 3);
      for (int i = 1; i < n; i++) {
        int way = Integer.signum(idea.get(i).pitch() - idea.get(i - 1).pitch());
        p[i] = Place.step(there.scale(), p[i - 1], way * (1 + random.nextInt(4)));
      }
      if (contourAsIdea(p) && !Readings.sameShape(idea, withPitches(idea, p), this)) {
        return Optional.of(withPitches(idea, p));
      }
    }
    return Optional.empty();
  }

  private Optional<List<Note>> inverted() {
    int[] p = pitches();
    int[] made = new int[n];
    boolean bySteps = random.nextBoolean();
    int first = random.nextInt(3) == 0 ? p[0] + random.nextInt(11) - 5 : p[0];
    for (int i = 0; i < n; i++) {
      made[i] = first - (p[i] - p[0]);
    }
    if (bySteps) {
      PitchClassSet scale = there.scale();
      int anchor = Place.nearest(scale, first);
      for (int i = 0; i < n; i++) {
        int steps = 0;
        for (int q = p[0]; q != p[i]; q += Integer.signum(p[i] - p[0])) {
          steps += home.scale().contains(q) ? 1 : 0;
        }
        made[i] = Place.step(scale, anchor, p[i] >= p[0] ? -steps : steps);
      }
    }
    return rigid(made) ? Optional.empty() : Optional.of(withPitches(idea, made));
  }

  private Optional<List<Note>> retrograde() {
    List<Note> base = carried();
    boolean rhythmToo = random.nextInt(5) < 2;
    List<Note> made = new ArrayList<>();
    double start = base.get(0).onsetBeats();
    double end = base.get(n - 1).onsetBeats();
    for (int i = 0; i < n; i++) {
      Note from = base.get(n - 1 - i);
      Note time = rhythmToo ? from : base.get(i);
      double onset = rhythmToo ? start + end - from.onsetBeats() : time.onsetBeats();
      made.add(new Note(onset, time.durationBeats(), from.pitch()));
    }
    return rigid(made.stream().mapToInt(Note::pitch).toArray())
        ? Optional.empty()
        : Optional.of(made);
  }

  /** The idea's notes in place or moved: what a treatment of time or length works on. */
  private List<Note> carried() {
    return switch (random.nextInt(5)) {
      case 0 -> moved(transposition());
      case 1 -> sequence().orElse(idea);
      default -> idea;
    };
  }

  private static List<Note> stretched(List<Note> notes, double factor) {
    double start = notes.get(0).onsetBeats();
    return notes.stream()
        .map(
            x ->
                new Note(
                    start + factor * (x.onsetBeats() - start),
                    factor * x.durationBeats(),
                    x.pitch()))
        .toList();
  }

  private Optional<List<Note>> fragment() {
    if (n < 4) {
      return Optional.empty();
    }
    int length = 3 + random.nextInt(n - 3);
    int start = random.nextInt(10) < 7 ? 0 : random.nextInt(n - length + 1);
    List<Note> part = carried().subList(start, start + length);
    if (random.nextInt(8) == 0) {
      List<Note> twice = new ArrayList<>(part);
      double again = Math.ceil(part.get(length - 1).endBeats() - part.get(0).onsetBeats());
      for (Note x : part) {
        twice.add(new Note(x.onsetBeats() + again, x.durationBeats(), x.pitch()));
      }
      return Optional.of(twice);
    }
    return Optional.of(part);
  }

  private List<Note> extended() {
    List<Note> made = new ArrayList<>(carried());
    int more = 1 + random.nextInt(3);
    if (random.nextInt(4) > 0) {
      Note last = made.remove(n - 1);
      double step = random.nextBoolean() ? 0.5 : 1;
      made.add(new Note(last.onsetBeats(), step * 0.9, last.pitch()));
      int pitch = last.pitch();
      for (int k = 1; k <= more; k++) {
        pitch = IdeaMaker.next(there, pitch, random);
        made.add(new Note(last.onsetBeats() + k * step, step * 0.9, pitch));
      }
    } else {
      int pitch = made.get(0).pitch();
      double onset = made.get(0).onsetBeats();
      for (int k = 1; k <= more; k++) {
        pitch = IdeaMaker.next(there, pitch, random);
        onset -= 0.5;
        made.add(0, new Note(onset, 0.45, pitch));
      }
    }
    return made;
  }

  /** One or two short notes, a step from the note that they lead to, before it or on its time. */
  private Optional<List<Note>> ornamented(List<Note> base, int wanted) {
    List<Note> made = new ArrayList<>(base);
    int put = 0;
    for (int tries = 0; tries < 20 && put < wanted; tries++) {
      int at = 1 + random.nextInt(made.size() - 1);
      Note to = made.get(at);
      Note from = made.get(at - 1);
      double gap = to.onsetBeats() - from.onsetBeats();
      int pitch = Place.step(there.scale(), to.pitch(), random.nextBoolean() ? 1 : -1);
      if (pitch == to.pitch() || gap < 0.45 || from.durationBeats() <= 0.25) {
        continue;
      }
      if (random.nextBoolean() && to.durationBeats() > 0.3) {
        made.set(at, new Note(to.onsetBeats() + 0.25, to.durationBeats() - 0.2, to.pitch()));
        made.add(at, new Note(to.onsetBeats(), 0.2, pitch));
        if (at + 2 < made.size()
            && made.get(at + 1).onsetBeats() + 0.2 > made.get(at + 2).onsetBeats()) {
          return Optional.empty();
        }
      } else {
        made.add(at, new Note(to.onsetBeats() - 0.25, 0.2, pitch));
      }
      put++;
    }
    return put == 0 ? Optional.empty() : Optional.of(made);
  }

  Place home() {
    return home;
  }

  Place there() {
    return there;
  }
}
