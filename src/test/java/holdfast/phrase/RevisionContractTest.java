package holdfast.phrase;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.TempoMap;
import java.util.List;
import java.util.Optional;

class RevisionContractTest extends PhraseStageContract {

  private static final TempoMap TEMPO = TempoMap.steady(60);

  private static final List<Note> IDEA =
      List.of(new Note(0, 0.25, 60), new Note(0.25, 0.25, 62), new Note(1, 0.5, 64));

  @Override
  protected boolean isLive() {
    return false;
  }

  @Override
  protected List<Phrase> phrases(List<PlayedNote> notes) {
    List<Phrase> live = PhraseCutter.cut(notes, TEMPO, Optional.of(IDEA));
    return PhraseRevision.of(live, new RhythmCost(notes, TEMPO, IDEA)).phrases();
  }
}
