package holdfast.phrase;

import holdfast.listening.PlayedNote;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Where would the cuts have been, had the whole take been known?
 *
 * <p>Each way to cut the take costs the sum of what its phrases cost as phrases ({@link
 * SegmentCost}) and what its cuts cost as silences; the cheapest way is found by dynamic
 * programming over the places of the cuts. A long rest invites a cut and a short one forbids it,
 * but not so strongly that a good restatement on either side, or across, would not outweigh it: so
 * restatements that joined are split, and one that was broken by a hesitation is made whole.
 */
public final class PhraseRevision {

  /** No player rests this long in the middle of an idea, in seconds. */
  private static final double LONGEST_REST_INSIDE = 2;

  /** Longer phrases are not looked at anew, only cut as they were. */
  private static final int MOST_NOTES = 32;

  /** A note that lasts so many times longer than usual may be the last of its phrase. */
  private static final double LONG_IOI = 1.5;

  /** In phrases this long, two ideas may hide without anything on the surface between them. */
  private static final int ROOM_FOR_TWO = 6;

  /** Odds of a cut rise with this power of the rest. */
  private static final double STEEPNESS = 4;

  /** Log-odds of a cut where there is no rest, and where there is any amount of it. */
  private static final double LEAST = -4;

  private static final double MOST = 2;

  /** What the strength of the local boundary adds to the log-odds, and where it adds nothing. */
  private static final double FEELING = 4;

  private static final double USUAL_FEELING = 0.3;

  private PhraseRevision() {}

  /**
   * The phrases of the whole take in the light of all of it.
   *
   * @param live phrases of a take, as they were cut live, in order and without gaps
   * @param cost what is known of the idea; indexes count the notes of these phrases from 0
   */
  public static Revision of(List<Phrase> live, SegmentCost cost) {
    List<PlayedNote> notes = live.stream().flatMap(p -> p.notes().stream()).toList();
    if (notes.isEmpty()) {
      return new Revision(List.of(), List.of());
    }
    int[] starts = cheapest(live, places(live, notes), notes, cost);
    return regroup(live, notes, starts);
  }

  /** Log-odds that a phrase ends after each note, by the silence after it and its surroundings. */
  private static double[] cutOdds(List<PlayedNote> notes) {
    double[] odds = new double[Math.max(0, notes.size() - 1)];
    double[] pace = Pace.along(notes);
    double[] felt = LocalBoundaries.strengths(notes);
    for (int i = 0; i < odds.length; i++) {
      PlayedNote note = notes.get(i);
      double rest = rest(notes, i);
      double patience = Patience.inHindsight(pace[i], note.durationSeconds());
      double log = STEEPNESS * Math.log(Math.max(rest, 1e-3) / patience);
      double feeling = FEELING * (felt[i] - USUAL_FEELING);
      odds[i] = Math.max(LEAST, Math.min(MOST, log) + feeling);
    }
    return odds;
  }

  private static double rest(List<PlayedNote> notes, int i) {
    return notes.get(i + 1).onsetSeconds() - notes.get(i).endSeconds();
  }

  /** Where a phrase may start: where the live ones do, and where the surface hints at it. */
  private static int[] places(List<Phrase> live, List<PlayedNote> notes) {
    double[] pace = Pace.along(notes);
    List<Integer> places = new ArrayList<>();
    int at = 0;
    for (Phrase phrase : live) {
      places.add(at);
      int size = phrase.notes().size();
      boolean roomy = size >= ROOM_FOR_TWO && size <= MOST_NOTES;
      for (int i = at + 1; i < at + size; i++) {
        double ioi = notes.get(i).onsetSeconds() - notes.get(i - 1).onsetSeconds();
        if (roomy
            || rest(notes, i - 1) > Patience.SHORTEST_SECONDS
            || ioi > LONG_IOI * pace[i - 1]) {
          places.add(i);
        }
      }
      at += size;
    }
    places.add(at);
    return places.stream().mapToInt(Integer::intValue).toArray();
  }

  /** The starts of the cheapest phrases, as indexes of notes. */
  private static int[] cheapest(
      List<Phrase> live, int[] places, List<PlayedNote> notes, SegmentCost cost) {
    double[] cutOdds = cutOdds(notes);
    double[] best = new double[places.length];
    int[] from = new int[places.length];
    Arrays.fill(best, 1, places.length, Double.POSITIVE_INFINITY);
    int l = 0;
    int liveEnd = 0;
    for (int a = 0; a < places.length - 1; a++) {
      int start = places[a];
      if (start == liveEnd) {
        liveEnd += live.get(l++).notes().size();
      }
      boolean far = false;
      for (int b = a + 1; b < places.length; b++) {
        int end = places[b];
        far = far || end - start > MOST_NOTES || restsInside(notes, places, a, b);
        if (far && end > liveEnd && b > a + 1) {
          break;
        }
        if (far && end < liveEnd && b > a + 1) {
          continue;
        }
        double cut = end < notes.size() ? cutOdds[end - 1] : 0;
        double total = best[a] + cost.of(start, end) - cut;
        if (total < best[b]) {
          best[b] = total;
          from[b] = a;
        }
      }
    }
    List<Integer> starts = new ArrayList<>();
    for (int b = places.length - 1; b > 0; b = from[b]) {
      starts.add(places[from[b]]);
    }
    Collections.reverse(starts);
    return starts.stream().mapToInt(Integer::intValue).toArray();
  }

  /** Whether the last place before b, which a phrase from a to b would hold, is a long rest. */
  private static boolean restsInside(List<PlayedNote> notes, int[] places, int a, int b) {
    return b > a + 1 && rest(notes, places[b - 1] - 1) > LONGEST_REST_INSIDE;
  }

  private static Revision regroup(List<Phrase> live, List<PlayedNote> notes, int[] starts) {
    int zero = live.get(0).firstNote();
    double decided = live.get(live.size() - 1).decidedSeconds();
    List<Phrase> revised = new ArrayList<>();
    List<Revision.Regrouping> changes = new ArrayList<>();
    int l = 0;
    int s = 0;
    while (s < starts.length) {
      int firstLive = l;
      int firstRevised = s;
      int liveEnd = live.get(l++).endNote() - zero;
      int end = endOf(starts, s++, notes.size());
      while (liveEnd != end) {
        if (liveEnd < end) {
          liveEnd = live.get(l++).endNote() - zero;
        } else {
          end = endOf(starts, s++, notes.size());
        }
      }
      if (l - firstLive == 1 && s - firstRevised == 1) {
        revised.add(live.get(firstLive));
        continue;
      }
      changes.add(
          new Revision.Regrouping(firstLive, l - firstLive, firstRevised, s - firstRevised));
      for (int i = firstRevised; i < s; i++) {
        int to = endOf(starts, i, notes.size());
        Ending ending = endingAt(live, notes, to);
        revised.add(new Phrase(notes.subList(starts[i], to), zero + starts[i], ending, decided));
      }
    }
    return new Revision(revised, changes);
  }

  private static int endOf(int[] starts, int i, int all) {
    return i + 1 < starts.length ? starts[i + 1] : all;
  }

  private static Ending endingAt(List<Phrase> live, List<PlayedNote> notes, int end) {
    if (end == notes.size()) {
      return live.get(live.size() - 1).ending();
    }
    return rest(notes, end - 1) < PhraseCutter.NO_REST_SECONDS ? Ending.RESTART : Ending.REST;
  }
}
