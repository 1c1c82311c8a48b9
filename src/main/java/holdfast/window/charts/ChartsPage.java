package holdfast.window.charts;

import holdfast.backing.Arrangement;
import holdfast.backing.Feel;
import holdfast.book.assignment.Assignment;
import holdfast.chart.Bar;
import holdfast.chart.Chart;
import holdfast.chart.ChartException;
import holdfast.chart.ChartLibrary;
import holdfast.chart.ChartText;
import holdfast.chart.MusicXmlChart;
import holdfast.chart.Transposition;
import holdfast.chart.WrittenFor;
import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import holdfast.theory.NoteName;
import holdfast.window.Aloud;
import holdfast.window.Desk;
import holdfast.window.FileDrop;
import holdfast.window.NoteNaming;
import holdfast.window.Page;
import holdfast.window.part.Keys;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import holdfast.window.play.TakeRequest;
import java.awt.BorderLayout;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSpinner;
import javax.swing.JTextField;
import javax.swing.ListSelectionModel;
import javax.swing.SpinnerNumberModel;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;

/** The charts: chosen, looked at, changed, brought in and taken out. */
public final class ChartsPage implements Page {

  private static final int USUAL_CHORUSES = 3;
  private static final int MOST_CHORUSES = 99;

  private static final List<String> TONICS =
      List.of("C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B");

  private static final List<WrittenFor> INSTRUMENTS =
      List.of(WrittenFor.CONCERT, WrittenFor.B_FLAT, WrittenFor.E_FLAT, WrittenFor.F);

  private final Desk desk;
  private final Kit kit;
  private final NoteNaming naming;
  private final Shelf shelf;
  private final JPanel panel = new JPanel(new BorderLayout());
  private final Aloud aloud = new Aloud();
  private final JTextField search = new JTextField();
  private final DefaultListModel<String> titles = new DefaultListModel<>();
  private final JList<String> list = new JList<>(titles);
  private final List<Shelf.Entry> found = new ArrayList<>();
  private final ChartSheet sheet;
  private final Prose title;
  private final Prose about;
  private final JComboBox<String> key = new JComboBox<>();
  private final JSpinner tempo =
      new JSpinner(
          new SpinnerNumberModel(60, (int) Arrangement.SLOWEST, (int) Arrangement.FASTEST, 2));
  private final JComboBox<String> feel = new JComboBox<>();
  private final JSpinner choruses =
      new JSpinner(new SpinnerNumberModel(USUAL_CHORUSES, 1, MOST_CHORUSES, 1));
  private final JComboBox<String> instrument = new JComboBox<>();
  private final JButton play;
  private List<Shelf.Entry> all;
  private boolean filling;

  /** The page. */
  public ChartsPage(Desk desk) {
    this.desk = desk;
    this.kit = desk.kit();
    this.naming = desk.preferences().noteNames();
    this.shelf = new Shelf(desk.folder());
    this.all = shelf.all();
    this.sheet = new ChartSheet(kit, naming);
    sheet.setName("charts.sheet");
    this.title = new Prose("", kit.look().bold(1.5), kit.palette().ink());
    this.about = kit.quiet("");
    this.play = kit.primary("charts.play", () -> start(desk.player()));
    for (Feel each : Feel.values()) {
      feel.addItem(kit.words().of("feel", each));
    }
    TONICS.forEach(tonic -> key.addItem(naming.name(NoteName.parse(tonic))));
    INSTRUMENTS.forEach(
        each -> instrument.addItem(kit.words().say("charts.for", naming.name(each.pitch()))));
    sheet.onBar(this::mark);
    key.addActionListener(event -> preview());
    instrument.addActionListener(event -> preview());
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.addListSelectionListener(event -> choose());
    list.setName("charts.list");
    list.getAccessibleContext().setAccessibleName(kit.words().say("page.charts").replace("&", ""));
    search
        .getDocument()
        .addDocumentListener(
            new DocumentListener() {
              @Override
              public void insertUpdate(DocumentEvent event) {
                filter();
              }

              @Override
              public void removeUpdate(DocumentEvent event) {
                filter();
              }

              @Override
              public void changedUpdate(DocumentEvent event) {
                filter();
              }
            });
    build();
    Keys.bind(list, "ENTER", () -> start(desk.player()));
    filter();
  }

