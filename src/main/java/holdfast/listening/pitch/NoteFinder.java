package holdfast.listening.pitch;

import java.util.Arrays;

/**
 * Which notes do the frames make?
 *
 * <p>The cheapest story wins, by dynamic programming: a story is a row of notes, each on one level
 * pitch, and gaps. Every frame costs by how far it lies from its note, but never more than a fixed
 * sum, so that vibrato, glides and scoops stay in the note; every new note costs too, less where
 * the level or the spectrum shows an attack, so that a note struck again on its pitch is a new one
 * (a Potts model; compare the note model of Mauch et al. 2015, "Computer-aided melody note
 * transcription using the Tony software"). Where a note settles is the middle of its own frames.
 */
final class NoteFinder implements NoteStage {

  /** Cents between the pitches that a note may stand on while it is being found. */
  private static final int STEP = 20;

  /** Lowest pitch of the grid, in cents: C1. */
  private static final int LOWEST = 2400;

  /** Steps of the grid: up to A8, over the piccolo. */
  private static final int STEPS = 450;

  /** Pitches so many steps from a frame and more are all as far from it. */
  private static final int FAR = 4;

  /** A frame this far from its note costs half a nat: the unsteadiness of trained singers. */
  private static final double SPREAD_CENTS = 35;

  /** No sung frame costs a note more than this, in nats. */
  private static final float FARTHEST = 2.0f;

  /** A frame that is not sung costs a note this much: 40 ms of it make a gap. */
  private static final float UNSUNG_IN_NOTE = 0.7f;

  /** A sung frame costs a gap this much. */
  private static final float SUNG_IN_GAP = 0.9f;

  /** Cost of a gap after a note. */
  private static final double GAP_AFTER_NOTE = 2;

  /** A level that rises by this many decibels within 40 ms begins to look like an attack. */
  private static final double RISE_DB = 5;

  /** What each decibel over that takes off the cost of a new note. */
  private static final double PER_RISE_DB = 3.5;

  /** A spectrum that is new by this share begins to look like an attack. */
  private static final double NEW_SPECTRUM = 0.16;

  private static final double PER_NEW_SPECTRUM = 120;

  /** A note's own harmonics must rise by more than this with its attack, in decibels. */
  private static final double OWN_RISE_DB = 3;

  /** What each decibel over that lets an attack count at most. */
  private static final double PER_OWN_RISE_DB = 7;

  /** Frames before an attack among which the own harmonics were softest: 50 ms. */
  private static final int OWN_FRAMES = 10;

  /** Frames within which they must have risen after it: 40 ms, a long window's length. */
  private static final int CONFIRMED_WITHIN = 8;

  /** A new note never costs less than this, or noise would chop. */
  private static final double CHEAPEST = -8;

  /** Frames over which a rise is measured: 40 ms. */
  private static final int RISE_FRAMES = 8;

  /** Frames within which the strongest attack speaks alone: 50 ms. */
  private static final int ATTACK_APART = 10;

  /** Shorter than this is no note, in frames: 60 ms. */
  private static final int SHORTEST = 12;

  /** A sound that comes back within this, in frames, may be the old one: 0.6 s. */
  private static final int RINGING = 120;

  /** It died away where it ended this far under its loudest, in decibels; else it was stopped. */
  private static final double DIED_DB = 10;

  /** It is the old one where it is no louder than that was at its end, by this, in decibels. */
  private static final double RINGING_DB = 3;

  /** Frames that are remembered: 41 s. A longer note is measured on its end. */
  private static final int MEMORY = 1 << 13;

  private final NoteListener listener;
  private final int lag;
  private final double noteOutOfGap;
  private final double newNote;
  private final int earliest;
  private final float[] distance = new float[FAR + 1];

  /** By step: what the best story costs that now stands on it. Good within the window. */
  private final float[] cost = new float[STEPS + 1];

  private final int[] start = new int[STEPS + 1];
  private final int[] before = new int[STEPS + 1];

  private final float[] pitch = new float[MEMORY];
  private final boolean[] sung = new boolean[MEMORY];
  private final float[] sure = new float[MEMORY];
  private final float[] level = new float[MEMORY];
  private final float[] own = new float[MEMORY];

