package holdfast.practice;

import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.backing.Part;
import holdfast.backing.Performance;
import holdfast.backing.PitchRange;
import holdfast.carry.Places;
import holdfast.carry.Statement;
import holdfast.chart.Bar;
import holdfast.chart.Changes;
import holdfast.chart.Chart;
import holdfast.chart.ChordSpan;
import holdfast.chart.Form;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.session.DemoIdea;
import holdfast.session.Setting;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * An exercise made ready: what the backing plays, which idea it is about, and whose turn it is
 * when. Pure; the same exercise and seed give the same lesson.
 */
public final class Lesson {

  /** A saying and a breath, in bars, for one chord of twelve keys. */
  private static final int BARS_OF_A_KEY = 2;

  /** A form this long or shorter is looped as a whole where nobody says which bars are hard. */
  private static final int SHORT_FORM_BARS = 4;

  /** Enough rounds for a climb to arrive, however slowly. */
  private static final int CLIMB_ROUNDS = 24;

  private static final int USUAL_ROUNDS = 2;
  private static final int GUESSED_OVER = 3;

  private final Exercise exercise;
  private final Arrangement arrangement;
  private final int rounds;
  private final Optional<Statement> idea;
  private final List<Passage> passages;
  private final int countInBars;
  private final Set<Part> muted;

  private Lesson(
      Exercise exercise,
      Arrangement arrangement,
      int rounds,
      Optional<Statement> idea,
      List<Passage> passages) {
    this(exercise, arrangement, rounds, idea, passages, arrangement.usualCountIn(), Set.of());
  }

  private Lesson(
      Exercise exercise,
      Arrangement arrangement,
      int rounds,
      Optional<Statement> idea,
      List<Passage> passages,
      int countInBars,
      Set<Part> muted) {
    this.countInBars = countInBars;
    this.muted = Set.copyOf(muted);
    this.exercise = exercise;
    this.arrangement = arrangement;
    this.rounds = rounds;
    this.idea = idea;
    this.passages = List.copyOf(passages);
  }

  /**
   * Makes an exercise ready.
   *
   * @param seed chooses the coach's own idea where the exercise needs one and has none
   * @throws UserMistake where the chart has no such bars, no chord, or no room for the idea
   */
  public static Lesson of(Exercise exercise, long seed) {
    return new Making(exercise, seed).lesson();
  }

  /** The same lesson, counted in with so many bars and with some parts of the backing silent. */
  public Lesson playedWith(int bars, Set<Part> silent) {
    return new Lesson(exercise, arrangement, rounds, idea, passages, bars, silent);
  }

  /** What is practised. */
  public Exercise exercise() {
    return exercise;
  }

  /** What the backing plays; the coach's line comes to it while it runs. */
  public Performance performance() {
    return new Performance(arrangement, OptionalInt.of(rounds), countInBars, muted);
  }

  /** The idea and the first chord it is said over; empty where the student brings it. */
  public Optional<Statement> idea() {
    return idea;
  }

  /** What is known before the first note. */
  public Setting setting(Player player) {
    Performance performance = performance();
    return Setting.of(arrangement, performance.tempoMap(), player, givenIdea());
  }

  /** The idea that phrases are held against; empty where the student brings it. */
  Optional<Motif> givenIdea() {
    return idea.map(statement -> new Motif(statement.notes(), statement.harmony()));
  }

  /** Whose turn it is when, through all rounds; none where the student plays throughout. */
  public List<Passage> passages() {
    return passages;
  }

  Arrangement arrangement() {
    return arrangement;
  }

  int rounds() {
    return rounds;
  }

  /** A lesson while it is being made. */
  private static final class Making {
    private final Exercise exercise;
    private final long seed;
    private final Chart chart;
    private final Form whole;

    Making(Exercise exercise, long seed) {
      this.exercise = exercise;
      this.seed = seed;
      this.chart = exercise.chart().sounding();
      this.whole = chart.form();
    }

    Lesson lesson() {
      return switch (exercise.way()) {
        case CLIMB -> climb();
        case TWELVE_KEYS -> twelveKeys();
        case HEAD_START, SWAP -> inPlace();
        case SING_BACK -> eachBarTwice();
        case GUESS_NEXT -> guessing();
      };
    }

    private Lesson climb() {
      Arrangement bars = arranged(chart, Optional.of(exercise.bars().orElseGet(this::hardBars)));
      Optional<Statement> given = exercise.idea().map(notes -> said(notes, bars.changes()));
      return new Lesson(exercise, bars, exercise.rounds().orElse(CLIMB_ROUNDS), given, List.of());
    }

    /** The first turn that nobody expects, and the bar before it. */
    private BarRange hardBars() {
      int last = whole.bars().size();
      Set<Integer> marked = whole.unexpectedBars();
      if (last <= SHORT_FORM_BARS || marked.isEmpty()) {
        return new BarRange(1, Math.min(last, SHORT_FORM_BARS));
      }
      int turn = marked.iterator().next();
      int from = Math.max(1, turn - 1);
      return new BarRange(from, Math.min(last, from + 1));
    }

