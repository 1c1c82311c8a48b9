package holdfast.window.after;

import holdfast.backing.Arrangement;
import holdfast.backing.BackingEvent;
import holdfast.backing.BarRange;
import holdfast.backing.Performance;
import holdfast.book.SelfEstimate;
import holdfast.book.SelfEstimate.Feeling;
import holdfast.disk.WholeFile;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.Plan;
import holdfast.practice.Step;
import holdfast.report.JudgementText;
import holdfast.report.Occasion;
import holdfast.report.ReportPage;
import holdfast.report.TakeSentences;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.window.Aloud;
import holdfast.window.Desk;
import holdfast.window.Page;
import holdfast.window.part.Keys;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import holdfast.window.play.FinishedTake;
import holdfast.window.play.FormSheet;
import holdfast.window.play.IdeaCard;
import holdfast.window.play.TakeRequest;
import java.awt.BorderLayout;
import java.awt.Component;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** The take that was just played. */
public final class AfterPage implements Page {

  private static final int PHRASE_VELOCITY = 92;

  private final Desk desk;
  private final Kit kit;
  private final JPanel panel = new JPanel(new BorderLayout());
  private final Aloud aloud = new Aloud();
  private final Optional<FinishedTake> take;
  private Optional<JComponent> firstFocus = Optional.empty();

  /** The page for the last take. */
  public AfterPage(Desk desk) {
    this.desk = desk;
    this.kit = desk.kit();
    this.take = desk.lastTake();
    panel.setBackground(kit.palette().paper());
    if (take.isEmpty()) {
      panel.add(kit.page(720, kit.title("page.after"), kit.prose(desk.words().say("after.none"))));
    } else if (take.get().folder().isPresent()
        && take.get().folder().get().felt().isEmpty()
        && desk.preferences().isOn("ask-feeling", true)) {
      ask(take.get());
    } else {
      tell(take.get());
    }
  }

  @Override
  public JComponent component() {
    return panel;
  }

  @Override
  public void shown() {
    firstFocus.ifPresent(JComponent::requestFocusInWindow);
  }

  @Override
  public void left() {
    aloud.stop();
  }

  private void ask(FinishedTake finished) {
    List<Component> answers = new ArrayList<>();
    int number = 1;
    for (Feeling feeling : Feeling.values()) {
      JButton button = kit.button("felt." + feeling.word(), () -> felt(finished, feeling));
      Keys.bind(panel, Integer.toString(number++), () -> felt(finished, feeling));
      answers.add(kit.row(4, button));
      if (firstFocus.isEmpty()) {
        firstFocus = Optional.of(button);
      }
    }
    Keys.bind(panel, "ESCAPE", () -> skip(finished));
    panel.add(
        kit.page(
            720,
            kit.title("felt.title"),
            kit.prose(desk.words().say("felt.why")),
            kit.column(8, answers.toArray(Component[]::new)),
            kit.row(4, kit.button("felt.skip", () -> skip(finished)))));
  }

  private void felt(FinishedTake finished, Feeling feeling) {
    try {
      finished.folder().orElseThrow().felt(new SelfEstimate(feeling, ""));
    } catch (UserMistake e) {
      desk.tell(e.getMessage());
    }
    skip(finished);
  }

