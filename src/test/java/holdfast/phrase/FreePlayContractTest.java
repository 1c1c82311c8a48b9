package holdfast.phrase;

import holdfast.listening.PlayedNote;
import holdfast.time.TempoMap;
import java.util.List;
import java.util.Optional;

class FreePlayContractTest extends PhraseStageContract {

  @Override
  protected List<Phrase> phrases(List<PlayedNote> notes) {
    return PhraseCutter.cut(notes, TempoMap.steady(60), Optional.empty());
  }
}
