package holdfast.phrase;

import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayEvent.NoteOff;
import holdfast.listening.PlayEvent.NoteOn;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Cuts a line into phrases while it is being played, by what has been heard and nothing else.
 *
 * <p>It is told in order of time: a note has started, a note has ended, everything before this
 * moment has been heard. How those messages are bunched changes nothing. A phrase comes out as soon
 * as it is known to be over: at most 0.35 s after its last note-off, or at the next note-on where
 * there was no rest. Only where the idea is known, and the player seems to be in a rest that the
 * idea itself holds, does the cutter wait until the idea's next note is overdue.
 *
 * <p>Not safe for use by several threads at once.
 */
public final class PhraseCutter {

  /** More likely over than not. */
  private static final double LEVEL = 0.5;

  /** However long a rest the idea holds, after a silence as long as this it is over. */
  private static final double LONGEST_WAIT_SECONDS = 3;

  /** A phrase that follows a shorter rest than this followed without one. */
  static final double NO_REST_SECONDS = 0.1;

  /** Notes that start closer together were struck as one; no phrase begins between them. */
  private static final double ONE_STROKE_SECONDS = 0.03;

  /** Silence is timed to this; a hundredth of the shortest rest that matters. */
  private static final double PRECISION_SECONDS = 0.001;

  /** A note that ends as it begins still has a length; one step of the finest MIDI clock. */
  private static final double SHORTEST_NOTE_SECONDS = 0.001;

  private TempoMap tempo;
  private final Patience patience;
  private Optional<IdeaFollower> idea = Optional.empty();

  private final OpenPhrases open = new OpenPhrases();
  private double heard = Double.NEGATIVE_INFINITY;
  private double lastOff;
  private double verdictAt;
  private double patienceNow;

  /**
   * A cutter for a take at this tempo.
   *
   * @param tempo of the take; it gives the first guess of the pace, and places the idea
   */
  public PhraseCutter(TempoMap tempo) {
    this.tempo = tempo;
    this.patience = new Patience(secondsPerBeat(0));
  }

  /** All phrases of a line at once, exactly as they would have come one after the other. */
  public static List<Phrase> cut(
      List<PlayedNote> notes, TempoMap tempo, Optional<List<Note>> idea) {
    PhraseCutter cutter = new PhraseCutter(tempo);
    idea.ifPresent(cutter::follow);
    List<Phrase> phrases = new ArrayList<>();
    List<PlayedNote> byEnd = new ArrayList<>(notes);
    byEnd.sort(Comparator.comparingDouble(PlayedNote::endSeconds));
    int off = 0;
    for (PlayedNote note : notes) {
      while (off < byEnd.size() && isOver(byEnd.get(off), note.onsetSeconds())) {
        phrases.addAll(cutter.ended(byEnd.get(off++)));
      }
      phrases.addAll(cutter.started(start(note)));
    }
    for (; off < byEnd.size(); off++) {
      phrases.addAll(cutter.ended(byEnd.get(off)));
    }
    phrases.addAll(cutter.finish());
    return phrases;
  }

  private static boolean isOver(PlayedNote note, double now) {
    // A note too short for its end to differ from its start must start first.
    return note.endSeconds() <= now && note.onsetSeconds() < now;
  }

  private static NoteOn start(PlayedNote note) {
    return new NoteOn(
        note.onsetSeconds(), note.pitch(), note.cents(), note.loudness(), note.confidence());
  }

  /**
   * From now on the phrases are likely to carry this idea. The phrase under way is looked at anew;
   * what was decided stays.
   *
   * @param idea in beats, in order of onset, 2 to 64 notes
   */
  public void follow(List<Note> idea) {
    IdeaFollower follower = new IdeaFollower(idea);
    this.idea = Optional.of(follower);
    for (int i = 0; i < open.underWay(); i++) {
      followNote(follower, i);
    }
    if (isSilent()) {
      expectTheEnd();
      verdictAt = Math.max(verdictAt, heard);
    }
  }

  /** From now on nothing is known of the idea: the player looks for a new one. */
  public void followNothing() {
    idea = Optional.empty();
    if (isSilent()) {
      expectTheEnd();
      verdictAt = Math.max(verdictAt, heard);
    }
  }

  /** From the next phrase on the take goes at another tempo. */
  public void goOnAt(TempoMap other) {
    tempo = other;
  }

  /**
   * Takes in what has arrived. The end of a note that did not start is passed over.
   *
   * @return the phrases that this closes, mostly none
   * @throws IllegalArgumentException when an event lies before a moment up to which all was heard
   */
  public List<Phrase> hear(Heard news) {
    List<Phrase> out = List.of();
    for (PlayEvent event : news.events()) {
      out = both(out, event instanceof NoteOn on ? started(on) : ended((NoteOff) event));
    }
    return both(out, heardUpTo(Math.max(heard, news.upToSeconds())));
  }

