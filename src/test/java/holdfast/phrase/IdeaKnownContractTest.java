package holdfast.phrase;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.TempoMap;
import java.util.List;
import java.util.Optional;

class IdeaKnownContractTest extends PhraseStageContract {

  /** With a rest inside, and two notes that start together. */
  private static final List<Note> IDEA =
      List.of(
          new Note(0, 0.5, 60), new Note(0.5, 0.5, 62), new Note(0.5, 0.5, 65), new Note(2, 1, 64));

  @Override
  protected List<Phrase> phrases(List<PlayedNote> notes) {
    return PhraseCutter.cut(notes, TempoMap.steady(60), Optional.of(IDEA));
  }
}
