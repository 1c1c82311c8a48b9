package holdfast.carry;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Answers "and over this chord?" with at most two ways that truly differ. A pure function. */
public final class Carrying {

  /** So many ways of each frame are looked at before two are chosen that differ. */
  private static final int LOOKED_AT = 12;

  private static final int MOST_ANSWERS = 2;

  private Carrying() {}

  /**
   * The cheapest ways, cheapest first: one, or two that differ in a note that counts or in two
   * notes. Where the idea cannot be kept whole (the range is too narrow, or no note rests), the
   * reasons say what had to give.
   */
  public static List<Adaptation> choices(Question question) {
    List<Slot> slots = Slot.of(question);
    List<Found> found = search(question, slots, false);
    if (found.isEmpty()) {
      found = search(question, slots, true);
    }
    List<Found> chosen = new ArrayList<>();
    for (Found way : found) {
      boolean worthSaying =
          chosen.isEmpty()
              || (way.cost() < Costs.LAST_RESORT
                  && way.cost() <= chosen.get(0).cost() + Costs.WORTH_SAYING
                  && chosen.stream().allMatch(other -> trulyDiffer(way, other, slots)));
      if (worthSaying && chosen.size() < MOST_ANSWERS) {
        chosen.add(way);
      }
    }
    return chosen.stream().map(way -> way.told(question, slots)).toList();
  }

  private static List<Found> search(Question question, List<Slot> slots, boolean lastResort) {
    List<Tones> tones = Tones.of(slots, question.changes().key());
    List<Integer> ideaLetters = Pricing.ideaLetters(question);
    List<Frame> frames = Frame.of(question, slots);
    Map<List<Integer>, Found> best = new LinkedHashMap<>();
    for (Frame frame : frames) {
      Pricing pricing = new Pricing(question, slots, tones, ideaLetters, frame, lastResort);
      for (Lattice.Path path :
          Lattice.cheapest(LOOKED_AT, slots.size(), Pricing.choices(), pricing)) {
        List<Integer> pitches = new ArrayList<>();
        for (int i = 0; i < slots.size(); i++) {
          pitches.add(pricing.pitch(i, path.choices().get(i)));
        }
        Way way = way(frames, frame, pitches);
        double cost = frame.cost() + path.cost() + asAWhole(question, frame, pitches, way, pricing);
        best.merge(
            pitches, new Found(frame, pitches, way, cost), (a, b) -> b.cost() < a.cost() ? b : a);
      }
    }
    return best.values().stream().sorted(Comparator.comparingDouble(Found::cost)).toList();
  }

  /** How the idea got there, told from where it came. */
  private static Way way(List<Frame> frames, Frame frame, List<Integer> pitches) {
    int shift = pitches.get(0) - frame.source().pitch(0);
    boolean together = true;
    for (int i = 1; i < pitches.size(); i++) {
      together &= pitches.get(i) - frame.source().pitch(i) == shift;
    }
    if (together && (shift == 0 || frame.kind() == Frame.Kind.PARALLEL)) {
      return shift == 0 ? Way.LITERAL : Way.TRANSPOSED;
    }
    boolean byScale =
        frames.stream()
            .anyMatch(
                f ->
                    f.kind() == Frame.Kind.SCALE_STEP
                        && f.source().equals(frame.source())
                        && f.base().equals(pitches));
    return byScale ? Way.SEQUENCE : together ? Way.TRANSPOSED : Way.SKEWED;
  }

  /** What only the whole can say: whether it is kept, what returns, what the player likes. */
  private static double asAWhole(
      Question question, Frame frame, List<Integer> pitches, Way way, Pricing pricing) {
    double cost = question.habit().cost(way);
    if (way == Way.LITERAL && pricing.fits(pitches)) {
      cost += Costs.LITERAL_FITS;
    }
    if (way == Way.TRANSPOSED && frame.kind() == Frame.Kind.STAYS) {
      cost += Costs.MOVES_FOR_NOTHING;
    }
    for (int i = 1; i < pitches.size(); i++) {
      int k = lastSame(question.idea(), i);
      if (k >= 0 && !pitches.get(k).equals(pitches.get(i))) {
        cost += Costs.RETURNS_DIFFERENTLY;
      }
    }
    return cost;
  }

  /** The last note before this one on the same pitch in the idea; -1 where there is none. */
  private static int lastSame(Statement idea, int i) {
    int k = i - 1;
    while (k >= 0 && idea.pitch(k) != idea.pitch(i)) {
      k--;
    }
    return k;
  }

  /** Two ways differ when a note that counts differs, or two notes do. */
  private static boolean trulyDiffer(Found one, Found other, List<Slot> slots) {
    int different = 0;
    boolean aNoteThatCounts = false;
    for (int i = 0; i < slots.size(); i++) {
      if (!one.pitches().get(i).equals(other.pitches().get(i))) {
        different++;
        aNoteThatCounts |= slots.get(i).counts();
      }
    }
    return aNoteThatCounts || different > 1;
  }

  /**
   * One way that was found.
   *
   * @param frame where it started from
   * @param pitches a pitch for each note
   * @param way how it got there
   * @param cost all costs together
   */
  record Found(Frame frame, List<Integer> pitches, Way way, double cost) {

    Adaptation told(Question question, List<Slot> slots) {
      List<Note> notes = new ArrayList<>();
      for (int i = 0; i < pitches.size(); i++) {
        Note note = question.idea().notes().get(i);
        notes.add(new Note(note.onsetBeats(), note.durationBeats(), pitches.get(i)));
      }
      return new Adaptation(notes, way, cost, Reasons.of(question, slots, this));
    }
  }
}