  private void build() {
    int margin = kit.look().px(18);
    JPanel left = new JPanel(new BorderLayout(0, kit.look().px(8)));
    left.setOpaque(false);
    left.setBorder(BorderFactory.createEmptyBorder(margin / 2, margin, margin, 0));
    left.add(kit.named("charts.search", search), BorderLayout.NORTH);
    JScrollPane scroll = new JScrollPane(list);
    left.add(scroll, BorderLayout.CENTER);
    left.setPreferredSize(new java.awt.Dimension(kit.look().px(220), 10));
    JComponent card = kit.card(6, sheet);
    JComponent right =
        kit.page(
            820,
            title,
            about,
            card,
            kit.quiet(kit.words().say("charts.mark")),
            kit.row(
                12,
                kit.named("charts.key", key),
                kit.named("charts.tempo", tempo),
                kit.named("charts.feel", feel),
                kit.named("charts.choruses", choruses),
                kit.named("charts.instrument", instrument)),
            kit.row(
                8,
                play,
                kit.button("charts.demo", () -> start(TakeRequest.Who.DEMO)),
                kit.button("charts.listen", this::listen)),
            kit.row(
                8,
                kit.button("charts.edit", this::edit),
                kit.button("charts.new", this::fresh),
                kit.button("charts.import", this::bringIn),
                kit.button("charts.export", this::takeOut),
                kit.button("pack.open", this::pack)));
    panel.setBackground(kit.palette().paper());
    panel.add(left, BorderLayout.WEST);
    panel.add(right, BorderLayout.CENTER);
    panel.setTransferHandler(new FileDrop(this::bringIn));
  }

  private void filter() {
    String wanted = search.getText().strip().toLowerCase(Locale.ROOT);
    filling = true;
    titles.clear();
    found.clear();
    for (Shelf.Entry entry : all) {
      String text = entry.chart().title() + " " + entry.chart().heading().about().orElse("");
      if (text.toLowerCase(Locale.ROOT).contains(wanted)) {
        found.add(entry);
        titles.addElement(entry.chart().title());
      }
    }
    filling = false;
    if (!found.isEmpty()) {
      list.setSelectedIndex(0);
    }
  }

  private Optional<Shelf.Entry> chosen() {
    int index = list.getSelectedIndex();
    return index >= 0 && index < found.size() ? Optional.of(found.get(index)) : Optional.empty();
  }

  private void choose() {
    if (filling || chosen().isEmpty()) {
      return;
    }
    Chart chart = chosen().get().chart();
    filling = true;
    chart
        .sounding()
        .key()
        .ifPresent(
            k -> {
              for (int i = 0; i < TONICS.size(); i++) {
                if (NoteName.parse(TONICS.get(i)).pitchClass() == k.tonic().pitchClass()) {
                  key.setSelectedIndex(i);
                }
              }
            });
    key.setEnabled(chart.key().isPresent());
    tempo.setValue((int) Math.round(TakeRequest.playable(chart.tempo())));
    feel.setSelectedIndex(
        List.of(Feel.values()).indexOf(Feel.read(chart.feel()).orElse(Feel.PLAIN)));
    filling = false;
    title.setText(chart.title());
    about.setText(chart.heading().about().orElse(""));
    preview();
  }

  /** The chosen chart in the chosen key, as it sounds. */
  private Optional<Chart> sounding() {
    return chosen()
        .map(entry -> entry.chart().sounding())
        .map(
            chart -> {
              NoteName wanted = NoteName.parse(TONICS.get(Math.max(0, key.getSelectedIndex())));
              boolean isThere =
                  chart.key().isEmpty()
                      || chart.key().get().tonic().pitchClass() == wanted.pitchClass();
              return isThere ? chart : Transposition.to(chart, wanted);
            });
  }

  private void preview() {
    if (!filling) {
      sounding()
          .ifPresent(
              chart ->
                  sheet.show(
                      Transposition.writtenFor(
                          chart, INSTRUMENTS.get(Math.max(0, instrument.getSelectedIndex())))));
    }
  }

