package holdfast.window.play;

import holdfast.backing.Arrangement;
import holdfast.backing.BarPlace;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.Route;
import holdfast.chart.Bar;
import holdfast.chart.ChordSpan;
import holdfast.listening.PlayEvent;
import holdfast.melody.Note;
import holdfast.motif.Motif;
import holdfast.practice.CoachLine;
import holdfast.practice.Lesson;
import holdfast.practice.Outcome;
import holdfast.practice.Passage;
import holdfast.report.PhrasePicture;
import holdfast.report.TreatmentWords;
import holdfast.report.picture.BarPainter.Lozenge;
import holdfast.report.picture.Mark;
import holdfast.session.Audience.Wish;
import holdfast.session.Feedback;
import holdfast.session.JudgedPhrase;
import holdfast.session.Moment;
import holdfast.session.Place;
import holdfast.window.Desk;
import holdfast.window.NoteNaming;
import holdfast.window.Page;
import holdfast.window.Preferences.Hints;
import holdfast.window.part.Keys;
import holdfast.window.part.Kit;
import java.awt.Toolkit;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.function.DoubleFunction;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.RepaintManager;
import javax.swing.SwingWorker;
import javax.swing.Timer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A take while it runs. */
public final class PlayPage implements Page {

  private static final Logger LOG = LoggerFactory.getLogger(PlayPage.class);

  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  /** Sixty frames a second. */
  private static final int FRAME_MILLIS = 16;

  /** What of the level is left after a frame: it falls to a tenth in half a second. */
  private static final double LEVEL_FALL = 0.93;

  /** Notes this much behind the beat are not looked at any more, in bars. */
  private static final int BARS_KEPT = 10;

  private final Desk desk;
  private final Kit kit;
  private final NoteNaming naming;
  private final Arrangement arrangement;
  private final double barBeats;
  private final int choruses;
  private final Feedback feedback;
  private final LiveScene scene;

  private final ChordBoard board;
  private final EarLight ear;
  private final VerdictLine verdict;
  private final Stage stage;
  private final FormSheet form;
  private final IdeaCard ideaCard;
  private final SoFar soFar;
  private final JButton hintsButton;
  private final JPanel panel;
  private final PlayLayout layout;
  private final Timer timer;
  private final FrameTimes frameTimes = new FrameTimes();

  private HintStrength hints;
  private Ghosts ghosts = Ghosts.NONE;
  private Optional<Motif> idea;
  private final List<JudgedPhrase> phrases = new ArrayList<>();
  private final List<Lozenge> judged = new ArrayList<>();
  private final List<Lozenge> coach = new ArrayList<>();
  private final List<Note> fresh = new ArrayList<>();
  private final Map<Integer, PlayEvent.NoteOn> sounding = new HashMap<>();
  private double level;
  private double lineStart;
  private double lineEnd = Double.NEGATIVE_INFINITY;
  private long shownQuarter = Long.MIN_VALUE;

