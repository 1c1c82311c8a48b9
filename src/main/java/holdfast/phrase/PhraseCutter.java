package holdfast.phrase;

import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
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
  private static final double NO_REST_SECONDS = 0.1;

  /** Silence is timed to this; a hundredth of the shortest rest that matters. */
  private static final double PRECISION_SECONDS = 0.001;

  private final TempoMap tempo;
  private final Patience patience;
  private Optional<IdeaFollower> idea = Optional.empty();

  /** Notes of the phrase under way and of closed phrases that are not out yet, by onset. */
  private final List<Sounding> line = new ArrayList<>();

  /** Closed, but a note of theirs still sounds. */
  private final List<Closed> closed = new ArrayList<>();

  private Optional<PlayEvent.NoteOn> begun = Optional.empty();
  private double heard = Double.NEGATIVE_INFINITY;
  private double lastOff;
  private int sounding;
  private int notesOut;
  private int notesClosed;
  private double verdictAt;
  private double patienceNow;

  /** A note of the line: what it became when it ended, nothing before. */
  private static final class Sounding {
    final double onset;
    final int pitch;
    Optional<PlayedNote> ended = Optional.empty();

    Sounding(double onset, int pitch) {
      this.onset = onset;
      this.pitch = pitch;
    }
  }

  private record Closed(int notes, Ending ending, double decided) {}

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
      while (off < byEnd.size() && byEnd.get(off).endSeconds() <= note.onsetSeconds()) {
        phrases.addAll(cutter.ended(byEnd.get(off++)));
      }
      phrases.addAll(cutter.started(note.onsetSeconds(), note.pitch()));
    }
    for (; off < byEnd.size(); off++) {
      phrases.addAll(cutter.ended(byEnd.get(off)));
    }
    phrases.addAll(cutter.finish());
    return phrases;
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
    for (int i = notesClosed; i < line.size(); i++) {
      followNote(follower, i);
    }
    if (silent()) {
      expectTheEnd();
    }
  }

  /**
   * Takes in what has arrived.
   *
   * @return the phrases that this closes, mostly none
   */
  public List<Phrase> hear(Heard news) {
    List<Phrase> out = new ArrayList<>();
    for (PlayEvent event : news.events()) {
      if (event instanceof PlayEvent.NoteOn on) {
        begun = Optional.of(on);
        out.addAll(started(on.seconds(), on.pitch()));
      } else if (begun.isPresent()) {
        PlayEvent.NoteOn on = begun.get();
        double length = event.seconds() - on.seconds();
        out.addAll(
            ended(
                new PlayedNote(
                    on.seconds(), length, on.pitch(), on.cents(), on.loudness(), on.confidence())));
        begun = Optional.empty();
      }
    }
    out.addAll(heardUpTo(Math.max(heard, news.upToSeconds())));
    return out;
  }

  /**
   * A note starts.
   *
   * @return the phrases that this closes, mostly none
   * @throws IllegalArgumentException when it starts before a moment up to which all was heard
   */
  public List<Phrase> started(double onsetSeconds, int pitch) {
    List<Phrase> out = heardUpTo(onsetSeconds);
    if (notesClosed < line.size()) {
      double previous = line.get(line.size() - 1).onset;
      double rest = sounding > 0 ? 0 : onsetSeconds - lastOff;
      double sounded = (sounding > 0 ? onsetSeconds : lastOff) - previous;
      boolean anew =
          idea.isPresent()
              && idea.get()
                      .startsAnew(
                          onsetSeconds, previous, rest, sounded, patience.pace(), patienceNow)
                  > LEVEL;
      if (anew) {
        close(rest < NO_REST_SECONDS ? Ending.RESTART : Ending.REST, onsetSeconds);
        out = withReady(out);
      } else {
        patience.noteFollowed(onsetSeconds - previous, rest);
      }
    }
    line.add(new Sounding(onsetSeconds, pitch));
    sounding++;
    idea.ifPresent(follower -> followNote(follower, line.size() - 1));
    return out;
  }

  /**
   * A note ends.
   *
   * @param note as it was from start to end; its start was told before
   * @return the phrases that were waiting for this end, mostly none
   */
  public List<Phrase> ended(PlayedNote note) {
    List<Phrase> out = heardUpTo(note.endSeconds());
    Sounding match = null;
    for (int i = line.size() - 1; i >= 0 && match == null; i--) {
      Sounding s = line.get(i);
      if (s.ended.isEmpty() && s.onset == note.onsetSeconds() && s.pitch == note.pitch()) {
        match = s;
      }
    }
    if (match == null) {
      throw new IllegalArgumentException(
          "a note that starts at " + note.onsetSeconds() + " s ends without having started");
    }
    match.ended = Optional.of(note);
    sounding--;
    lastOff = note.endSeconds();
    if (silent()) {
      expectTheEnd();
    }
    return withReady(out);
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
    if (silent() && seconds > verdictAt) {
      close(Ending.REST, verdictAt);
      return withReady(List.of());
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
    if (sounding > 0) {
      throw new IllegalStateException("end every note before the take ends; sounding: " + sounding);
    }
    if (notesClosed < line.size()) {
      close(Ending.TAKE, Math.max(heard, lastOff));
    }
    List<Phrase> out = withReady(List.of());
    notesOut = 0;
    heard = Double.NEGATIVE_INFINITY;
    patience.forget();
    return out;
  }

  /** How many notes the phrase under way has so far. */
  public int notesUnderWay() {
    return line.size() - notesClosed;
  }

  private boolean silent() {
    return sounding == 0 && notesClosed < line.size();
  }

  private double secondsPerBeat(double seconds) {
    double beat = tempo.beatAt(seconds);
    return tempo.secondsAt(beat + 1) - tempo.secondsAt(beat);
  }

  private void followNote(IdeaFollower follower, int i) {
    Sounding note = line.get(i);
    if (i == notesClosed) {
      follower.begin(note.onset, note.pitch, secondsPerBeat(note.onset));
    } else {
      follower.next(line.get(i - 1).onset, note.onset, note.pitch, patience.pace());
    }
  }

  /** Silence begins: finds the moment at which, if nothing comes, the phrase is over. */
  private void expectTheEnd() {
    Sounding last = line.get(line.size() - 1);
    double sounded = lastOff - last.onset;
    patienceNow = patience.seconds(notesUnderWay(), sounded);
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

  private void close(Ending ending, double decided) {
    closed.add(new Closed(notesUnderWay(), ending, decided));
    notesClosed = line.size();
  }

  /** Adds the closed phrases whose notes have all ended, and forgets them. */
  private List<Phrase> withReady(List<Phrase> before) {
    List<Phrase> out = before;
    while (!closed.isEmpty()) {
      Closed first = closed.get(0);
      List<Sounding> its = line.subList(0, first.notes());
      if (its.stream().anyMatch(s -> s.ended.isEmpty())) {
        break;
      }
      List<PlayedNote> notes = its.stream().map(s -> s.ended.orElseThrow()).toList();
      List<Phrase> more = new ArrayList<>(out);
      more.add(new Phrase(notes, notesOut, first.ending(), first.decided()));
      out = more;
      notesOut += first.notes();
      notesClosed -= first.notes();
      its.clear();
      closed.remove(0);
    }
    return out;
  }
}