  private List<Phrase> started(NoteOn on) {
    double onset = on.seconds();
    List<Phrase> out = heardUpTo(onset);
    if (open.underWay() > 0) {
      boolean silent = open.sounding() == 0;
      double previous = open.last().seconds();
      double sounded = (silent ? lastOff : onset) - previous;
      double rest = silent ? onset - lastOff : 0;
      if (startsAnew(onset, previous, rest, sounded)) {
        open.close(rest < NO_REST_SECONDS ? Ending.RESTART : Ending.REST, onset);
        out = both(out, open.ready());
      } else {
        patience.noteFollowed(onset - previous, rest);
      }
    }
    open.start(on);
    idea.ifPresent(follower -> followNote(follower, open.underWay() - 1));
    return out;
  }

  private boolean startsAnew(double onset, double previous, double rest, double sounded) {
    return idea.isPresent()
        && onset - previous > ONE_STROKE_SECONDS
        && idea.get().startsAnew(onset, previous, rest, sounded, patience.pace(), patienceNow)
            > LEVEL;
  }

  private List<Phrase> ended(NoteOff off) {
    List<Phrase> out = heardUpTo(off.seconds());
    boolean ended = open.end(off.pitch(), off.seconds(), SHORTEST_NOTE_SECONDS);
    return ended ? both(out, afterTheEnd()) : out;
  }

  private List<Phrase> ended(PlayedNote whole) {
    List<Phrase> out = heardUpTo(whole.endSeconds());
    open.end(whole);
    return both(out, afterTheEnd());
  }

  private List<Phrase> afterTheEnd() {
    lastOff = heard;
    if (isSilent()) {
      expectTheEnd();
    }
    return open.ready();
  }

  /**
   * Everything before this moment has been heard.
   *
   * @return the phrase that the silence closes, mostly none
   * @throws IllegalArgumentException when more than that was heard already
   */
  public List<Phrase> heardUpTo(double seconds) {
    if (!(seconds >= heard) || Double.isInfinite(seconds)) {
      throw new IllegalArgumentException(
          "notes must come in order of time: everything before "
              + heard
              + " s has been heard, and now comes "
              + seconds
              + " s");
    }
    heard = seconds;
    if (isSilent() && seconds > verdictAt) {
      open.close(Ending.REST, verdictAt);
      return open.ready();
    }
    return List.of();
  }

  /**
   * The take is over. What is under way becomes the last phrase, and the cutter is ready for
   * another take with the same idea.
   *
   * @throws IllegalStateException when a note has not ended yet
   */
  public List<Phrase> finish() {
    if (open.sounding() > 0) {
      throw new IllegalStateException(
          "end every note before the take ends; sounding: " + open.sounding());
    }
    if (open.underWay() > 0) {
      open.close(Ending.TAKE, heard);
    }
    List<Phrase> out = open.ready();
    open.beginAgain();
    heard = Double.NEGATIVE_INFINITY;
    patience.forget();
    return out;
  }

  /** How many notes the phrase under way has so far. */
  public int notesUnderWay() {
    return open.underWay();
  }

  private boolean isSilent() {
    return open.sounding() == 0 && open.underWay() > 0;
  }

  private double secondsPerBeat(double seconds) {
    double beat = tempo.beatAt(seconds);
    return tempo.secondsAt(beat + 1) - tempo.secondsAt(beat);
  }

  private void followNote(IdeaFollower follower, int i) {
    NoteOn on = open.note(i);
    if (i == 0) {
      follower.begin(on.seconds(), on.pitch(), secondsPerBeat(on.seconds()));
    } else {
      follower.next(open.note(i - 1).seconds(), on.seconds(), on.pitch(), patience.pace());
    }
  }

  /** Silence begins: finds the moment at which, if nothing comes, the phrase is over. */
  private void expectTheEnd() {
    double sounded = lastOff - open.last().seconds();
    patienceNow = patience.seconds(open.underWay(), sounded);
    double rest = patienceNow;
    if (idea.isPresent()) {
      double inTime = idea.get().awaitedUntil().orElse(lastOff) - lastOff;
      double high = Math.max(Patience.LONGEST_SECONDS, Math.min(inTime, LONGEST_WAIT_SECONDS));
      rest = soonestOver(idea.get(), sounded, high);
    }
    verdictAt = lastOff + rest;
  }

  private double soonestOver(IdeaFollower follower, double sounded, double longest) {
    double low = Patience.SHORTEST_SECONDS;
    double high = longest;
    if (follower.isOver(lastOff + low, low, sounded, patienceNow) > LEVEL) {
      return low;
    }
    while (high - low > PRECISION_SECONDS) {
      double middle = (low + high) / 2;
      if (follower.isOver(lastOff + middle, middle, sounded, patienceNow) > LEVEL) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high;
  }

  private static List<Phrase> both(List<Phrase> some, List<Phrase> more) {
    if (some.isEmpty() || more.isEmpty()) {
      return some.isEmpty() ? more : some;
    }
    List<Phrase> all = new ArrayList<>(some);
    all.addAll(more);
    return all;
  }
}