  /** A page for this take, which runs elsewhere and leaves what happens in the scene. */
  public PlayPage(Desk desk, TakeRequest request, LiveScene scene, String source) {
    this.desk = desk;
    this.kit = desk.kit();
    this.naming = desk.preferences().noteNames();
    Performance performance = request.performance();
    this.arrangement = performance.arrangement();
    this.barBeats = arrangement.metre().beats();
    this.choruses = performance.rounds().orElse(0);
    this.feedback =
        request.who() == TakeRequest.Who.DEMO ? Feedback.PHRASE : desk.preferences().feedback();
    this.scene = scene;
    this.idea =
        request
            .lesson()
            .flatMap(Lesson::idea)
            .map(statement -> new Motif(statement.notes(), statement.harmony()))
            .or(request::givenIdea);
    this.hints = HintStrength.start(desk.preferences().hints());
    this.board = new ChordBoard(kit);
    this.ear = new EarLight(kit, desk.said(source));
    this.verdict = new VerdictLine(kit);
    this.stage = new Stage(kit, naming, arrangement);
    this.form = new FormSheet(kit, naming, arrangement.form().bars(), choruses, desk::said);
    this.ideaCard = new IdeaCard(kit, naming, arrangement.changes().key());
    this.soFar = new SoFar(kit);
    JButton stop = kit.primary("play.stop", () -> scene.ask(Wish.STOP));
    this.hintsButton = kit.button("play.hints", this::nextHints);
    JPanel keys =
        kit.row(
            6,
            kit.button("play.new-idea", () -> scene.ask(Wish.NEW_IDEA)),
            kit.button("play.loop", () -> scene.ask(Wish.LOOP_HERE)),
            hintsButton,
            kit.button("play.big", this::big));
    // The demo student and the coach keep the tempo they agreed on.
    boolean tempoTurns = request.who() != TakeRequest.Who.DEMO && request.way().isEmpty();
    if (tempoTurns) {
      keys.add(kit.button("play.slower", () -> scene.ask(Wish.SLOWER)));
      keys.add(kit.button("play.faster", () -> scene.ask(Wish.FASTER)));
    }
    JComponent formPane = kit.scroll(form);
    formPane.setName("play.form");
    List<java.awt.Component> side = List.of(ear, stop, ideaCard, soFar);
    this.layout = new PlayLayout(kit.look(), board, verdict, stage, formPane, form, keys, side);
    this.panel = new JPanel(layout);
    panel.setBackground(kit.palette().paper());
    panel.add(board);
    side.forEach(panel::add);
    panel.add(verdict);
    panel.add(stage);
    panel.add(formPane);
    panel.add(keys);
    Keys.bind(panel, "SPACE", () -> scene.ask(Wish.STOP));
    Keys.bind(panel, "I", () -> scene.ask(Wish.NEW_IDEA));
    Keys.bind(panel, "L", () -> scene.ask(Wish.LOOP_HERE));
    if (tempoTurns) {
      Keys.bind(panel, "LEFT", () -> scene.ask(Wish.SLOWER));
      Keys.bind(panel, "RIGHT", () -> scene.ask(Wish.FASTER));
    }
    Keys.bind(panel, "H", this::nextHints);
    Keys.bind(panel, "B", this::big);
    Keys.bind(panel, "ESCAPE", () -> scene.ask(Wish.STOP));
    this.timer = new Timer(FRAME_MILLIS, event -> frame());
    nameHints();
    idea.ifPresent(this::takeIdea);
    verdict.say(opening(desk, request));
    openAt(performance.route());
  }

  /** The first lines can be read before the music begins. */
  private void openAt(Route route) {
    List<PlayedBar> way = new ArrayList<>();
    Optional<BarPlace> place = Optional.of(route.first());
    for (double beat = 0; way.size() < 2 * PlayedBar.BARS_IN_A_LINE && place.isPresent(); ) {
      way.add(new PlayedBar(beat, place.get()));
      beat += barBeats;
      place = route.after(place.get());
    }
    DoubleFunction<Optional<PlayedBar>> at =
        beat -> way.stream().filter(bar -> bar.startBeat() == beat).findFirst();
    List<PlayedBar> now = PlayedBar.line(0, barBeats, at);
    stage.turnTo(now, PlayedBar.line(now.size() * barBeats, barBeats, at));
  }

  private static String opening(Desk desk, TakeRequest request) {
    if (request.way().isPresent()) {
      return desk.said(request.way().get().explanation());
    }
    if (request.givenIdea().isPresent()) {
      return desk.words().say("play.given");
    }
    return desk.words()
        .say(request.who() == TakeRequest.Who.DEMO ? "play.demo-starts" : "play.starts");
  }

  @Override
  public JComponent component() {
    return panel;
  }

  @Override
  public boolean isAlone() {
    return true;
  }

  @Override
  public void shown() {
    timer.start();
    stage.requestFocusInWindow();
  }

  @Override
  public void left() {
    timer.stop();
  }

  /** The tune that is played. */
  public String title() {
    return arrangement.chart().title();
  }

  /** How long its frames took. */
  public FrameTimes frameTimes() {
    return frameTimes;
  }

  /** The tempo that was planned last, once the music has begun. */
  public Optional<Double> tempo() {
    return scene
        .playback()
        .map(p -> p.tempoMap().points())
        .map(points -> points.get(points.size() - 1).beatsPerMinute());
  }

  /** The phrases that were judged so far. */
  public List<JudgedPhrase> phrases() {
    return List.copyOf(phrases);
  }

  private void big() {
    layout.setBig(!layout.isBig());
    ideaCard.setVisible(!layout.isBig());
    soFar.setVisible(!layout.isBig());
    panel.revalidate();
    panel.repaint();
  }

  private void nextHints() {
    Hints next =
        switch (hints.hints()) {
          case ON -> Hints.FADING;
          case FADING -> Hints.OFF;
          case OFF -> Hints.ON;
        };
    hints = hints.with(next);
    desk.keep(desk.preferences().with("hints", next));
    nameHints();
    stage.hint(ghosts, hints.strength());
  }

  private void nameHints() {
    Kit.label(
        hintsButton, kit.words().say("play.hints") + ": " + kit.words().of("hints", hints.hints()));
    hintsButton.setMnemonic(0);
  }

  // A frame.