    private Lesson twelveKeys() {
      ChordSymbol first =
          part().changes().stream()
              .flatMap(span -> span.harmony().chord().stream())
              .findFirst()
              .orElseThrow(
                  () -> new UserMistake("“" + chart.title() + "” has no chord in these bars"));
      int beats = whole.metre().beats();
      double need =
          exercise.idea().map(notes -> need(new Statement(notes, Optional.empty()))).orElse(0.0);
      int barsEach = Math.max(BARS_OF_A_KEY, (int) Math.ceil(need / beats));
      Chart keys = PracticeChart.inTwelveKeys(chart, first, barsEach);
      Arrangement arranged = arranged(keys, Optional.empty());
      Optional<Statement> given = exercise.idea().map(notes -> said(notes, arranged.changes()));
      int rounds = exercise.rounds().orElse(1);
      List<Passage> passages = new ArrayList<>();
      double each = (double) barsEach * beats;
      int count = rounds * keys.form().bars().size() / barsEach;
      for (int i = 0; i < count; i++) {
        Passage.Who who = i == 0 && given.isPresent() ? Passage.Who.COACH : Passage.Who.STUDENT;
        passages.add(passage(who, i * each, (i + 1) * each, arranged.changes()));
      }
      return new Lesson(exercise, arranged, rounds, given, passages);
    }

    private Lesson inPlace() {
      Arrangement arranged = arranged(chart, exercise.bars());
      Form part = part();
      Statement idea = ownOrGiven(arranged.changes());
      List<Double> places = places(part, idea);
      int rounds = exercise.rounds().orElse(USUAL_ROUNDS);
      List<Passage> passages = new ArrayList<>();
      for (int round = 0; round < rounds; round++) {
        List<Boolean> coach = coachAt(places, arranged.changes(), round);
        double start = round * part.lengthBeats();
        for (int i = 0; i < places.size(); i++) {
          double end =
              i + 1 < places.size() ? places.get(i + 1) : part.lengthBeats() + places.get(0);
          Passage.Who who = coach.get(i) ? Passage.Who.COACH : Passage.Who.STUDENT;
          passages.add(passage(who, start + places.get(i), start + end, arranged.changes()));
        }
      }
      return new Lesson(exercise, arranged, rounds, Optional.of(idea), passages);
    }

    private List<Boolean> coachAt(List<Double> places, Changes changes, int round) {
      List<Boolean> coach = new ArrayList<>();
      int chord = -1;
      Optional<Harmony> before = Optional.empty();
      for (int i = 0; i < places.size(); i++) {
        Optional<Harmony> here = Optional.of(changes.at(places.get(i)).harmony());
        boolean isNew = !here.equals(before);
        chord += isNew ? 1 : 0;
        before = here;
        if (exercise.way() == Way.SWAP) {
          // With an even number of turns the chords change hands from round to round.
          coach.add((i + (places.size() % 2 == 0 ? round : round * places.size())) % 2 == 0);
        } else {
          coach.add(isNew && chord < exercise.coachChords());
        }
      }
      return coach;
    }

    private Lesson eachBarTwice() {
      Form part = part();
      Optional<Statement> known = exercise.idea().map(notes -> said(notes, changesOf(part)));
      // Nobody knows how long the student's idea will be: most of a bar.
      Statement asked = known.orElse(aBarWithoutItsLastBeat(part));
      List<Unit> units = units(part, asked);
      List<Bar> bars = new ArrayList<>();
      List<Turn> turns = new ArrayList<>();
      for (Unit unit : units) {
        turns.add(new Turn(Passage.Who.COACH, unit));
        turns.add(new Turn(Passage.Who.STUDENT, unit));
        bars.addAll(unit.bars());
        bars.addAll(unit.bars());
      }
      Chart twice = PracticeChart.of(chart, part, bars, chart.title() + ", each chord twice");
      int rounds = exercise.rounds().orElse(1);
      Arrangement arranged = arranged(twice, Optional.empty());
      List<Passage> passages = passages(turns, rounds, arranged);
      if (known.isEmpty()) {
        passages.set(0, passage(Passage.Who.STUDENT, passages.get(0), arranged.changes()));
      }
      return new Lesson(exercise, arranged, rounds, known, passages);
    }

    private Lesson guessing() {
      Form part = part();
      Statement idea = ownOrGiven(changesOf(part));
      List<Unit> units = units(part, idea);
      int groups = Math.max(1, (int) Math.ceil((double) units.size() / GUESSED_OVER));
      List<Bar> bars = new ArrayList<>();
      List<Turn> turns = new ArrayList<>();
      for (int group = 0; group < groups; group++) {
        for (int i = 0; i < GUESSED_OVER; i++) {
          Unit unit = units.get((GUESSED_OVER * group + i) % units.size());
          boolean guessed = i == GUESSED_OVER - 1;
          turns.add(new Turn(guessed ? Passage.Who.STUDENT : Passage.Who.COACH, unit));
          bars.addAll(unit.bars());
          if (guessed) {
            turns.add(new Turn(Passage.Who.COACH, unit));
            bars.addAll(unit.bars());
          }
        }
      }
      Chart game = PracticeChart.of(chart, part, bars, chart.title() + ", guess the next");
      int rounds = exercise.rounds().orElse(1);
      Arrangement arranged = arranged(game, Optional.empty());
      return new Lesson(
          exercise, arranged, rounds, Optional.of(idea), passages(turns, rounds, arranged));
    }

