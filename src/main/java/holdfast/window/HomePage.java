package holdfast.window;

import holdfast.chart.Chart;
import holdfast.melody.Note;
import holdfast.report.picture.Mark;
import holdfast.session.DemoTake;
import holdfast.window.part.BigChoice;
import holdfast.window.part.Kit;
import holdfast.window.play.TakeRequest;
import java.awt.GridLayout;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** What it is, in one line, and three ways to begin. */
final class HomePage implements Page {

  private final Desk desk;
  private final JComponent component;
  private final BigChoice first;

  HomePage(Desk desk) {
    this.desk = desk;
    Kit kit = desk.kit();
    this.first =
        new BigChoice(
            kit,
            "home.sing",
            shape(60, 63, 62, 67),
            Mark.CARRIED,
            () -> check(TakeRequest.Who.VOICE));
    JPanel choices = new JPanel(new GridLayout(1, 3, kit.look().px(14), 0));
    choices.setOpaque(false);
    choices.add(first);
    choices.add(
        new BigChoice(
            kit,
            "home.keyboard",
            shape(60, 64, 67, 62),
            Mark.VARIED,
            () -> check(TakeRequest.Who.KEYBOARD)));
    choices.add(new BigChoice(kit, "home.demo", shape(67, 60, 64, 62), Mark.NEW, this::demo));
    this.component =
        kit.page(
            940,
            kit.title("home.title"),
            kit.prose(desk.words().say("home.line")),
            choices,
            kit.quiet(desk.words().say("home.how")));
  }

  private static List<Note> shape(int... pitches) {
    double[] onsets = {0, 1, 1.6, 2.4};
    List<Note> notes = new java.util.ArrayList<>();
    for (int i = 0; i < pitches.length; i++) {
      notes.add(new Note(onsets[i], 0.5, pitches[i]));
    }
    return notes;
  }

  private void check(TakeRequest.Who who) {
    desk.check(who);
  }

  private void demo() {
    Chart chart = DemoTake.shipped().chart();
    TakeRequest request = TakeRequest.of(chart, DemoTake.CHORUSES, TakeRequest.Who.DEMO);
    desk.play(request.played(DemoTake.shipped().tempo(), request.feel(), request.choruses()));
  }

  @Override
  public JComponent component() {
    return component;
  }

  @Override
  public void shown() {
    first.requestFocusInWindow();
  }
}