  private void frame() {
    long start = System.nanoTime();
    long cpu = THREADS.getCurrentThreadCpuTime();
    scene.playback().ifPresent(this::draw);
    scene.newNotices().forEach(notice -> verdict.say(desk.said(notice)));
    RepaintManager.currentManager(panel).paintDirtyRegions();
    Toolkit.getDefaultToolkit().sync();
    frameTimes.add(System.nanoTime() - start, THREADS.getCurrentThreadCpuTime() - cpu);
  }

  private void draw(Playback playback) {
    double beat = playback.clock().beatAt(System.nanoTime());
    boolean heardAnew = false;
    for (PlayEvent event : scene.newEvents()) {
      hear(event, playback);
      heardAnew = true;
    }
    List<JudgedPhrase> ended = scene.newPhrases();
    ended.forEach(this::take);
    boolean spoken = lesson();
    if (heardAnew || spoken || !ended.isEmpty() || !sounding.isEmpty()) {
      stage.play(notes(playback, beat), spoken || !ended.isEmpty());
    }
    turn(playback, beat);
    long quarter = (long) Math.floor(beat * 4);
    if (quarter != shownQuarter) {
      shownQuarter = quarter;
      look(playback, beat);
    }
    stage.moveTo(beat, heardAnew);
    level = sounding.isEmpty() ? level * LEVEL_FALL * LEVEL_FALL : level * LEVEL_FALL;
    boolean listening = scene.moment().map(Moment::listening).orElse(true);
    ear.show(!sounding.isEmpty(), listening, level);
  }

  /** What a lesson says: whose turn it is, what the coach plays, what came of it. */
  private boolean lesson() {
    for (Outcome outcome : scene.newOutcomes()) {
      verdict.say(
          outcome.reached() ? Mark.CARRIED : Mark.NEW,
          kit.words().say(outcome.reached() ? "lesson.reached" : "lesson.not-yet"),
          desk.said(outcome.sentence()));
    }
    for (Passage passage : scene.newTurns()) {
      if (passage.who() == Passage.Who.STUDENT) {
        verdict.say(kit.words().say("lesson.your-turn", chord(passage)));
      }
    }
    List<CoachLine> said = scene.newSayings();
    for (CoachLine line : said) {
      verdict.say(kit.words().say("lesson.my-turn", chord(line.passage())));
      line.notes().forEach(note -> coach.add(new Lozenge(note, Optional.of(Mark.NEW))));
    }
    return !said.isEmpty();
  }

  private String chord(Passage passage) {
    return naming.chord(passage.chords().get(0).harmony());
  }

  private void hear(PlayEvent event, Playback playback) {
    if (event instanceof PlayEvent.NoteOn on) {
      sounding.put(on.pitch(), on);
      level = Math.max(level, on.loudness());
    } else {
      PlayEvent.NoteOn on = sounding.remove(event.pitch());
      if (on != null) {
        double from = playback.tempoMap().beatAt(on.seconds());
        double to = playback.tempoMap().beatAt(event.seconds());
        fresh.add(new Note(from, Math.max(0.02, to - from), on.pitch()));
      }
    }
  }

  private void take(JudgedPhrase phrase) {
    phrases.add(phrase);
    if (phrase.statesTheIdea()) {
      takeIdea(new Motif(phrase.notes(), Optional.of(phrase.chords().get(0).harmony())));
    }
    boolean tells = phrase.statesTheIdea() || feedback.tellsAt(phrase.place());
    Optional<Mark> mark = tells ? Optional.of(PhrasePicture.mark(phrase)) : Optional.empty();
    fresh.removeIf(n -> n.onsetBeats() <= phrase.endBeat() - 0.01);
    phrase.notes().forEach(note -> judged.add(new Lozenge(note, mark)));
    if (tells) {
      form.add(phrase);
      say(phrase);
    }
    if (!phrase.statesTheIdea()) {
      hints = hints.after(phrase.carries());
      stage.hint(ghosts, hints.strength());
    }
    soFar.show(phrases.stream().filter(p -> feedback.tellsAt(p.place())).toList());
  }

  private void say(JudgedPhrase phrase) {
    Mark mark = PhrasePicture.mark(phrase);
    if (phrase.statesTheIdea()) {
      verdict.say(mark, kit.words().say("verdict.idea"), kit.words().say("verdict.carry-it"));
    } else {
      verdict.say(
          mark, kit.words().of("mark", mark), desk.said(TreatmentWords.of(phrase.verdict())));
    }
  }

