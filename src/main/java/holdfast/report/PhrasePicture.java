package holdfast.report;

import holdfast.melody.Note;
import holdfast.motif.Motif;
import holdfast.motif.Verdict;
import holdfast.report.picture.Mark;
import holdfast.session.JudgedPhrase;
import java.util.List;
import java.util.Optional;

/** What of a judged phrase is drawn, on paper as on the screen. */
public final class PhrasePicture {

  private PhrasePicture() {}

  /** How a phrase is marked. */
  public static Mark mark(JudgedPhrase phrase) {
    return switch (phrase.verdict().family()) {
      case RESTATED -> Mark.CARRIED;
      case VARIED -> Mark.VARIED;
      case NEW -> Mark.NEW;
    };
  }

  /** The idea laid where the phrase starts, moved and stretched as the phrase was. */
  public static List<Note> ghost(Optional<Motif> given, JudgedPhrase phrase) {
    if (given.isEmpty()) {
      return List.of();
    }
    List<Note> idea = given.get().notes();
    Verdict verdict = phrase.verdict();
    double start = idea.get(0).onsetBeats();
    int move = phrase.carries() ? verdict.transposition() : 0;
    return idea.stream()
        .map(
            n ->
                new Note(
                    phrase.startBeat() + (n.onsetBeats() - start) * verdict.timeScale(),
                    n.durationBeats(),
                    Math.max(0, Math.min(127, n.pitch() + move))))
        .toList();
  }
}
