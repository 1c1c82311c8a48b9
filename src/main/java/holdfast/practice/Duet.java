package holdfast.practice;

import holdfast.backing.BackingEvent;
import holdfast.backing.Playback;
import holdfast.carry.Adaptation;
import holdfast.carry.Carrying;
import holdfast.carry.Habit;
import holdfast.carry.Places;
import holdfast.carry.Question;
import holdfast.carry.Statement;
import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.session.JudgedPhrase;
import holdfast.session.Partner;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Coach and student share a take passage by passage. The coach goes on from what was said last, be
 * it by the student: where the student carried the idea, the coach answers that.
 */
final class Duet implements Partner {

  /** The coach makes up its mind this long before it speaks. */
  private static final double AHEAD_SECONDS = 0.9;

  /** A passage is announced this long before it begins. */
  private static final double ANNOUNCED_BEATS = 1;

  /** A student who comes in earlier than this, as a share of a bar, meant the passage before. */
  private static final double EARLY_BARS = 0.3;

  /** After a passage has ended, its last phrase may still be on its way through the ear. */
  private static final double LATE_SECONDS = 1.6;

  /** A student may come in with the coach's last note; before that, notes are the coach's. */
  private static final double BEFORE_SECONDS = 0.1;

  /** What the student plays along with the coach's last note may come so late. */
  private static final double AFTER_SECONDS = 0.25;

  /** Of the coach's last note a microphone hears all but this much of its end. */
  private static final double LETTING_GO_SECONDS = 0.25;

  /** Two that are heard, one that is guessed, and what the coach would have said. */
  private static final int PASSAGES_OF_A_GUESS = 4;

  /** Mezzo-forte: to be heard over the backing without covering it. */
  private static final int TOUCH = 84;

  private final Lesson lesson;
  private final Player player;
  private final PracticeAudience audience;
  private final OutcomeWords words;
  private final List<Passage> passages;
  private final List<Outcome> outcomes = new ArrayList<>();
  private final List<BackingEvent> said = new ArrayList<>();
  private final List<double[]> spoken = new ArrayList<>();
  private final List<Statement> statements = new ArrayList<>();
  private final List<JudgedPhrase> waiting = new ArrayList<>();
  private final List<CoachLine> lines = new ArrayList<>();
  private final Map<Passage, List<Adaptation>> guessed = new HashMap<>();
  private final Changes changes;

  private Optional<Playback> playback = Optional.empty();
  private Optional<Statement> idea;
  private Optional<Statement> previous;
  private double lastBeat = Double.NEGATIVE_INFINITY;
  private int nextAnnounced;
  private int nextSpoken;
  private int nextClosed;

  Duet(Lesson lesson, Player player, PracticeAudience audience) {
    this.lesson = lesson;
    this.player = player;
    this.audience = audience;
    this.passages = lesson.passages();
    this.changes = lesson.arrangement().changes();
    this.words = new OutcomeWords(lesson.exercise().way(), changes.key());
    this.idea = lesson.idea();
    this.previous = idea;
  }

  @Override
  public void begin(Playback started) {
    playback = Optional.of(started);
  }

  @Override
  public void look(double beat) {
    lastBeat = beat;
    while (nextAnnounced < passages.size()
        && beat >= passages.get(nextAnnounced).startBeat() - ANNOUNCED_BEATS) {
      audience.passage(passages.get(nextAnnounced++));
    }
    while (nextSpoken < passages.size() && isTimeToSpeak(passages.get(nextSpoken), beat)) {
      Passage passage = passages.get(nextSpoken);
      if (passage.who() == Passage.Who.COACH) {
        speak(nextSpoken, beat);
      } else if (lesson.exercise().way() == Way.GUESS_NEXT && idea.isPresent()) {
        guessed.put(passage, choices(nextSpoken));
      }
      nextSpoken++;
    }
    while (nextClosed < passages.size()
        && seconds(beat) >= seconds(passages.get(nextClosed).endBeat()) + LATE_SECONDS) {
      close(passages.get(nextClosed++));
    }
  }

  @Override
  public void hear(JudgedPhrase phrase) {
    waiting.add(phrase);
    if (phrase.statesTheIdea()) {
      Statement stated =
          new Statement(
              WrittenIdea.ofPlayed(phrase.notes(), lesson.arrangement().metre()),
              Optional.of(phrase.mainChord().harmony()));
      idea = Optional.of(stated);
      previous = idea;
      statements.add(stated);
    } else if (phrase.carries()
        && idea.isPresent()
        && phrase.notes().size() == idea.get().notes().size()) {
      Statement statement = inRhythmOfTheIdea(phrase);
      previous = Optional.of(statement);
      statements.add(statement);
    }
  }

  /** The take is over: every passage that has begun is closed. */
  void end() {
    while (nextClosed < passages.size() && passages.get(nextClosed).startBeat() < lastBeat) {
      close(passages.get(nextClosed++));
    }
  }

  /** Whether the coach speaks at this second of the take. */
  boolean speaksAt(double second) {
    for (int i = spoken.size() - 1; i >= 0; i--) {
      if (second >= spoken.get(i)[0] && second < spoken.get(i)[1]) {
        return true;
      }
    }
    return false;
  }

  /** What came of the student's passages so far. */
  List<Outcome> outcomes() {
    return List.copyOf(outcomes);
  }

