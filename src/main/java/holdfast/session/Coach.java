package holdfast.session;

import holdfast.chart.ChordSpan;
import holdfast.harmony.FitJudge;
import holdfast.harmony.JudgedLine;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayedNote;
import holdfast.listening.midi.MonophonicLine;
import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Expectation;
import holdfast.motif.IdeaBelief;
import holdfast.motif.Motif;
import holdfast.motif.MotifJudge;
import holdfast.motif.OpeningIdea;
import holdfast.motif.Predictability;
import holdfast.motif.Verdict;
import holdfast.motif.Why;
import holdfast.phrase.Phrase;
import holdfast.phrase.PhraseCutter;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Hears one take: thins what comes in to a line, cuts the line into phrases, holds each against the
 * idea, weighs it against its chords, and says so at once. Knows nothing of devices, threads or
 * files: a live keyboard, a microphone and a recording all come as {@link Heard}, in pieces of any
 * size, and the same notes give the same verdicts.
 */
public final class Coach {

  /** A phrase of fewer notes is a try, and not yet an idea. */
  private static final int LEAST_NOTES_OF_AN_IDEA = 2;

  /** A longer first phrase is no small idea any more, but it is what we were given. */
  private static final int MOST_NOTES_OF_AN_IDEA = 64;

  /** A phrase that hangs over into a chord by less than this, in beats, does not meet it. */
  private static final double SHORTEST_MEETING_BEATS = 0.3;

  private static final int[] REHEARSED = {64, 67, 69, 67};
  private static final int REHEARSALS = 12;

  private Setting setting;
  private Context context;
  private final MonophonicLine line = new MonophonicLine();
  private final PhraseCutter cutter;
  private final MotifJudge judge = new MotifJudge();
  private final List<Phrase> cuts = new ArrayList<>();
  private final List<JudgedPhrase> phrases = new ArrayList<>();
  private boolean sounding;
  private boolean wentOn;
  private Optional<Motif> firstIdea;
  private Optional<Motif> idea;
  private Optional<IdeaBelief> belief;
  private Optional<Predictability> listener;
  private double heardSeconds;

  /** A coach for one take. */
  public Coach(Setting setting) {
    this.setting = setting;
    this.context = contextOf(setting);
    this.cutter = new PhraseCutter(setting.beats());
    this.idea = setting.givenIdea();
    this.firstIdea = idea;
    this.belief = idea.map(given -> new IdeaBelief(judge, given, context));
    this.listener = idea.map(Predictability::new);
    idea.ifPresent(given -> cutter.follow(given.notes()));
  }

  /** The life of a take that is recorded already: hear, cut, judge, look back. */
  public static JudgedTake judge(
      Setting setting, List<PlayedNote> played, Consumer<JudgedPhrase> screen) {
    Coach coach = new Coach(setting);
    coach.hear(Heard.recording(played)).forEach(screen);
    coach.rest().forEach(screen);
    return coach.inHindsight();
  }

  /**
   * Judges a few made-up phrases and forgets them, so that the first verdict of a live take does
   * not wait for code that has never run: cold, it takes a fifth of a second.
   */
  static void rehearse(Setting setting) {
    List<Note> line = new ArrayList<>();
    int[] steps = {0, 0, 2, -1, 5, 1};
    for (int k = 0; k < steps.length; k++) {
      double start = (double) k * setting.metre().beats();
      for (int i = 0; i < REHEARSED.length; i++) {
        line.add(new Note(start + 0.5 * i, 0.4, REHEARSED[i] + steps[k]));
      }
    }
    for (int round = 0; round < REHEARSALS; round++) {
      Consumer<JudgedPhrase> nobody = phrase -> {};
      judge(setting, new DemoStudent(round).play(line, setting.beats()), nobody);
    }
  }

  /** Hears the next piece of the take, and says what is known by now about phrases that ended. */
  public List<JudgedPhrase> hear(Heard heard) {
    heardSeconds = Math.max(heardSeconds, heard.upToSeconds());
    // A few milliseconds after the last verdict was said: nobody waits now.
    belief.ifPresent(IdeaBelief::settle);
    return cut(line.hear(heard)).stream().flatMap(p -> say(p).stream()).toList();
  }

  /** The take is over: says what is left to say. */
  public List<JudgedPhrase> rest() {
    List<Phrase> last = new ArrayList<>(cut(line.finish(heardSeconds)));
    last.addAll(cutter.finish());
    return last.stream().flatMap(p -> say(p).stream()).toList();
  }

  /** The next phrase is a new idea, because the player said so. */
  public void newIdea() {
    idea = Optional.empty();
    belief = Optional.empty();
    cutter.followNothing();
  }

  /** The backing goes another way from here on: other bars, another tempo. */
  public void goOnWith(Setting other) {
    setting = other;
    wentOn = true;
    context = contextOf(other);
    cutter.goOnAt(other.beats());
  }

  private static Context contextOf(Setting setting) {
    return Context.over(setting.changes(), setting.player(), setting.metre().beats());
  }

  /** The idea that phrases are held against now; none before the first phrase. */
  public Optional<Motif> idea() {
    return idea;
  }

  /** Whether a note sounds at this moment, as far as is heard. */
  public boolean isHearing() {
    return sounding;
  }

  /** All that was said so far, counted. */
  public JudgedTake judgedTake() {
    return new JudgedTake(setting, firstIdea, phrases, Counts.of(phrases), List.of());
  }