  /** By frame: the segment that stood when a note began there, and when a gap began there. */
  private final int[][] linkState = new int[2][MEMORY];

  private final int[][] linkStart = new int[2][MEMORY];
  private final int[][] linkBefore = new int[2][MEMORY];
  private final float[] attack = new float[MEMORY];
  private final float[] scratch = new float[MEMORY];

  /**
   * The first step of the window and the one after its last. Outside of it lie the steps that no
   * pitch was near of late: they have one story and one cost, which is kept once.
   */
  private int low;

  private int high;
  private float farCost = 1e6f;
  private int farStart;
  private int farBefore;

  /** The cheapest of the notes, by its step. */
  private int cheapest;

  private int now = -1;
  private int told;
  private int openStart = -1;
  private int lastEnd = -RINGING;
  private double lastCents;
  private double lastDiedDb;

  /** The last attack: its frame and how much it speaks for a new note, in nats. */
  private int struck = -1000;

  private double blow;

  private static final int GAP = STEPS;

  /**
   * A finder for one take.
   *
   * @param patience how long to wait before telling
   * @param listener told each note
   */
  NoteFinder(Patience patience, NoteListener listener) {
    this.listener = listener;
    this.noteOutOfGap = patience.noteOutOfGap();
    this.newNote = patience.newNote();
    this.lag = patience.end();
    this.earliest = patience.begin();
    for (int i = 0; i <= FAR; i++) {
      double cents = i * STEP;
      distance[i] = (float) Math.min(FARTHEST, cents * cents / (2 * SPREAD_CENTS * SPREAD_CENTS));
    }
    cost[0] = farCost;
    cost[GAP] = 0;
  }

  @Override
  public void frame(
      long frame,
      double cents,
      boolean isSung,
      double sureness,
      double levelDb,
      double ownDb,
      double flux) {
    now = (int) frame;
    int slot = now & (MEMORY - 1);
    pitch[slot] = (float) cents;
    sung[slot] = isSung;
    sure[slot] = (float) sureness;
    level[slot] = (float) levelDb;
    own[slot] = (float) ownDb;
    double attack = attack(slot, flux);
    int best = cheapest;
    // A note that has hardly begun is not struck again: or every attack would be two.
    boolean again = attack > 0 && now - start[best] >= SHORTEST;
    float outOfNote = cost[best] + (float) (again ? Math.max(CHEAPEST, newNote - attack) : newNote);
    // Only a gap that is the best story so far leads to a note, or a gap of one frame would be the
    // cheap way from note to note.
    float outOfGap = cost[GAP] <= cost[best] ? cost[GAP] + (float) noteOutOfGap : Float.MAX_VALUE;
    float toNote = Math.min(outOfNote, outOfGap);
    int begun = again && outOfNote <= outOfGap ? struck : now;
    link(0, slot, outOfGap < outOfNote ? GAP : best);
    link(1, slot, best);
    float toGap = cost[best] + (float) GAP_AFTER_NOTE;
    int middle = (int) Math.round((cents - LOWEST) / STEP);
    if (isSung) {
      widen(middle - FAR + 1, middle + FAR);
    }
    for (int m = low; m < high; m++) {
      float stay = cost[m];
      if (toNote < stay) {
        stay = toNote;
        start[m] = begun;
        before[m] = now;
      }
      float here = isSung ? distance[Math.min(FAR, Math.abs(m - middle))] : UNSUNG_IN_NOTE;
      cost[m] = stay + here;
    }
    if (toNote < farCost) {
      farCost = toNote;
      farStart = begun;
      farBefore = now;
    }
    farCost += isSung ? FARTHEST : UNSUNG_IN_NOTE;
    if (toGap < cost[GAP]) {
      cost[GAP] = toGap;
      start[GAP] = now;
      before[GAP] = now;
    }
    cost[GAP] += isSung ? SUNG_IN_GAP : 0;
    float least = Math.min(cost[GAP], farCost);
    for (int m = low; m < high; m++) {
      least = Math.min(least, cost[m]);
    }
    for (int m = low; m < high; m++) {
      cost[m] -= least;
    }
    farCost -= least;
    cost[GAP] -= least;
    cheapest = cheapestNote();
    narrow();
    tell(now - lag);
  }