  /** All that the coach has said so far, in beats of the take. */
  List<BackingEvent> said() {
    return List.copyOf(said);
  }

  private boolean isTimeToSpeak(Passage passage, double beat) {
    double pickUp = idea.map(Places::pickUpBeats).orElse(0.0);
    return seconds(beat) >= seconds(passage.startBeat() - pickUp) - AHEAD_SECONDS;
  }

  private void speak(int index, double beat) {
    Passage passage = passages.get(index);
    if (idea.isEmpty()) {
      audience.notice("I wait for your idea; say it over " + passage.chord() + ".");
      return;
    }
    List<Adaptation> choices =
        index > 0 && guessed.containsKey(passages.get(index - 1))
            ? guessed.get(passages.get(index - 1))
            : choices(index);
    if (choices.isEmpty()) {
      audience.notice("The idea is too long for " + passage.chord() + "; I leave it to you.");
      return;
    }
    Adaptation choice = choices.get(0);
    List<Note> notes =
        choice.placedAt(passage.startBeat()).stream()
            .filter(note -> note.onsetBeats() > beat)
            .toList();
    if (notes.isEmpty()) {
      return;
    }
    List<BackingEvent> line = notes.stream().map(n -> BackingEvent.ofLine(n, TOUCH)).toList();
    playback.orElseThrow().say(line);
    said.addAll(line);
    spoken.add(spokenSeconds(notes));
    CoachLine told = new CoachLine(passage, notes, choice.why());
    lines.add(told);
    previous =
        Optional.of(
            new Statement(choice.notes(), Optional.of(changes.at(passage.startBeat()).harmony())));
    audience.coachSays(told);
  }

  /** From when to when the ear passes over what begins: second by second of the take. */
  private double[] spokenSeconds(List<Note> line) {
    Note last = line.get(line.size() - 1);
    double onset = seconds(last.onsetBeats());
    double end = seconds(last.endBeats());
    double keys = Math.min(onset + AFTER_SECONDS, (onset + end) / 2);
    double sung = Math.max(keys, end - LETTING_GO_SECONDS);
    double from = seconds(line.get(0).onsetBeats()) - BEFORE_SECONDS;
    return new double[] {from, player == Player.KEYBOARD ? keys : sung};
  }

  /** How the idea could go in a passage, the nearest first; none where it has no room. */
  private List<Adaptation> choices(int index) {
    Passage passage = passages.get(index);
    Statement known = idea.orElseThrow();
    Statement from = startsAnew(index) || !sameSize(known) ? known : previous.orElse(known);
    Habit habit = Habit.of(statements, changes.key());
    double end = passage.endBeat() - Places.pickUpBeats(known);
    double lastOnset = known.notes().get(known.notes().size() - 1).onsetBeats();
    if (passage.startBeat() + lastOnset >= end) {
      return List.of();
    }
    Question question =
        new Question(
            known,
            from,
            changes,
            passage.startBeat(),
            lesson.arrangement().metre(),
            lesson.exercise().range(),
            habit);
    return Carrying.choices(question.endingBy(end));
  }

  private boolean sameSize(Statement known) {
    return previous.map(p -> p.notes().size() == known.notes().size()).orElse(false);
  }

  /** Each group of the guessing game begins with the idea itself. */
  private boolean startsAnew(int index) {
    return lesson.exercise().way() == Way.GUESS_NEXT && index % PASSAGES_OF_A_GUESS == 0;
  }

  private Statement inRhythmOfTheIdea(JudgedPhrase phrase) {
    List<Note> rhythm = idea.orElseThrow().notes();
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < rhythm.size(); i++) {
      notes.add(
          new Note(
              rhythm.get(i).onsetBeats(),
              rhythm.get(i).durationBeats(),
              phrase.notes().get(i).pitch()));
    }
    return new Statement(notes, Optional.of(phrase.mainChord().harmony()));
  }

  private void close(Passage passage) {
    List<JudgedPhrase> mine = waiting.stream().filter(p -> belongs(p, passage)).toList();
    waiting.removeIf(p -> p.startBeat() < passage.endBeat() - early());
    if (passage.who() == Passage.Who.COACH) {
      return;
    }
    Optional<JudgedPhrase> best =
        mine.stream()
            .filter(JudgedPhrase::statesTheIdea)
            .findFirst()
            .or(() -> mine.stream().filter(JudgedPhrase::carries).findFirst())
            .or(() -> mine.stream().findFirst());
    Optional<CoachLine> heardBefore =
        lines.stream()
            .filter(line -> line.passage().startBeat() < passage.startBeat())
            .reduce((earlier, later) -> later);
    Outcome outcome =
        words.of(passage, best, heardBefore, guessed.getOrDefault(passage, List.of()));
    outcomes.add(outcome);
    audience.outcome(outcome);
  }

  private boolean belongs(JudgedPhrase phrase, Passage passage) {
    return phrase.startBeat() >= passage.startBeat() - early()
        && phrase.startBeat() < passage.endBeat() - early();
  }

  private double early() {
    return EARLY_BARS * lesson.arrangement().metre().beats();
  }

  private double seconds(double beat) {
    return playback
        .map(p -> p.tempoMap().secondsAt(beat))
        .orElseGet(() -> lesson.performance().tempoMap().secondsAt(beat));
  }
}
