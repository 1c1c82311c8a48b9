package holdfast.listening.midi;

import holdfast.listening.Heard;
import holdfast.listening.LateOffs;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayEvent.NoteOff;
import holdfast.listening.PlayEvent.NoteOn;
import holdfast.listening.PlayedNote;
import holdfast.listening.PlayedNotes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Thins what fingers do on a keyboard to the one line that is meant: a filter from {@link Heard} to
 * {@link Heard}, the same for a live keyboard and for a file, whatever the pieces a take comes in.
 *
 * <ul>
 *   <li>The latest note leads: in legato the finger of the last note is still down, and that note
 *       ends where the new one begins.
 *   <li>Notes struck together are a chord, of which the top note is the line's; two notes an octave
 *       apart are one note, in the octave that lies nearer to the line so far.
 *   <li>A short, soft touch of a neighbouring key while another note sounds is a slip and is left
 *       out; so is a note crushed into a longer one.
 *   <li>A chord, or a note an octave or more below, that comes while the line holds a note belongs
 *       to the other hand; so does a full chord far below the line.
 * </ul>
 *
 * <p>What leaves is strictly ordered: onsets go forward, a note ends before or when the next
 * begins, every note ends once. A single note is decided within {@value #LEGATO_SECONDS} s of its
 * onset, a chord within {@value #SLIP_SECONDS} s more of its last; until then the promise of what
 * is heard stays behind.
 */
public final class MonophonicLine {

  /** Keys that follow each other so closely, while the earlier is down, are struck together. */
  static final double TOGETHER_SECONDS = 0.04; // a trill's keys follow in 0.07 s at the fastest

  /** A rolled chord takes no longer than this. */
  static final double ROLL_SECONDS = 0.15; // common practice, no source

  /** A slip is not longer than this. */
  static final double SLIP_SECONDS = 0.08; // half of a fast sixteenth at 90; from experience

  /** A slip is at most so loud, as a part of the note it belongs to. */
  static final double SLIP_LOUDNESS = 0.6;

  /** How far the key beside is, in semitones: from a white key to the next white one is 1 or 2. */
  static final int NEIGHBOUR = 2;

  /** How soon after a slip its note must come. */
  static final double SLIP_GAP_SECONDS = 0.02;

  /** Fingers in legato overlap by less than this; a longer overlap is held on purpose. */
  static final double LEGATO_SECONDS = 0.15; // from experience

  /** A key that is down longer than this is stuck, and nothing is judged by it. */
  static final double STUCK_SECONDS = 10;

  /** Notes shorter than this have no length that can be heard. */
  private static final double SHORTEST_SECONDS = 0.001;

  private static final int OCTAVE = 12;

  /** So many notes at once are a chord of the other hand where they lie far below the line. */
  private static final int FULL_CHORD = 3;

  /** More keys than ten fingers and a forearm strike at once. */
  private static final int MOST_TOGETHER = 64;

  private final Voice[] down = new Voice[128];
  private final LateOffs lateOffs = new LateOffs();
  private final List<Voice> undecided = new ArrayList<>();
  private final List<PlayEvent> out = new ArrayList<>();
  private Voice line;
  private boolean lineSounds;
  private double now = Double.NEGATIVE_INFINITY;

  /** A key on its way: down at its onset, up at its end, which is infinite while it is down. */
  private static final class Voice {
    final NoteOn on;
    final double onset;
    final boolean overlaps;
    double end = Double.POSITIVE_INFINITY;

    /**
     * A key that went down.
     *
     * @param overlaps whether the key before it was down at that moment
     */
    Voice(NoteOn on, double onset, boolean overlaps) {
      this.on = on;
      this.onset = onset;
      this.overlaps = overlaps;
    }

    int pitch() {
      return on.pitch();
    }

    boolean isShort() {
      return end - onset <= SLIP_SECONDS;
    }
  }

  /** The line in notes that are whole already, as in a file. */
  public static List<PlayedNote> of(List<PlayedNote> notes) {
    Heard recording = Heard.recording(notes);
    MonophonicLine line = new MonophonicLine();
    List<PlayEvent> thinned = new ArrayList<>(line.hear(recording).events());
    double end = recording.upToSeconds();
    thinned.addAll(line.finish(end).events());
    return PlayedNotes.of(thinned, end);
  }

  /**
   * Hears the next piece of a take and gives the events of the line that are certain by now.
   *
   * @param heard what arrived; an event that is earlier than one before it counts as simultaneous
   * @return events of the line, and up to when they are all there
   */
  public Heard hear(Heard heard) {
    for (PlayEvent event : heard.events()) {
      now = Math.max(now, event.seconds());
      // What was struck before can be decided with what is known up to this moment, whether or not
      // the clock was looked at in between: that makes the line the same for any pieces.
      decide();
      if (event instanceof NoteOn on) {
        press(on);
      } else {
        release(event.pitch());
      }
    }
    now = Math.max(now, heard.upToSeconds());
    decide();
    return told(undecided.isEmpty() ? now : undecided.get(0).onset);
  }

  /** The take is over, or the keyboard went away: whatever is down goes up at this second. */
  public Heard finish(double seconds) {
    now = Math.max(now, seconds);
    lateOffs.forget();
    for (int pitch = 0; pitch < down.length; pitch++) {
      if (down[pitch] != null) {
        release(pitch);
      }
    }
    // Everything is up, so nothing that could come would change a decision.
    double over = now;
    now = Double.POSITIVE_INFINITY;
    decide();
    now = over;
    return told(over);
  }

  private Heard told(double upTo) {
    Heard told = new Heard(out, upTo);
    out.clear();
    return told;
  }

  private void press(NoteOn on) {
    int pitch = on.pitch();
    if (down[pitch] != null) {
      down[pitch].end = now;
      lateOffs.struckAgain(pitch);
    }
    Voice before = undecided.isEmpty() ? null : undecided.get(undecided.size() - 1);
    boolean overlaps = before != null && before.end == Double.POSITIVE_INFINITY;
    Voice voice = new Voice(on, now, overlaps);
    down[pitch] = voice;
    undecided.add(voice);
  }

  private void release(int pitch) {
    Voice voice = down[pitch];
    if (voice != null && !lateOffs.isLate(pitch, now - voice.onset)) {
      voice.end = now;
      down[pitch] = null;
    }
  }

  /**
   * Decides from the oldest note on, as far as what is known by now allows. A decision rests only
   * on what was known at the moment it fell due, never on when somebody asked.
   */
  private void decide() {
    while (!undecided.isEmpty()) {
      int size = together();
      List<Voice> group = undecided.subList(0, size);
      Voice next = size < undecided.size() ? undecided.get(size) : null;
      if (now < due(group, next)) {
        break;
      }
      Voice chosen = linesOwn(group, next);
      group.clear();
      if (chosen != null) {
        lead(chosen);
      }
    }
    double certain = undecided.isEmpty() ? now : undecided.get(0).onset;
    if (lineSounds && lineEnd() <= certain) {
      endLine(lineEnd());
    }
  }

  /** How many of the undecided notes, from the first, were struck together. */
  private int together() {
    Voice first = undecided.get(0);
    int size = 1;
    while (size < undecided.size() && size < MOST_TOGETHER) {
      Voice next = undecided.get(size);
      double gap = next.onset - undecided.get(size - 1).onset;
      boolean rolled =
          next.overlaps && gap <= TOGETHER_SECONDS && next.onset - first.onset <= ROLL_SECONDS;
      if (!rolled && gap >= SHORTEST_SECONDS) {
        break;
      }
      size++;
    }
    return size;
  }

  /** When everything that can change the decision on this group is known. */
  private double due(List<Voice> group, Voice next) {
    double due = next == null ? group.get(group.size() - 1).onset + TOGETHER_SECONDS : 0;
    for (Voice voice : group) {
      due = Math.max(due, Math.min(voice.end, voice.onset + SLIP_SECONDS));
      if (voice.isShort() && group.size() > 1) {
        due = Math.max(due, voice.end + SLIP_SECONDS);
      } else if (voice.isShort() && next == null) {
        due = Math.max(due, voice.end + SLIP_GAP_SECONDS);
      }
    }
    double onset = group.get(0).onset;
    if (isHeldOver(group)) {
      due = Math.max(due, Math.min(line.end, onset + LEGATO_SECONDS));
    }
    return due;
  }

  /** The note of the line among notes struck together, or null where none is meant. */
  private Voice linesOwn(List<Voice> group, Voice next) {
    List<Voice> meant = group.stream().filter(voice -> !isCrushed(voice, group)).toList();
    Voice top = meant.stream().max(Comparator.comparingInt(Voice::pitch)).orElseThrow();
    if ((meant.size() == 1 && isSlip(top, next)) || isOtherHand(group, meant, top)) {
      return null;
    }
    boolean isOneNoteInOctaves =
        meant.stream().allMatch(voice -> (top.pitch() - voice.pitch()) % OCTAVE == 0);
    if (!isOneNoteInOctaves || line == null) {
      return top;
    }
    Comparator<Voice> nearness =
        Comparator.comparingInt(voice -> Math.abs(voice.pitch() - line.pitch()));
    return meant.stream().min(nearness.thenComparingInt(voice -> -voice.pitch())).orElseThrow();
  }

  /** Crushed into another note of its group: over at once, while the other goes on. */
  private static boolean isCrushed(Voice voice, List<Voice> group) {
    return voice.isShort()
        && group.stream()
            .anyMatch(
                other ->
                    other.end > voice.end + SLIP_SECONDS
                        && (other.onset > voice.onset || isNeighbour(other, voice)));
  }

  /**
   * A short, soft touch of the key beside the one that is meant, which is down or comes at once.
   */
  private boolean isSlip(Voice voice, Voice next) {
    if (!voice.isShort()) {
      return false;
    }
    boolean besideTheHeld =
        lineSounds && line.end > voice.end && isNeighbour(line, voice) && isSofter(voice, line);
    boolean beforeTheNext =
        next != null
            && next.onset <= voice.end + SLIP_GAP_SECONDS
            && next.onset - voice.onset <= SLIP_SECONDS
            && isNeighbour(next, voice)
            && isSofter(voice, next);
    return besideTheHeld || beforeTheNext;
  }

  /** Whether the line holds a note over the whole group, which then may be the other hand's. */
  private boolean isHeldOver(List<Voice> group) {
    double onset = group.get(0).onset;
    if (!lineSounds || line.end <= onset || onset - line.onset > STUCK_SECONDS) {
      return false;
    }
    int top = group.stream().mapToInt(Voice::pitch).max().orElseThrow();
    return top < line.pitch() && (group.size() > 1 || top <= line.pitch() - OCTAVE);
  }

  private boolean isOtherHand(List<Voice> group, List<Voice> meant, Voice top) {
    if (line == null) {
      return false;
    }
    boolean isFarBelow = top.pitch() <= line.pitch() - OCTAVE;
    boolean isUnderAHeldNote = isHeldOver(group) && line.end > group.get(0).onset + LEGATO_SECONDS;
    return (isUnderAHeldNote && (meant.size() > 1 || isFarBelow))
        || (meant.size() >= FULL_CHORD && isFarBelow);
  }

  private static boolean isNeighbour(Voice one, Voice other) {
    int distance = Math.abs(one.pitch() - other.pitch());
    return distance >= 1 && distance <= NEIGHBOUR;
  }

  private static boolean isSofter(Voice voice, Voice main) {
    return voice.on.loudness() <= SLIP_LOUDNESS * main.on.loudness();
  }

  /** The line goes on with this note. */
  private void lead(Voice voice) {
    if (line != null && voice.onset < line.onset + SHORTEST_SECONDS) {
      return; // more keys at one moment than a group takes
    }
    if (lineSounds) {
      endLine(Math.min(lineEnd(), voice.onset));
    }
    NoteOn on = voice.on;
    out.add(new NoteOn(voice.onset, on.pitch(), on.cents(), on.loudness(), on.confidence()));
    line = voice;
    lineSounds = true;
  }

  private double lineEnd() {
    return Math.max(line.end, line.onset + SHORTEST_SECONDS);
  }

  private void endLine(double seconds) {
    out.add(new NoteOff(seconds, line.pitch()));
    lineSounds = false;
  }
}