  private void takeIdea(Motif motif) {
    idea = Optional.of(motif);
    ideaCard.show(idea);
    form.setIdea(idea);
    new SwingWorker<Ghosts, Void>() {
      @Override
      protected Ghosts doInBackground() {
        return Ghosts.of(motif, arrangement);
      }

      @Override
      protected void done() {
        try {
          ghosts = get();
          stage.hint(ghosts, hints.strength());
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        } catch (ExecutionException e) {
          LOG.warn("no way was found for the idea", e);
        }
      }
    }.execute();
  }

  private List<Lozenge> notes(Playback playback, double beat) {
    judged.removeIf(l -> l.note().endBeats() < beat - BARS_KEPT * barBeats);
    coach.removeIf(l -> l.note().endBeats() < beat - BARS_KEPT * barBeats);
    List<Lozenge> all = new ArrayList<>(coach);
    all.addAll(judged);
    fresh.forEach(note -> all.add(new Lozenge(note, Optional.empty())));
    for (PlayEvent.NoteOn on : sounding.values()) {
      double from = playback.tempoMap().beatAt(on.seconds());
      all.add(
          new Lozenge(new Note(from, Math.max(0.05, beat - from), on.pitch()), Optional.empty()));
    }
    return all;
  }

  private void turn(Playback playback, double beat) {
    if (beat >= lineEnd) {
      lineStart = lineEnd == Double.NEGATIVE_INFINITY ? 0 : lineEnd;
      List<PlayedBar> first = line(playback, lineStart);
      while (!first.isEmpty() && beat >= end(first)) {
        lineStart = end(first);
        first = line(playback, lineStart);
      }
      lineEnd = first.isEmpty() ? Double.POSITIVE_INFINITY : end(first);
      shownQuarter = Long.MIN_VALUE;
    }
  }

  private double end(List<PlayedBar> line) {
    return line.get(line.size() - 1).startBeat() + barBeats;
  }

  private List<PlayedBar> line(Playback playback, double start) {
    return PlayedBar.line(start, barBeats, beat -> bar(playback, beat));
  }

  private Optional<PlayedBar> bar(Playback playback, double beat) {
    double start = playback.barStart(beat + 1e-6);
    BarPlace place = playback.placeAt(beat + 1e-6);
    boolean isOver = beat > start + barBeats - 1e-3;
    return isOver ? Optional.empty() : Optional.of(new PlayedBar(start, place));
  }

  /** What changes with the quarters of a beat: chord, beat, bar, and what comes. */
  private void look(Playback playback, double beat) {
    List<PlayedBar> now = line(playback, lineStart);
    if (!now.isEmpty()) {
      // A loop that was asked for changes the way; the line goes as far as it still goes.
      lineEnd = end(now);
      stage.turnTo(now, line(playback, lineEnd));
    }
    Optional<PlayedBar> here = bar(playback, Math.max(0, beat));
    if (here.isEmpty()) {
      return;
    }
    PlayedBar bar = here.get();
    double into = Math.max(0, beat) - bar.startBeat();
    List<ChordSpan> spans = arrangement.chordsOf(bar.place());
    ChordSpan span =
        spans.stream()
            .filter(s -> into >= s.startBeat() - 1e-9 && into < s.endBeat())
            .findFirst()
            .orElse(spans.get(0));
    Optional<PlayedBar> following = bar(playback, bar.startBeat() + barBeats);
    int number = Math.max(1, bar.place().bar());
    board.show(
        new ChordBoard.Place(
            naming.chord(span.harmony()),
            next(playback, bar, span),
            1
                + Math.floorMod(
                    (int) Math.floor(beat - (beat < 0 ? 0 : bar.startBeat())), (int) barBeats),
            (int) barBeats,
            number,
            arrangement.form().bars().size(),
            beat < 0 ? 0 : bar.place().chorus(),
            choruses,
            following
                .filter(this::isUnexpected)
                .map(p -> naming.chord(arrangement.chordsOf(p.place()).get(0).harmony()))));
    if (beat >= 0) {
      form.moveTo(new Place(bar.place().chorus(), number));
    }
  }

  private boolean isUnexpected(PlayedBar played) {
    List<Bar> bars = arrangement.form().bars();
    int number = played.place().bar();
    return number >= 1 && bars.get(number - 1).unexpected();
  }

  private String next(Playback playback, PlayedBar bar, ChordSpan span) {
    Optional<PlayedBar> here = Optional.of(bar);
    boolean passed = false;
    for (int ahead = 0; ahead < 8 && here.isPresent(); ahead++) {
      for (ChordSpan other : arrangement.chordsOf(here.get().place())) {
        if (passed && !other.harmony().equals(span.harmony())) {
          return naming.chord(other.harmony());
        }
        passed |= ahead > 0 || other.equals(span);
      }
      here = bar(playback, here.get().startBeat() + barBeats);
    }
    return naming.chord(span.harmony());
  }
}
