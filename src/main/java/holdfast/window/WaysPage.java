package holdfast.window;

import holdfast.backing.Arrangement;
import holdfast.chart.Chart;
import holdfast.practice.Way;
import holdfast.window.charts.Shelf;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import holdfast.window.play.TakeRequest;
import java.awt.Component;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JSpinner;
import javax.swing.SpinnerNumberModel;

/** The ways of practising, each in one sentence. */
final class WaysPage implements Page {

  private final Desk desk;
  private final JComponent component;
  private final JComboBox<String> charts = new JComboBox<>();
  private final JSpinner tempo =
      new JSpinner(
          new SpinnerNumberModel(60, (int) Arrangement.SLOWEST, (int) Arrangement.FASTEST, 2));
  private final List<Shelf.Entry> shelf;

  WaysPage(Desk desk) {
    this.desk = desk;
    Kit kit = desk.kit();
    this.shelf = new Shelf(desk.folder()).all();
    shelf.forEach(entry -> charts.addItem(entry.chart().title()));
    charts.addActionListener(
        event -> tempo.setValue((int) Math.round(TakeRequest.playable(chart().tempo()))));
    tempo.setValue((int) Math.round(TakeRequest.playable(chart().tempo())));
    List<Component> parts = new ArrayList<>();
    parts.add(kit.title("ways.title"));
    parts.add(kit.row(14, kit.named("ways.chart", charts), kit.named("charts.tempo", tempo)));
    for (Way way : Way.values()) {
      JButton start = kit.button("after.start", () -> start(way));
      start.setName("way." + Preferences.word(way));
      start
          .getAccessibleContext()
          .setAccessibleName(desk.words().say("after.start") + ": " + desk.said(way.title()));
      parts.add(
          kit.card(
              5,
              new Prose(desk.said(way.title()), kit.look().bold(1.1), kit.palette().ink()),
              kit.prose(desk.said(way.explanation())),
              kit.row(4, start)));
    }
    parts.add(
        kit.card(
            5,
            new Prose(desk.words().say("invent.title"), kit.look().bold(1.1), kit.palette().ink()),
            kit.prose(desk.words().say("invent.why")),
            kit.row(4, kit.button("invent.open", () -> desk.go(Desk.INVENT)))));
    this.component = kit.page(760, parts.toArray(Component[]::new));
  }

  private Chart chart() {
    return shelf.get(Math.max(0, charts.getSelectedIndex())).chart();
  }

  private void start(Way way) {
    desk.play(
        TakeRequest.of(chart(), 1, desk.player())
            .practising(
                way,
                ((Number) tempo.getValue()).doubleValue(),
                Optional.empty(),
                Optional.empty()));
  }

  @Override
  public JComponent component() {
    return component;
  }

  @Override
  public void shown() {
    charts.requestFocusInWindow();
  }
}
