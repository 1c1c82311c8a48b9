package holdfast.bench.motif;

import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.motif.Priors;
import holdfast.motif.Treatment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Cases in thousands, the same ones for the same seed. */
final class LabelledSet {

  /** A quarter of the cases are new material; the treatments share the rest evenly. */
  private static final int NEW_IN = 4;

  private final List<Chart> charts = ChartLibrary.names().stream().map(ChartLibrary::open).toList();
  private final Performer performer;
  private final IdeaMaker maker;
  private final Known known;
  private final boolean writtenIdea;

  /**
   * @param writtenIdea whether the judge is given the idea as written; else as it was played, noise
   *     and all
   */
  LabelledSet(Performer performer, IdeaMaker maker, Known known, boolean writtenIdea) {
    this.performer = performer;
    this.maker = maker;
    this.known = known;
    this.writtenIdea = writtenIdea;
  }

  /** The cases of even number. */
  List<Case> tuning(int size, long seed) {
    return everyOther(make(size, seed), 0);
  }

  /** The cases of odd number. */
  List<Case> heldOut(int size, long seed) {
    return everyOther(make(size, seed), 1);
  }

  private static List<Case> everyOther(List<Case> cases, int from) {
    List<Case> half = new ArrayList<>();
    for (int i = from; i < cases.size(); i += 2) {
      half.add(cases.get(i));
    }
    return half;
  }

  List<Case> make(int size, long seed) {
    Random random = new Random(seed);
    List<Case> cases = new ArrayList<>();
    while (cases.size() < size) {
      one(treatment(random), random).ifPresent(cases::add);
    }
    return cases;
  }

  /** Ideas and the same ideas in these clothes, elsewhere in their charts. */
  List<Case> dressed(Dress dress, int size, long seed) {
    Random random = new Random(seed);
    List<Case> cases = new ArrayList<>();
    while (cases.size() < size) {
      Two two = two(random);
      List<Note> written = idea(two.home(), random);
      new Making(two.home(), two.there(), written, random)
          .dressed(dress)
          .map(phrase -> played(dress.made(), two.home(), two.there(), written, phrase, 0, random))
          .ifPresent(cases::add);
    }
    return cases;
  }

  /** Two places of one chart. */
  private record Two(Place home, Place there) {}

  private Two two(Random random) {
    Chart chart = charts.get(random.nextInt(charts.size()));
    return new Two(place(chart, random), place(chart, random));
  }

  private List<Note> idea(Place place, Random random) {
    return maker.make(place, 3 + random.nextInt(5), random);
  }

  private Optional<Case> one(Treatment made, Random random) {
    Two two = two(random);
    return one(made, two.home(), two.there(), idea(two.home(), random), random);
  }

  private Optional<Case> one(
      Treatment made, Place home, Place there, List<Note> written, Random random) {
    double shift = random.nextInt(4) == 0 ? (random.nextInt(4) - 1) * 0.5 : 0;
    return new Making(home, there, written, random)
        .make(made, maker)
        .map(phrase -> played(made, home, there, written, phrase, shift, random));
  }

  private Case played(
      Treatment made,
      Place home,
      Place there,
      List<Note> written,
      List<Note> phrase,
      double shift,
      Random random) {
    List<Note> moved =
        phrase.stream()
            .map(x -> new Note(there.beat() + shift + x.onsetBeats(), x.durationBeats(), x.pitch()))
            .toList();
    List<Note> heardIdea = writtenIdea ? written : performer.play(written, home.tempo(), random);
    boolean chords = known != Known.NOTES_ALONE;
    Motif idea =
        (chords ? Motif.over(home.harmony(), heardIdea) : Motif.of(heardIdea))
            .heard(writtenIdea ? 0 : 1);
    Context context =
        new Context(
            chords ? Optional.of(there.changes()) : Optional.empty(),
            chords ? there.changes().key() : Optional.empty(),
            known == Known.CHORDS_AND_PLAYER ? performer.player : Player.UNKNOWN,
            4,
            Priors.START);
    return new Case(
        idea,
        performer.play(moved, there.tempo(), random),
        context,
        made,
        Readings.of(made, written, phrase),
        Readings.families(made, written, phrase));
  }

  /**
   * One idea, and phrases made from it all over its chart.
   *
   * @param written the idea as it was meant
   * @param opening as it was heard
   */
  record Take(Motif written, Motif opening, List<Case> phrases) {}

  /** Takes of so many phrases. */
  List<Take> takes(int size, int phrases, long seed) {
    Random random = new Random(seed);
    List<Take> takes = new ArrayList<>();
    while (takes.size() < size) {
      Chart chart = charts.get(random.nextInt(charts.size()));
      Place home = place(chart, random);
      List<Note> written = idea(home, random);
      List<Note> heard = performer.play(written, home.tempo(), random);
      List<Case> cases = new ArrayList<>();
      while (cases.size() < phrases) {
        one(treatment(random), home, place(chart, random), written, random).ifPresent(cases::add);
      }
      takes.add(
          new Take(
              Motif.over(home.harmony(), written),
              Motif.over(home.harmony(), heard).heard(1),
              cases));
    }
    return takes;
  }

  private static Treatment treatment(Random random) {
    Treatment[] all = Treatment.values();
    return random.nextInt(NEW_IN) == 0 ? Treatment.NEW : all[random.nextInt(all.length - 1)];
  }

  private static Place place(Chart chart, Random random) {
    int bars = (int) Math.round(chart.form().lengthBeats() / 4);
    return new Place(chart.changes(), 4.0 * random.nextInt(bars), chart.tempo());
  }

  /** Pairs of phrases that have nothing to do with each other. */
  List<Case> strangers(int size, long seed) {
    Random random = new Random(seed);
    List<Case> cases = new ArrayList<>();
    while (cases.size() < size) {
      Two two = two(random);
      List<Note> one = idea(two.home(), random);
      List<Note> other = idea(two.there(), random);
      cases.add(played(Treatment.NEW, two.home(), two.there(), one, other, 0, random));
    }
    return cases;
  }
}
