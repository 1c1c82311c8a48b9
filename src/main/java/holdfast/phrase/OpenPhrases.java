package holdfast.phrase;

import holdfast.listening.PlayEvent.NoteOn;
import holdfast.listening.PlayedNote;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * The notes that are not out yet: those of the phrase under way, and those of phrases that are
 * known to be over while one of their notes still sounds.
 */
final class OpenPhrases {

  private static final class OpenNote {
    final NoteOn on;
    Optional<PlayedNote> ended = Optional.empty();

    OpenNote(NoteOn on) {
      this.on = on;
    }
  }

  private record Closed(int notes, Ending ending, double decided) {}

  private final List<OpenNote> notes = new ArrayList<>();
  private final Deque<Closed> closed = new ArrayDeque<>();
  private int inClosed;
  private int ended;
  private int sounding;
  private int out;

  /** How many notes the phrase under way has. */
  int underWay() {
    return notes.size() - inClosed;
  }

  /** How many notes sound. */
  int sounding() {
    return sounding;
  }

  /** The start of a note of the phrase under way, counted from 0. */
  NoteOn note(int i) {
    return notes.get(inClosed + i).on;
  }

  /** The start of the newest note. */
  NoteOn last() {
    return notes.get(notes.size() - 1).on;
  }

  void start(NoteOn on) {
    notes.add(new OpenNote(on));
    sounding++;
  }

  /** Ends a note that is known from start to end. */
  void end(PlayedNote whole) {
    newest(whole.pitch(), Optional.of(whole.onsetSeconds())).orElseThrow().ended =
        Optional.of(whole);
    sounding--;
  }

  /**
   * Ends the newest note of this pitch.
   *
   * @return whether there was one
   */
  boolean end(int pitch, double seconds, double shortest) {
    Optional<OpenNote> note = newest(pitch, Optional.empty());
    if (note.isEmpty()) {
      return false;
    }
    NoteOn on = note.get().on;
    double duration = Math.max(seconds - on.seconds(), shortest);
    note.get().ended =
        Optional.of(
            new PlayedNote(
                on.seconds(), duration, pitch, on.cents(), on.loudness(), on.confidence()));
    sounding--;
    return true;
  }

  private Optional<OpenNote> newest(int pitch, Optional<Double> onset) {
    for (int i = notes.size() - 1; i >= 0; i--) {
      OpenNote note = notes.get(i);
      if (note.ended.isEmpty()
          && note.on.pitch() == pitch
          && (onset.isEmpty() || onset.get() == note.on.seconds())) {
        return Optional.of(note);
      }
    }
    return Optional.empty();
  }

  /** The phrase under way is over. */
  void close(Ending ending, double decided) {
    closed.add(new Closed(underWay(), ending, decided));
    inClosed = notes.size();
  }

  /** The closed phrases whose notes have all ended; they are forgotten here. */
  List<Phrase> ready() {
    if (closed.isEmpty()) {
      return List.of();
    }
    while (ended < notes.size() && notes.get(ended).ended.isPresent()) {
      ended++;
    }
    List<Phrase> phrases = new ArrayList<>();
    int taken = 0;
    while (!closed.isEmpty() && ended >= taken + closed.element().notes()) {
      Closed first = closed.remove();
      List<PlayedNote> its =
          notes.subList(taken, taken + first.notes()).stream()
              .map(n -> n.ended.orElseThrow())
              .toList();
      phrases.add(new Phrase(its, out, first.ending(), first.decided()));
      out += first.notes();
      taken += first.notes();
    }
    notes.subList(0, taken).clear();
    inClosed -= taken;
    ended -= taken;
    return phrases;
  }

  /** Counts notes from 0 again. */
  void beginAgain() {
    out = 0;
  }
}
