package holdfast.phrase;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

/** However the news is bunched, the phrases are the same. */
class ChunksTest {

  private static final TempoMap TEMPO = TempoMap.steady(72);

  private static final List<Note> IDEA =
      List.of(new Note(0, 0.5, 60), new Note(0.5, 0.5, 62), new Note(1.5, 1, 64));

  @Property(tries = 300, seed = "20261125")
  void any_pieces_of_any_playing_give_the_same_phrases(
      @ForAll @LongRange(min = 0, max = 1L << 40) long playing,
      @ForAll long pieces,
      @ForAll boolean ideaKnown) {
    List<PlayEvent> events = events(PhraseStageContract.wildNotes(playing));
    assertEquals(heard(events, ideaKnown, Optional.empty()), heard(events, ideaKnown, pieces));
  }

  @Property(tries = 100, seed = "20261125")
  void any_pieces_of_a_made_take_give_the_phrases_of_the_whole(
      @ForAll @LongRange(min = 0, max = 9999) long seed, @ForAll long pieces) {
    MadeTake take = new TakeMaker(TakeMaker.Ear.MICROPHONE, 0.1, 0.1, 0.1).make(seed);
    List<PlayEvent> events = events(take.notes());
    assertEquals(heard(events, true, Optional.empty()), heard(events, true, pieces));
  }

  private static List<Phrase> heard(List<PlayEvent> events, boolean ideaKnown, long pieces) {
    return heard(events, ideaKnown, Optional.of(new SplittableRandom(pieces)));
  }

  /** In pieces of any size with promises anywhere up to the next event, or all at once. */
  private static List<Phrase> heard(
      List<PlayEvent> events, boolean ideaKnown, Optional<SplittableRandom> chance) {
    PhraseCutter cutter = new PhraseCutter(TEMPO);
    if (ideaKnown) {
      cutter.follow(IDEA);
    }
    List<Phrase> phrases = new ArrayList<>();
    double end = events.get(events.size() - 1).seconds() + 1;
    int at = 0;
    while (at < events.size()) {
      int size = chance.map(c -> c.nextInt(5)).orElse(events.size());
      int to = Math.min(events.size(), at + size);
      double next = to < events.size() ? events.get(to).seconds() : end;
      double last = to > 0 ? events.get(to - 1).seconds() : next - 1;
      double upTo = last + chance.map(SplittableRandom::nextDouble).orElse(1.0) * (next - last);
      phrases.addAll(cutter.hear(new Heard(events.subList(at, to), Math.min(upTo, next))));
      at = to;
    }
    phrases.addAll(cutter.heardUpTo(end));
    phrases.addAll(cutter.finish());
    return phrases;
  }

  private static List<PlayEvent> events(List<PlayedNote> notes) {
    List<PlayEvent> events = new ArrayList<>();
    for (PlayedNote note : notes) {
      events.add(NoteOn.key(note.onsetSeconds(), note.pitch(), 80));
      events.add(new NoteOff(note.endSeconds(), note.pitch()));
    }
    events.sort(Comparator.comparingDouble(PlayEvent::seconds));
    return events;
  }
}