  /**
   * How much speaks for a note that was struck lately, in nats: an attack, as far as the note's own
   * harmonics rise with it. Those of a voice that sings on do not rise when a chord is struck in
   * the backing.
   */
  private double attack(int slot, double flux) {
    double here = attackAt(slot, flux);
    if (here > 0 && (now - struck > CONFIRMED_WITHIN || here > blow)) {
      struck = now;
      blow = here;
    }
    if (now - struck > CONFIRMED_WITHIN) {
      return 0;
    }
    float lowest = own[slot];
    for (int back = 1; back <= Math.min(now - struck + OWN_FRAMES, now); back++) {
      lowest = Math.min(lowest, own[(now - back) & (MEMORY - 1)]);
    }
    return Math.min(blow, PER_OWN_RISE_DB * Math.max(0, own[slot] - lowest - OWN_RISE_DB));
  }

  /** How much the frame looks like an attack, in nats; only the strongest of its neighbours. */
  private double attackAt(int slot, double flux) {
    float lowest = level[slot];
    for (int back = 1; back <= Math.min(RISE_FRAMES, now); back++) {
      lowest = Math.min(lowest, level[(now - back) & (MEMORY - 1)]);
    }
    double rise = level[slot] - lowest;
    double strength =
        PER_RISE_DB * Math.max(0, rise - RISE_DB)
            + PER_NEW_SPECTRUM * Math.max(0, flux - NEW_SPECTRUM);
    attack[slot] = (float) strength;
    for (int back = 1; back <= Math.min(ATTACK_APART, now); back++) {
      if (attack[(now - back) & (MEMORY - 1)] > strength * 0.7f) {
        return 0;
      }
    }
    return strength;
  }

  private void link(int kind, int slot, int state) {
    linkState[kind][slot] = state;
    linkStart[kind][slot] = start[state];
    linkBefore[kind][slot] = before[state];
  }

  /** Makes the window hold these steps, as far as the grid has them. */
  private void widen(int from, int to) {
    int first = Math.max(0, Math.min(STEPS, from));
    int last = Math.max(0, Math.min(STEPS, to));
    if (first >= last) {
      return;
    }
    if (low == high) {
      low = first;
      high = first;
    }
    while (low > first) {
      low--;
      far(low);
    }
    while (high < last) {
      far(high);
      high++;
    }
  }

  /** Takes those from the ends of the window that are as all outside of it. */
  private void narrow() {
    while (low < high && isFar(low)) {
      low++;
    }
    while (low < high && isFar(high - 1)) {
      high--;
    }
  }

  private void far(int step) {
    cost[step] = farCost;
    start[step] = farStart;
    before[step] = farBefore;
  }

  private boolean isFar(int step) {
    return cost[step] == farCost && start[step] == farStart && before[step] == farBefore;
  }

  /** The lowest of the cheapest; its story can be read even where it lies outside of the window. */
  private int cheapestNote() {
    int best = low;
    for (int m = low + 1; m < high; m++) {
      if (cost[m] < cost[best]) {
        best = m;
      }
    }
    int outside = low > 0 ? 0 : high;
    boolean within = low < high && (outside == STEPS || cost[best] < farCost);
    if (within || (low < high && cost[best] == farCost && best < outside)) {
      return best;
    }
    far(outside);
    return outside;
  }

  private int best() {
    return cost[cheapest] < cost[GAP] ? cheapest : GAP;
  }

  /**
   * Tells what the best story holds: every segment that has ended before {@code settled} or before
   * a note that already stands, and then the note that stands now.
   */
  private void tell(int settled) {
    int state = best();
    int begun = start[state];
    boolean stands = state != GAP && now + 1 - begun >= earliest;
    int due = stands ? Math.max(settled, begun) : settled;
    while (told < due) {
      // The oldest segment that has not been told: back along the links, few since the lag is
      // short.
      int segment = state;
      int from = begun;
      int link = before[state];
      int end = now + 1;
      while (from > told) {
        end = from;
        int kind = segment == GAP ? 1 : 0;
        int at = link & (MEMORY - 1);
        segment = linkState[kind][at];
        from = linkStart[kind][at];
        link = linkBefore[kind][at];
      }
      if (end > due) {
        break;
      }
      close(segment, Math.max(from, told), end);
      told = end;
    }
    if (stands && told >= begun) {
      open(begun, now + 1);
    } else if (state == GAP && told >= begun) {
      openNothing();
    }
  }