    /**
     * Whole bars over which the idea is said once.
     *
     * @param offsetBeats where in them its bar line falls
     */
    private record Unit(List<Bar> bars, double offsetBeats) {}

    private record Turn(Passage.Who who, Unit unit) {}

    private List<Unit> units(Form part, Statement idea) {
      int beats = part.metre().beats();
      List<Double> places = places(part, idea);
      List<Integer> firstBars = new ArrayList<>();
      List<Double> offsets = new ArrayList<>();
      for (double place : places) {
        int bar = (int) Math.floor(place / beats);
        if (firstBars.isEmpty() || bar > firstBars.get(firstBars.size() - 1)) {
          firstBars.add(bar);
          offsets.add(place - (double) bar * beats);
        }
      }
      List<Unit> units = new ArrayList<>();
      for (int i = 0; i < firstBars.size(); i++) {
        int end = i + 1 < firstBars.size() ? firstBars.get(i + 1) : part.bars().size();
        units.add(new Unit(part.bars().subList(firstBars.get(i), end), offsets.get(i)));
      }
      return units;
    }

    private List<Passage> passages(List<Turn> turns, int rounds, Arrangement arranged) {
      int beats = arranged.metre().beats();
      List<Passage> passages = new ArrayList<>();
      double bar = 0;
      for (int round = 0; round < rounds; round++) {
        for (Turn turn : turns) {
          double end = bar + (double) turn.unit().bars().size() * beats;
          passages.add(
              passage(turn.who(), bar + turn.unit().offsetBeats(), end, arranged.changes()));
          bar = end;
        }
      }
      return passages;
    }

    private static Passage passage(Passage.Who who, Passage other, Changes changes) {
      return passage(who, other.startBeat(), other.endBeat(), changes);
    }

    private static Passage passage(Passage.Who who, double start, double end, Changes changes) {
      List<ChordSpan> chords = changes.between(start, end);
      return new Passage(who, start, end, chords);
    }

    private Statement ownOrGiven(Changes changes) {
      return said(
          exercise
              .idea()
              .orElseGet(
                  () ->
                      DemoIdea.over(
                          changes.at(0).harmony(),
                          changes.key(),
                          DemoIdea.pulseBeats(exercise.tempo()),
                          seed)),
          changes);
    }

    private static Statement said(List<Note> notes, Changes changes) {
      return new Statement(notes, Optional.of(changes.at(0).harmony()));
    }

    private static Statement aBarWithoutItsLastBeat(Form form) {
      int beats = Math.max(1, form.metre().beats() - 1);
      return new Statement(List.of(new Note(0, beats, 60)), Optional.empty());
    }

    private List<Double> places(Form part, Statement idea) {
      List<Double> places = Places.of(part, idea);
      if (places.isEmpty()) {
        throw new UserMistake(
            "“"
                + chart.title()
                + "”: the idea finds no room over these chords; make it shorter, or choose more"
                + " bars");
      }
      return places;
    }

    private static double need(Statement idea) {
      return idea.endBeats() + Places.pickUpBeats(idea);
    }

    private Arrangement arranged(Chart over, Optional<BarRange> bars) {
      return Arrangement.of(over, exercise.feel(), exercise.tempo(), bars, singer());
    }

    private Optional<PitchRange> singer() {
      boolean isTold = !exercise.range().equals(holdfast.carry.PitchRange.ANY);
      return isTold
          ? Optional.of(new PitchRange(exercise.range().low(), exercise.range().high()))
          : Optional.empty();
    }

    /** The bars that are practised, as a form of their own. */
    private Form part() {
      BarRange bars = exercise.bars().orElse(new BarRange(1, whole.bars().size()));
      if (bars.last() > whole.bars().size()) {
        throw new UserMistake(
            "“"
                + chart.title()
                + "” has bars 1 to "
                + whole.bars().size()
                + ", and no bar "
                + bars.last());
      }
      double start = whole.beatOfBar(bars.first());
      List<Bar> moved =
          whole.bars().subList(bars.first() - 1, bars.last()).stream()
              .map(bar -> earlier(bar, start))
              .toList();
      return new Form(whole.metre(), Optional.empty(), moved);
    }

    private Changes changesOf(Form part) {
      return new Changes(part.changes(), part.lengthBeats(), chart.key());
    }

    private static Bar earlier(Bar bar, double beats) {
      return new Bar(
          bar.number(),
          bar.writtenNumber(),
          bar.pass(),
          bar.section(),
          bar.unexpected(),
          bar.chords().stream().map(span -> span.later(-beats)).toList());
    }
  }
}