  private Optional<TakeRequest> request(TakeRequest.Who who) {
    return sounding()
        .map(
            chart ->
                TakeRequest.of(chart, 1, who)
                    .played(
                        ((Number) tempo.getValue()).doubleValue(),
                        List.of(Feel.values()).get(Math.max(0, feel.getSelectedIndex())),
                        OptionalInt.of(((Number) choruses.getValue()).intValue())));
  }

  private void start(TakeRequest.Who who) {
    request(who).ifPresent(desk::play);
  }

  private void listen() {
    if (aloud.isPlaying()) {
      aloud.stop();
      return;
    }
    request(TakeRequest.Who.DEMO)
        .map(r -> r.played(r.tempo(), r.feel(), OptionalInt.of(1)).performance())
        .ifPresent(performance -> aloud.play(performance, desk.devices(), desk::tell));
  }

  /** Marks a bar as a turn that nobody expects, or takes the mark off; kept at once. */
  private void mark(Bar bar) {
    chosen()
        .ifPresent(
            entry -> {
              try {
                Chart marked = entry.chart().marked(bar.writtenNumber(), !bar.unexpected());
                shelf.keep(marked.title(), ChartText.print(marked), entry.file());
                reload(marked.title());
              } catch (IOException | IllegalArgumentException | UserMistake e) {
                desk.tell(e.getMessage());
              }
            });
  }

  private void reload(String chosenTitle) {
    all = shelf.all();
    filter();
    for (int i = 0; i < found.size(); i++) {
      if (found.get(i).chart().title().equals(chosenTitle)) {
        list.setSelectedIndex(i);
      }
    }
  }

  private void edit() {
    chosen().ifPresent(entry -> edit(ChartText.print(entry.chart()), entry.file()));
  }

  private void fresh() {
    edit(kit.words().say("charts.template").replace("\\n", "\n"), Optional.empty());
  }

  private void edit(String text, Optional<Path> file) {
    aloud.stop();
    ChartEditor editor =
        new ChartEditor(
            desk,
            text,
            (chart, written) -> {
              shelf.keep(chart.title(), written, file);
              close();
              reload(chart.title());
            },
            this::close);
    panel.removeAll();
    panel.add(editor.component());
    panel.revalidate();
    panel.repaint();
    editor.focus();
  }

  private void pack() {
    request(desk.player())
        .ifPresent(
            asked -> {
              aloud.stop();
              panel.removeAll();
              panel.add(new PackForm(desk, asked, this::close).component());
              panel.revalidate();
              panel.repaint();
            });
  }

  private void close() {
    panel.removeAll();
    build();
    panel.revalidate();
    panel.repaint();
  }

  private void bringIn() {
    desk.files()
        .toOpen(panel, "file.charts", "txt", "musicxml", "mxl", "xml", "carry")
        .ifPresent(this::bringIn);
  }

  private void bringIn(Path file) {
    if (file.toString().endsWith(Assignment.ENDING)) {
      desk.openTask(file);
      return;
    }
    try {
      List<String> notes = new ArrayList<>();
      Chart chart = ChartLibrary.open(file.toString(), notes::add);
      shelf.keep(chart.title(), ChartText.print(chart), Optional.empty());
      reload(chart.title());
      desk.tell(String.join(" ", notes));
    } catch (IOException | ChartException e) {
      desk.tell(e.getMessage());
    }
  }

  private void takeOut() {
    Optional<Chart> chart = sounding();
    if (chart.isEmpty()) {
      return;
    }
    desk.files()
        .toSave(panel, chart.get().title() + ".musicxml")
        .ifPresent(file -> takeOut(chart.get(), file));
  }

  private void takeOut(Chart chart, Path file) {
    try {
      boolean isText = file.toString().endsWith(".txt");
      WholeFile.write(file, isText ? ChartText.print(chart) : MusicXmlChart.write(chart));
      desk.tell(kit.words().say("charts.written", file));
    } catch (UserMistake e) {
      desk.tell(e.getMessage());
    }
  }

  @Override
  public JComponent component() {
    return panel;
  }

  @Override
  public void shown() {
    list.requestFocusInWindow();
  }

  @Override
  public void left() {
    aloud.stop();
  }
}