  private void skip(FinishedTake finished) {
    panel.removeAll();
    panel.getActionMap().clear();
    panel.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW).clear();
    tell(finished);
    panel.revalidate();
    panel.repaint();
    shown();
  }

  private void tell(FinishedTake finished) {
    JudgedTake judged = finished.judged();
    Prose why = kit.prose(desk.words().say("after.choose"));
    FormSheet form =
        new FormSheet(
            kit,
            desk.preferences().noteNames(),
            judged.setting().form().bars(),
            judged.choruses(),
            desk::said);
    form.setName("after.sheet");
    form.setIdea(judged.idea());
    judged.phrases().forEach(form::add);
    form.onChoice(phrase -> choose(finished, phrase, why));
    firstFocus = Optional.of(form);
    IdeaCard idea =
        new IdeaCard(kit, desk.preferences().noteNames(), judged.setting().changes().key());
    idea.show(judged.idea());
    List<Component> parts = new ArrayList<>();
    parts.add(
        new Prose(judged.setting().chart().title(), kit.look().bold(1.7), kit.palette().ink()));
    TakeSentences.of(judged).forEach(s -> parts.add(kit.prose(desk.said(s))));
    TakeSentences.inHindsight(judged).forEach(s -> parts.add(kit.quiet(desk.said(s))));
    JButton again = kit.primary("after.again", () -> desk.play(finished.request()));
    parts.add(
        kit.row(
            8,
            again,
            kit.button("after.report", () -> open(finished)),
            kit.button("after.save", () -> save(finished)),
            kit.button("after.charts", () -> desk.go(Desk.CHARTS))));
    parts.add(kit.heading("play.form"));
    parts.add(form);
    why.setName("after.why");
    JComponent phrase = kit.card(6, kit.heading("after.phrase"), why);
    parts.add(judged.idea().isPresent() ? kit.beside(12, idea, phrase) : phrase);
    parts.add(plan(finished));
    panel.add(kit.page(980, parts.toArray(Component[]::new)));
  }

  private JComponent plan(FinishedTake finished) {
    List<Component> steps = new ArrayList<>();
    steps.add(kit.heading("after.next"));
    int number = 1;
    for (Step step : Plan.after(finished.judged(), finished.request().chart().title()).steps()) {
      JButton start = kit.button("after.start", () -> practise(finished, step));
      start.setName("after.step" + number++);
      start
          .getAccessibleContext()
          .setAccessibleName(desk.words().say("after.start") + ": " + desk.said(step.what()));
      steps.add(
          kit.column(
              3,
              new Prose(desk.said(step.what()), kit.look().bold(1), kit.palette().ink()),
              kit.quiet(desk.said(step.why()) + " " + desk.said(step.way().explanation())),
              kit.row(4, start)));
    }
    return kit.card(12, steps.toArray(Component[]::new));
  }

  private void practise(FinishedTake finished, Step step) {
    TakeRequest before = finished.request();
    TakeRequest.Who who = before.who() == TakeRequest.Who.DEMO ? desk.player() : before.who();
    desk.play(
        TakeRequest.of(before.chart(), 1, who)
            .practising(step.way(), step.tempo(), step.bars(), step.idea()));
  }

  private void choose(FinishedTake finished, JudgedPhrase phrase, Prose why) {
    why.setText(
        new JudgementText(finished.judged().setting())
            .why(phrase).stream()
                .map(line -> desk.said(line.strip()))
                .collect(Collectors.joining("\n")));
    aloud.play(heard(finished, phrase), desk.devices(), desk::tell);
  }

  /** The bars of a phrase, with their backing and the phrase as it was played. */
  private static Performance heard(FinishedTake finished, JudgedPhrase phrase) {
    JudgedTake take = finished.judged();
    int beats = take.setting().metre().beats();
    int bars = take.setting().form().bars().size();
    int first = phrase.place().bar();
    double barStart = Math.round(phrase.startBeat() / beats) * (double) beats;
    if (take.setting().way().at(barStart + 0.01).bar() != first) {
      barStart = Math.floor(phrase.startBeat() / beats) * beats;
    }
    int length = (int) Math.max(1, Math.ceil((phrase.endBeat() - barStart) / beats));
    int last = Math.min(bars, first + length - 1);
    Arrangement arrangement =
        Arrangement.of(
            take.setting().chart(),
            finished.request().feel(),
            take.setting().beats().openingTempo(),
            Optional.of(new BarRange(first, last)),
            Optional.empty());
    List<BackingEvent> line = new ArrayList<>();
    for (Note note : phrase.notes()) {
      Note here = new Note(note.onsetBeats() - barStart, note.durationBeats(), note.pitch());
      line.add(BackingEvent.ofLine(here, PHRASE_VELOCITY));
    }
    return new Performance(arrangement, OptionalInt.of(1), 0, Set.of()).withPlayedLine(line);
  }

  /** Opens the report in the system's browser, or says where it is. */
  private void open(FinishedTake finished) {
    try {
      desk.open(report(finished));
    } catch (IOException | UserMistake e) {
      desk.tell(desk.words().say("after.report-fails", e.getMessage()));
    }
  }

  private Path report(FinishedTake finished) throws IOException {
    if (finished.folder().isPresent()) {
      return finished.folder().get().report();
    }
    Path reports = desk.folder().resolve("reports");
    Files.createDirectories(reports);
    Path file = reports.resolve("demo.html");
    WholeFile.write(file, page(finished));
    return file;
  }

  private String page(FinishedTake finished) {
    return ReportPage.of(
        finished.judged(),
        Occasion.of(
            finished.request().who() == TakeRequest.Who.DEMO
                ? Optional.empty()
                : desk.preferences().text("student"),
            LocalDate.now(ZoneId.systemDefault())));
  }

  private void save(FinishedTake finished) {
    desk.files().toSave(panel, "report.html").ifPresent(file -> save(finished, file));
  }

  private void save(FinishedTake finished, Path file) {
    try {
      WholeFile.write(file, page(finished));
      desk.tell(desk.words().say("after.report-is", file));
    } catch (UserMistake e) {
      desk.tell(e.getMessage());
    }
  }
}
