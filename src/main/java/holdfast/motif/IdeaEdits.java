package holdfast.motif;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

/** What a restatement says about the idea behind it: other notes, or the same ones more exactly. */
final class IdeaEdits {

  /** A restatement that leaves out or puts in more notes than this says nothing about the idea. */
  private static final int MOST = 2;

  /** An idea keeps at least so many notes. */
  private static final int FEWEST_NOTES = 2;

  /** Two onsets nearer than this, in beats, are the same place of the idea. */
  private static final double SAME_PLACE = 0.2;

  private IdeaEdits() {}

  /** Ideas one edit away that would account for what the verdict calls left out or put in. */
  static List<Motif> of(Motif idea, Verdict verdict, List<Note> phrase) {
    List<Motif> others = new ArrayList<>();
    if (verdict.treatment() == Treatment.NEW
        || verdict.treatment() == Treatment.INVERTED
        || verdict.treatment() == Treatment.RETROGRADE) {
      return others;
    }
    List<NoteChange> dropped = of(verdict, NoteChange.Kind.DROPPED);
    List<NoteChange> added = of(verdict, NoteChange.Kind.ADDED);
    if (dropped.size() <= MOST && idea.notes().size() - dropped.size() >= FEWEST_NOTES) {
      dropped.forEach(d -> others.add(without(idea, d.ideaNote().orElseThrow())));
    }
    if (added.size() <= MOST) {
      added.forEach(
          a -> {
            int at = a.phraseNote().orElseThrow();
            others.add(with(idea, imagined(idea, verdict, phrase, at)));
          });
    }
    return others;
  }

  private static List<NoteChange> of(Verdict verdict, NoteChange.Kind kind) {
    return verdict.changes().stream().filter(c -> c.kind() == kind).toList();
  }

  private static Motif without(Motif idea, int note) {
    List<Note> notes = new ArrayList<>(idea.notes());
    notes.remove(note);
    return new Motif(notes, idea.chord(), idea.hearings());
  }

  private static Motif with(Motif idea, Note note) {
    List<Note> notes = new ArrayList<>(idea.notes());
    int at = 0;
    while (at < notes.size() && notes.get(at).onsetBeats() <= note.onsetBeats()) {
      at++;
    }
    notes.add(at, note);
    return new Motif(notes, idea.chord(), idea.hearings());
  }

  /** Where a note of the phrase would stand in the idea: as its neighbours there say. */
  private static Note imagined(Motif idea, Verdict verdict, List<Note> phrase, int at) {
    NoteChange nearest = null;
    for (NoteChange change : verdict.changes()) {
      if (change.ideaNote().isPresent() && change.phraseNote().isPresent()) {
        int off = Math.abs(change.phraseNote().getAsInt() - at);
        if (nearest == null || off < Math.abs(nearest.phraseNote().getAsInt() - at)) {
          nearest = change;
        }
      }
    }
    Note played = phrase.get(at);
    if (nearest == null) {
      return played;
    }
    Note own = idea.notes().get(nearest.ideaNote().getAsInt());
    Note there = phrase.get(nearest.phraseNote().getAsInt());
    double scale = verdict.timeScale();
    double onset = own.onsetBeats() + (played.onsetBeats() - there.onsetBeats()) / scale;
    int pitch = Math.max(0, Math.min(127, played.pitch() - (there.pitch() - own.pitch())));
    return new Note(onset, Math.max(0.01, played.durationBeats() / scale), pitch, played.cents());
  }

  /** Whether two ideas have the same notes at about the same places. */
  static boolean same(Motif one, Motif other) {
    if (one.notes().size() != other.notes().size()) {
      return false;
    }
    for (int i = 0; i < one.notes().size(); i++) {
      Note a = one.notes().get(i);
      Note b = other.notes().get(i);
      if (a.pitch() != b.pitch() || Math.abs(a.onsetBeats() - b.onsetBeats()) > SAME_PLACE) {
        return false;
      }
    }
    return true;
  }

  /** The idea with one more statement averaged in, where the verdict lays it note upon note. */
  static Motif sharper(Motif idea, Verdict verdict, List<Note> phrase) {
    int n = idea.notes().size();
    int[] at = new int[n];
    Arrays.fill(at, -1);
    double[] shifts = new double[n];
    int count = 0;
    for (NoteChange change : verdict.changes()) {
      OptionalInt i = change.ideaNote();
      OptionalInt j = change.phraseNote();
      if (i.isPresent() && j.isPresent() && at[i.getAsInt()] < 0) {
        at[i.getAsInt()] = j.getAsInt();
        shifts[count++] =
            phrase.get(j.getAsInt()).onsetBeats() - idea.notes().get(i.getAsInt()).onsetBeats();
      }
    }
    if (count < n || verdict.timeScale() != 1) {
      return idea;
    }
    double shift = Arrays.stream(shifts, 0, count).average().orElseThrow();
    boolean rigid =
        verdict.treatment() == Treatment.LITERAL || verdict.treatment() == Treatment.TRANSPOSED;
    int k = idea.hearings();
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Note own = idea.notes().get(i);
      Note again = phrase.get(at[i]);
      double onset = own.onsetBeats() + (again.onsetBeats() - shift - own.onsetBeats()) / (k + 1);
      double sung = own.pitch() + own.cents() / 100;
      double sungAgain = again.pitch() - verdict.transposition() + again.cents() / 100;
      if (rigid && Math.abs(sungAgain - sung) < 1.5) {
        sung += (sungAgain - sung) / (k + 1);
      }
      int pitch = (int) Math.rint(sung);
      notes.add(new Note(onset, own.durationBeats(), pitch, 100 * (sung - pitch)));
    }
    for (int i = 1; i < n; i++) {
      if (notes.get(i).onsetBeats() < notes.get(i - 1).onsetBeats()) {
        return idea;
      }
    }
    return new Motif(notes, idea.chord(), k + 1);
  }
}
