package holdfast.window.invent;

import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.WrittenIdea;
import holdfast.practice.invent.Invention;
import holdfast.practice.invent.Vamp;
import holdfast.session.Audience.Wish;
import holdfast.session.Moment;
import holdfast.time.Metre;
import holdfast.window.Desk;
import holdfast.window.Page;
import holdfast.window.charts.Shelf;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import holdfast.window.play.EarLight;
import holdfast.window.play.TakeRequest;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JSpinner;
import javax.swing.SpinnerNumberModel;
import javax.swing.Timer;

/** A chord or two go round, idea after idea is kept, and one of them is carried on. */
public final class InventPage implements Page {

  private static final int LOOK_MILLIS = 50;
  private static final int CHORUSES = 2;
  private static final int USUAL_MINUTES = 3;
  private static final String[] CHORDS = {
    "Dm7", "Cmaj7", "Dm7 G7", "Am7", "F7", "Gm7 C7", "Cmaj7 Am7", "Ebmaj7"
  };

  private final Desk desk;
  private final Kit kit;
  private final JComboBox<String> chords = new JComboBox<>(CHORDS);
  private final JSpinner minutes =
      new JSpinner(new SpinnerNumberModel(USUAL_MINUTES, 1, (int) Vamp.LONGEST_MINUTES, 1));
  private final JComboBox<String> charts = new JComboBox<>();
  private final List<Shelf.Entry> shelf;
  private final JButton start;
  private final JButton starter;
  private final Prose said;
  private final Prose count;
  private final EarLight light;
  private final JPanel ideas;
  private final JComponent component;
  private final Timer timer = new Timer(LOOK_MILLIS, event -> look());
  private Optional<InventScene> running = Optional.empty();
  private Optional<List<Note>> toCarry = Optional.empty();
  private int heard;
  private int different;

  /** The page for inventing. */
  public InventPage(Desk desk) {
    this.desk = desk;
    this.kit = desk.kit();
    this.shelf = new Shelf(desk.folder()).all();
    shelf.forEach(entry -> charts.addItem(entry.chart().title()));
    chords.setEditable(true);
    this.start = kit.primary("invent.start", this::startOrStop);
    this.starter = kit.button("invent.starter", () -> ask(Wish.NEW_IDEA));
    this.said = new Prose("", kit.font(1.15), kit.palette().ink());
    said.setName("invent.said");
    this.count = new Prose("", kit.look().bold(1.15), kit.palette().ink());
    count.setName("invent.count");
    this.light = new EarLight(kit, "");
    this.ideas = kit.row(12);
    this.component =
        kit.page(
            940,
            kit.title("invent.title"),
            kit.prose(desk.words().say("invent.why")),
            kit.row(
                14,
                kit.named("invent.chords", chords),
                kit.named("invent.minutes", minutes),
                kit.named("invent.chart", charts)),
            kit.row(10, start, starter, light),
            said,
            count,
            ideas);
    rest();
  }

  private void rest() {
    running = Optional.empty();
    timer.stop();
    Kit.label(start, desk.words().say("invent.start"));
    starter.setEnabled(false);
    chords.setEnabled(true);
    minutes.setEnabled(true);
    light.show(false, true, 0);
    light.setVisible(false);
    component.revalidate();
  }

  private void startOrStop() {
    if (running.isPresent()) {
      ask(Wish.STOP);
      return;
    }
    InventScene scene = new InventScene();
    try {
      List<String> symbols =
          Arrays.stream(String.valueOf(chords.getSelectedItem()).strip().split("\\s+", -1))
              .filter(symbol -> !symbol.isEmpty())
              .toList();
      int length = ((Number) minutes.getValue()).intValue();
      Vamp vamp = new Vamp(symbols, length, Vamp.USUAL_TEMPO);
      vamp.performance(Optional.empty());
      light.setSource(desk.devices().input(desk.player()).name());
      desk.outlive(
          new InventThread(
                  vamp,
                  desk.player(),
                  desk.devices(),
                  scene,
                  why -> {
                    // A session that was left may end when another one runs.
                    if (running.filter(scene::equals).isPresent()) {
                      ended(why);
                    }
                  })
              .start());
    } catch (UserMistake e) {
      desk.tell(e.getMessage());
      return;
    }
    desk.tell("");
    running = Optional.of(scene);
    heard = 0;
    different = 0;
    ideas.removeAll();
    count.setText("");
    said.setText(desk.words().say("invent.begin"));
    Kit.label(start, desk.words().say("invent.stop"));
    starter.setEnabled(true);
    light.setVisible(true);
    chords.setEnabled(false);
    minutes.setEnabled(false);
    timer.start();
    component.revalidate();
    component.repaint();
  }

  private void ask(Wish wish) {
    running.ifPresent(scene -> scene.ask(wish));
  }

  private void ended(Optional<String> why) {
    look();
    rest();
    why.ifPresent(desk::tell);
    toCarry.ifPresent(this::carry);
    toCarry = Optional.empty();
  }

  private void look() {
    running.ifPresent(
        scene -> {
          scene.newSentences().forEach(sentence -> said.setText(desk.said(sentence)));
          scene.newIdeas().forEach(this::add);
          boolean hearing = scene.now().map(Moment::hearing).orElse(false);
          light.show(hearing, scene.now().map(Moment::listening).orElse(true), hearing ? 0.8 : 0.0);
        });
  }

  private void add(Invention idea) {
    said.setText(desk.said(idea.sentence()));
    heard++;
    if (idea.isNew()) {
      different++;
      List<Note> notes = WrittenIdea.ofPlayed(idea.notes(), Metre.COMMON);
      JButton carry = kit.button("invent.carry", () -> choose(notes));
      carry.setName("invent.carry" + idea.number());
      carry
          .getAccessibleContext()
          .setAccessibleName(desk.words().say("invent.carry") + ": " + idea.number());
      IdeaTile tile =
          new IdeaTile(
              kit, desk.preferences().noteNames(), idea.number(), notes, idea.differences());
      tile.setName("invent.tile" + idea.number());
      ideas.add(kit.column(4, tile, carry));
    }
    count.setText(desk.words().say("invent.count", different, heard));
    component.revalidate();
    component.repaint();
  }

  private void choose(List<Note> idea) {
    if (running.isPresent()) {
      toCarry = Optional.of(idea);
      ask(Wish.STOP);
    } else {
      carry(idea);
    }
  }

  private void carry(List<Note> idea) {
    Shelf.Entry over = shelf.get(Math.max(0, charts.getSelectedIndex()));
    desk.play(TakeRequest.of(over.chart(), CHORUSES, desk.player()).carrying(idea));
  }

  @Override
  public JComponent component() {
    return component;
  }

  @Override
  public void shown() {
    start.requestFocusInWindow();
  }

  @Override
  public void left() {
    ask(Wish.STOP);
    rest();
  }
}