  /**
   * The take read again as a whole, once it is over. Where the player took new ideas by saying so,
   * what was said live stands.
   */
  public JudgedTake inHindsight() {
    long stated = phrases.stream().filter(JudgedPhrase::statesTheIdea).count();
    // Who asked for a new idea and then played none has no idea any more.
    if (firstIdea.isEmpty() || belief.isEmpty() || phrases.isEmpty() || stated > 1) {
      return judgedTake();
    }
    Motif meant = belief.orElseThrow().idea();
    boolean liveStands =
        !wentOn && !belief.orElseThrow().hasLearned() && firstIdea.equals(Optional.of(meant));
    Retrospect retrospect =
        new Retrospect(
            cuts,
            phrases,
            meant,
            stated == 1,
            liveStands,
            phrase -> inBeats(phrase.notes()),
            judge,
            context);
    listener = setting.givenIdea().map(Predictability::new);
    IdentityHashMap<Phrase, JudgedLine> weighed = weighedLive();
    List<JudgedPhrase> told =
        retrospect.phrases(
            (index, states, phrase, verdict) ->
                tell(index, states, phrase, verdict, Optional.ofNullable(weighed.get(phrase))));
    return new JudgedTake(
        setting, firstIdea, told, Counts.of(told), retrospect.afterthoughts(told));
  }

  /** The phrases that this piece of the line closes. */
  private List<Phrase> cut(Heard thinned) {
    for (PlayEvent event : thinned.events()) {
      sounding = event instanceof PlayEvent.NoteOn;
    }
    return cutter.hear(thinned);
  }

  /** Holds a phrase against the idea and its chords. A lone note before the idea is no phrase. */
  private Optional<JudgedPhrase> say(Phrase phrase) {
    List<Note> notes = inBeats(phrase.notes());
    boolean states = idea.isEmpty();
    if (states && notes.size() < LEAST_NOTES_OF_AN_IDEA) {
      return Optional.empty();
    }
    if (states) {
      take(notes);
    }
    Verdict verdict = belief.orElseThrow().hear(notes, context);
    JudgedPhrase judged = tell(phrases.size(), states, phrase, verdict, Optional.empty());
    phrases.add(judged);
    cuts.add(phrase);
    return Optional.of(judged);
  }

  /** How phrases sat in their chords as they were cut live; nothing once the chords went on. */
  private IdentityHashMap<Phrase, JudgedLine> weighedLive() {
    IdentityHashMap<Phrase, JudgedLine> weighed = new IdentityHashMap<>();
    for (int k = 0; k < cuts.size() && !wentOn; k++) {
      weighed.put(cuts.get(k), phrases.get(k).harmony());
    }
    return weighed;
  }

  /** All that is said of a phrase whose verdict is known, and perhaps how it sits. */
  private JudgedPhrase tell(
      int index,
      boolean statesTheIdea,
      Phrase phrase,
      Verdict verdict,
      Optional<JudgedLine> weighed) {
    List<Note> notes = inBeats(phrase.notes());
    return new JudgedPhrase(
        index,
        statesTheIdea,
        setting.placeOf(notes),
        phrase.notes(),
        notes,
        chordsUnder(notes),
        verdict,
        weighed.orElseGet(() -> FitJudge.judge(notes, setting.changes(), setting.metre())),
        Why.sentences(verdict, notes, context),
        expectation(statesTheIdea, notes),
        phrase.decidedSeconds());
  }

  /**
   * What a listener who heard all before expected here; the idea itself is what they start from.
   */
  private Optional<Expectation> expectation(boolean statesTheIdea, List<Note> notes) {
    if (statesTheIdea) {
      Motif stated = Motif.over(chordsUnder(notes).get(0).harmony(), OpeningIdea.of(notes));
      listener = Optional.of(new Predictability(stated));
      return Optional.empty();
    }
    return listener.map(who -> who.hear(notes, context));
  }

  /** The chords that a listener hears with the phrase; a hair of an early entry is not one. */
  private List<ChordSpan> chordsUnder(List<Note> notes) {
    double start = notes.get(0).onsetBeats();
    double end = notes.get(notes.size() - 1).endBeats();
    double least = Math.min(SHORTEST_MEETING_BEATS, (end - start) / 4);
    List<ChordSpan> all = setting.changes().between(start, end);
    List<ChordSpan> met =
        all.stream()
            .filter(
                span -> Math.min(end, span.endBeat()) - Math.max(start, span.startBeat()) >= least)
            .toList();
    // Who comes in while it is counted in meets the first chord in the mind only.
    return met.isEmpty() ? List.of(setting.changes().at(Math.max(0, start))) : met;
  }

  /** From here on this is the idea. */
  private void take(List<Note> notes) {
    List<Note> idea = OpeningIdea.of(notes);
    List<Note> small = idea.subList(0, Math.min(idea.size(), MOST_NOTES_OF_AN_IDEA));
    Motif motif = Motif.over(chordsUnder(notes).get(0).harmony(), small).heard(1);
    this.idea = Optional.of(motif);
    this.belief = Optional.of(new IdeaBelief(judge, motif, context));
    if (firstIdea.isEmpty()) {
      firstIdea = this.idea;
    }
    cutter.follow(small);
  }

  /** Where what was played meets the chart: seconds of the take become its beats. */
  private List<Note> inBeats(List<PlayedNote> played) {
    return played.stream().map(note -> note.inBeats(setting.beats())).toList();
  }
}
