package holdfast.window.book;

import holdfast.book.overview.ClassPage;
import holdfast.book.overview.ClassWork;
import holdfast.book.overview.Share;
import holdfast.book.overview.Terms;
import holdfast.window.Desk;
import holdfast.window.Page;
import holdfast.window.charts.Shelf;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JProgressBar;
import javax.swing.SwingWorker;

/** A teacher chooses the folder of what came back, and gets one page of it. */
public final class OverviewPage implements Page {

  private final Desk desk;
  private final JComponent component;
  private final JButton choose;
  private final JButton open;
  private final Prose state;
  private final JComboBox<String> charts = new JComboBox<>();
  private final List<Shelf.Entry> shelf;
  private final JProgressBar progress = new JProgressBar();
  private final JComponent judging;
  private Optional<Work> running = Optional.empty();
  private Optional<Path> page = Optional.empty();

  /** The page. */
  public OverviewPage(Desk desk) {
    this.desk = desk;
    Kit kit = desk.kit();
    this.shelf = new Shelf(desk.folder()).all();
    charts.addItem(desk.words().say("class.no-chart"));
    shelf.forEach(entry -> charts.addItem(entry.chart().title()));
    this.choose = kit.primary("class.choose", this::choose);
    this.open = kit.button("class.page", () -> page.ifPresent(desk::open));
    open.setEnabled(false);
    this.state = kit.prose("");
    state.setName("class.state");
    this.judging = kit.named("class.progress", progress);
    judging.setVisible(false);
    open.setVisible(false);
    this.component =
        kit.page(
            760,
            kit.title("page.class"),
            kit.prose(desk.words().say("class.why")),
            kit.named("class.chart", charts),
            kit.row(8, choose),
            judging,
            state,
            kit.row(8, open));
  }

  private void choose() {
    desk.files().folder(component).ifPresent(this::judge);
  }

  /** Judges what is new in this folder. */
  public void judge(Path folder) {
    choose.setEnabled(false);
    judging.setVisible(true);
    open.setVisible(true);
    progress.setValue(0);
    state.setText("");
    Work work = new Work(folder, terms());
    running = Optional.of(work);
    work.execute();
  }

  /** Over what bare MIDI and sound files were played, at the chart's own tempo. */
  private Terms terms() {
    int chosen = charts.getSelectedIndex();
    return chosen <= 0 ? Terms.NONE : Terms.over(shelf.get(chosen - 1).chart());
  }

  @Override
  public JComponent component() {
    return component;
  }

  @Override
  public void shown() {
    choose.requestFocusInWindow();
  }

  @Override
  public void left() {
    // What was judged is kept; the next run goes on from there.
    running.ifPresent(work -> work.cancel(true));
  }

  private final class Work extends SwingWorker<String, ClassWork.Step> {
    private final Path folder;
    private final Terms terms;

    Work(Path folder, Terms terms) {
      this.folder = folder;
      this.terms = terms;
    }

    @Override
    protected String doInBackground() throws InterruptedException {
      Path overview = folder.resolve("overview");
      int cores = Math.max(1, Runtime.getRuntime().availableProcessors() - 1);
      int judged =
          new ClassWork(folder, overview, terms, Share.ALL).run(cores, step -> publish(step));
      ClassPage.Counts counts = ClassPage.write(overview);
      String done = desk.words().say("class.done", judged, counts.takes());
      return counts.troubles() == 0
          ? done
          : done + " " + desk.words().say("class.troubles", counts.troubles());
    }

    @Override
    protected void process(List<ClassWork.Step> steps) {
      ClassWork.Step last = steps.get(steps.size() - 1);
      progress.setMaximum(last.all());
      progress.setValue(last.done());
    }

    @Override
    protected void done() {
      running = Optional.empty();
      choose.setEnabled(true);
      try {
        state.setText(get());
        page = Optional.of(folder.resolve("overview").resolve(ClassPage.PAGE));
        open.setEnabled(true);
        open.requestFocusInWindow();
      } catch (CancellationException left) {
        state.setText("");
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } catch (ExecutionException e) {
        desk.tell(String.valueOf(e.getCause().getMessage()));
      }
    }
  }
}