  private void open(int from, int to) {
    if (openStart >= 0 && Math.abs(openStart - from) <= ATTACK_APART) {
      return;
    }
    openNothing();
    double cents = settle(from, to);
    if (to - from >= earliest && !ringsOn(from, to, cents)) {
      openStart = from;
      listener.began(from * Frames.HOP_SECONDS, cents, loudness(from, to));
    }
  }

  private void openNothing() {
    if (openStart >= 0) {
      openStart = -1;
      listener.takenBack();
    }
  }

  private void close(int state, int from, int to) {
    if (state == GAP) {
      openNothing();
      return;
    }
    int first = Math.max(from, now - MEMORY + 1);
    int last = to;
    while (last > first && !sung[(last - 1) & (MEMORY - 1)]) {
      last--;
    }
    if (last - from < SHORTEST) {
      openNothing();
      return;
    }
    double cents = settle(from, last);
    if (ringsOn(from, last, cents)) {
      openNothing();
      return;
    }
    if (openStart < 0 || Math.abs(openStart - from) > ATTACK_APART) {
      openNothing();
      listener.began(from * Frames.HOP_SECONDS, cents, loudness(from, last));
    }
    openStart = -1;
    lastEnd = last;
    lastDiedDb = loudness(from, last) - level[(last - 1) & (MEMORY - 1)];
    lastCents = cents;
    double sum = 0;
    for (int i = first; i < last; i++) {
      sum += sung[i & (MEMORY - 1)] ? sure[i & (MEMORY - 1)] : 0;
    }
    listener.ended(
        from * Frames.HOP_SECONDS,
        last * Frames.HOP_SECONDS,
        cents,
        loudness(from, last),
        sum / (last - first));
  }

  /** Whether it is a dying string that was lost for a moment, and no new note. */
  private boolean ringsOn(int from, int to, double cents) {
    return lastEnd > 0
        && from - lastEnd > 0
        && from - lastEnd <= RINGING
        && lastDiedDb >= DIED_DB
        && Math.abs(cents - lastCents) < 50
        && loudness(from, to) <= level[(lastEnd - 1) & (MEMORY - 1)] + RINGING_DB;
  }

  /** Where a note settles: the mean of its frames near their median, its attack left out. */
  private double settle(int from, int to) {
    int length = to - from;
    int skip = Math.min(10, length / 4);
    int first = Math.max(from + skip, now - MEMORY + 1);
    int count = 0;
    for (int i = first; i < to; i++) {
      if (sung[i & (MEMORY - 1)]) {
        scratch[count++] = pitch[i & (MEMORY - 1)];
      }
    }
    if (count == 0) {
      return pitch[(to - 1) & (MEMORY - 1)];
    }
    Arrays.sort(scratch, 0, count);
    double median = scratch[count / 2];
    double sum = 0;
    int near = 0;
    for (int i = 0; i < count; i++) {
      if (Math.abs(scratch[i] - median) <= 120) {
        sum += scratch[i];
        near++;
      }
    }
    return 0.5 * (median + sum / near);
  }

  private double loudness(int from, int to) {
    double loudest = -120;
    for (int i = Math.max(from, now - MEMORY + 1); i < to; i++) {
      loudest = Math.max(loudest, level[i & (MEMORY - 1)]);
    }
    return loudest;
  }

  /** Ends the take: tells all that is left. */
  void end() {
    for (int i = 0; i <= lag + 10; i++) {
      frame(now + 1L, 6900, false, 0, -120, -120, 0);
    }
  }

  /** Seconds up to which every end and every beginning has been told. */
  double toldSeconds() {
    return Math.max(0, now - earliest - ATTACK_APART) * Frames.HOP_SECONDS;
  }
}
