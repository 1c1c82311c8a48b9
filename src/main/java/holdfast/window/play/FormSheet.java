package holdfast.window.play;

import holdfast.chart.Bar;
import holdfast.motif.Motif;
import holdfast.report.PhrasePicture;
import holdfast.report.TreatmentWords;
import holdfast.report.picture.ShapePainter;
import holdfast.session.JudgedPhrase;
import holdfast.session.Place;
import holdfast.window.NoteNaming;
import holdfast.window.part.Kit;
import holdfast.window.part.Letters;
import holdfast.window.part.Picture;
import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.event.ActionEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.RoundRectangle2D;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.AbstractAction;
import javax.swing.KeyStroke;
import javax.swing.Scrollable;

/**
 * The form as small pictures: bars across, choruses down, in each the shape that was played there.
 * Where somebody wants to hear of it, a cell is chosen by mouse or by arrow keys.
 */
public final class FormSheet extends Picture implements Scrollable {

  private static final long serialVersionUID = 1L;

  /** A cell is no narrower than this; longer forms stand in several rows. */
  private static final double NARROWEST_CELL = 46;

  private static final int MOST_BARS_IN_A_ROW = 16;

  private final transient Kit kit;
  private final NoteNaming naming;
  private final transient List<Bar> bars;
  private final transient Map<Place, JudgedPhrase> phrases = new HashMap<>();
  private transient Optional<Motif> idea = Optional.empty();
  private transient Optional<Place> current = Optional.empty();
  private transient Optional<Place> chosen = Optional.empty();
  private transient Optional<Consumer<JudgedPhrase>> chooser = Optional.empty();
  private final transient UnaryOperator<String> said;
  private int choruses;

  /**
   * A sheet for this form.
   *
   * @param said how a verdict is said in the window's language
   */
  public FormSheet(
      Kit kit, NoteNaming naming, List<Bar> bars, int choruses, UnaryOperator<String> said) {
    this.kit = kit;
    this.said = said;
    this.naming = naming;
    this.bars = List.copyOf(bars);
    this.choruses = Math.max(1, choruses);
    setBackground(kit.palette().paper());
  }

  /** Lets cells be chosen. */
  public void onChoice(Consumer<JudgedPhrase> told) {
    chooser = Optional.of(told);
    setFocusable(true);
    addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent event) {
            requestFocusInWindow();
            placeAt(event.getX(), event.getY()).ifPresent(FormSheet.this::choose);
          }
        });
    key("LEFT", () -> step(-1));
    key("RIGHT", () -> step(1));
    key("UP", () -> step(-bars.size()));
    key("DOWN", () -> step(bars.size()));
    key("ENTER", () -> chosen.ifPresent(this::choose));
    key("SPACE", () -> chosen.ifPresent(this::choose));
    addFocusListener(
        new java.awt.event.FocusListener() {
          @Override
          public void focusGained(java.awt.event.FocusEvent event) {
            repaint();
          }

          @Override
          public void focusLost(java.awt.event.FocusEvent event) {
            repaint();
          }
        });
  }

  private void key(String name, Runnable action) {
    getInputMap().put(KeyStroke.getKeyStroke(name), name);
    getActionMap()
        .put(
            name,
            new AbstractAction() {
              private static final long serialVersionUID = 1L;

              @Override
              public void actionPerformed(ActionEvent event) {
                action.run();
              }
            });
  }

  /** The idea that is drawn as a ghost behind what was played. */
  public void setIdea(Optional<Motif> known) {
    idea = known;
    repaint();
  }

  /** One more phrase. */
  public void add(JudgedPhrase phrase) {
    phrases.put(phrase.place(), phrase);
    if (phrase.place().chorus() > choruses) {
      choruses = phrase.place().chorus();
      revalidate();
    }
    repaint(cell(phrase.place()));
  }

  /** Where we are. */
  public void moveTo(Place place) {
    if (current.filter(place::equals).isPresent()) {
      return;
    }
    current.ifPresent(before -> repaint(grown(cell(before))));
    current = Optional.of(place);
    if (place.chorus() > choruses) {
      choruses = place.chorus();
      revalidate();
    }
    Rectangle cell = cell(place);
    repaint(grown(cell));
    scrollRectToVisible(grown(cell));
  }

  /** Chooses the first cell that holds something. */
  public void chooseFirst() {
    phrases.values().stream()
        .min(java.util.Comparator.comparingInt(JudgedPhrase::index))
        .ifPresent(phrase -> choose(phrase.place()));
  }

  private void step(int by) {
    Place from = chosen.orElse(new Place(1, 1));
    int index = (from.chorus() - 1) * bars.size() + from.bar() - 1 + by;
    int last = choruses * bars.size();
    int direction = by < 0 ? -1 : 1;
    while (index >= 0 && index < last) {
      Place place = new Place(1 + index / bars.size(), 1 + index % bars.size());
      if (phrases.containsKey(place)) {
        choose(place);
        return;
      }
      index += direction;
    }
  }

  private void choose(Place place) {
    JudgedPhrase phrase = phrases.get(place);
    if (phrase == null) {
      return;
    }
    String before = inWords();
    chosen = Optional.of(place);
    scrollRectToVisible(grown(cell(place)));
    repaint();
    getAccessibleContext()
        .firePropertyChange(AccessibleContext.ACCESSIBLE_NAME_PROPERTY, before, inWords());
    chooser.ifPresent(told -> told.accept(phrase));
  }

  // Where things are.

  private int barsInARow() {
    int fit = (int) Math.floor((getWidth() - marginLeft()) / kit.look().px(NARROWEST_CELL));
    int most = Math.min(bars.size(), MOST_BARS_IN_A_ROW);
    if (fit >= most) {
      return most;
    }
    int row = most;
    while (row > fit && row > 4) {
      row = row > 8 ? 8 : 4;
    }
    return Math.max(1, row);
  }

  private double marginLeft() {
    return kit.look().usual().getSize2D() * 2;
  }

  private double headHeight() {
    return kit.look().usual().getSize2D() * 1.5;
  }

  private double cellHeight() {
    return kit.look().px(40);
  }

  private double gap() {
    return 4;
  }

  /** Rows of the same bars stand together, chorus under chorus, under one line of chords. */
  private Rectangle cell(Place place) {
    int inARow = barsInARow();
    int block = (place.bar() - 1) / inARow;
    int column = (place.bar() - 1) % inARow;
    double width = (getWidth() - marginLeft()) / inARow;
    double blockHeight = headHeight() + choruses * (cellHeight() + gap()) + gap();
    double y = block * blockHeight + headHeight() + (place.chorus() - 1) * (cellHeight() + gap());
    return new Rectangle(
        (int) Math.round(marginLeft() + column * width),
        (int) Math.round(y),
        (int) Math.round(width - gap()),
        (int) Math.round(cellHeight()));
  }

  private static Rectangle grown(Rectangle cell) {
    Rectangle grown = new Rectangle(cell);
    grown.grow(3, 3);
    return grown;
  }

  private Optional<Place> placeAt(int x, int y) {
    for (int chorus = 1; chorus <= choruses; chorus++) {
      for (Bar bar : bars) {
        Place place = new Place(chorus, bar.number());
        if (cell(place).contains(x, y)) {
          return Optional.of(place);
        }
      }
    }
    return Optional.empty();
  }

  /** Where a cell lies, for a test that clicks there. */
  public Rectangle boundsOf(Place place) {
    return cell(place);
  }

  @Override
  public Dimension getPreferredSize() {
    int blocks = (bars.size() + barsInARow() - 1) / barsInARow();
    double blockHeight = headHeight() + choruses * (cellHeight() + gap()) + gap();
    return new Dimension(kit.look().px(480), (int) Math.ceil(blocks * blockHeight) + 3);
  }

  // Painting.

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Letters.smooth(g);
    Rectangle clip = g.getClipBounds();
    g.setColor(getBackground());
    g.fillRect(0, 0, getWidth(), getHeight());
    for (Bar bar : bars) {
      Rectangle first = cell(new Place(1, bar.number()));
      int head = (int) Math.ceil(headHeight());
      if (clip == null || clip.intersects(first.x, first.y - head, first.width, head)) {
        paintHead(g, first, bar);
      }
      for (int chorus = 1; chorus <= choruses; chorus++) {
        Place place = new Place(chorus, bar.number());
        Rectangle cell = cell(place);
        if (clip == null || clip.intersects(grown(cell))) {
          paint(g, cell, place, bar);
        }
        if ((bar.number() - 1) % barsInARow() == 0) {
          g.setColor(kit.palette().quiet());
          Letters.middle(
              g,
              Integer.toString(chorus),
              kit.font(0.9),
              0,
              cell.getCenterY() + kit.look().usual().getSize2D() * 0.35,
              marginLeft() - gap());
        }
      }
    }
    g.dispose();
  }

  private void paintHead(Graphics2D g, Rectangle first, Bar bar) {
    g.setColor(kit.palette().ink());
    String chords =
        bar.chords().stream()
            .map(span -> naming.chord(span.harmony()))
            .distinct()
            .collect(Collectors.joining(" "));
    Letters.middle(
        g,
        (bar.unexpected() ? "! " : "") + chords,
        kit.font(0.82),
        first.x,
        first.y - kit.look().usual().getSize2D() * 0.4,
        first.width);
  }

  private void paint(Graphics2D g, Rectangle cell, Place place, Bar bar) {
    RoundRectangle2D frame =
        new RoundRectangle2D.Double(cell.x, cell.y, cell.width, cell.height, 7, 7);
    g.setColor(kit.palette().card());
    g.fill(frame);
    Optional<JudgedPhrase> phrase = Optional.ofNullable(phrases.get(place));
    phrase.ifPresent(
        p ->
            ShapePainter.paint(
                g,
                cell,
                p.statesTheIdea() ? List.of() : PhrasePicture.ghost(idea, p),
                p.notes(),
                PhrasePicture.mark(p),
                kit.palette()));
    boolean isCurrent = current.filter(place::equals).isPresent();
    boolean isChosen = chosen.filter(place::equals).isPresent();
    g.setColor(
        isCurrent
            ? kit.palette().now()
            : isChosen
                ? kit.palette().played()
                : bar.unexpected() ? kit.palette().turn() : kit.palette().line());
    g.setStroke(new BasicStroke(isCurrent || isChosen ? (isFocusOwner() ? 3.2f : 2.4f) : 1f));
    g.draw(frame);
  }

  @Override
  protected AccessibleRole role() {
    return AccessibleRole.TABLE;
  }

  @Override
  protected String inWords() {
    return kit.words().say("play.form")
        + chosen.map(phrases::get).map(p -> ". " + place(p) + ": " + verdict(p)).orElse("");
  }

  private String place(JudgedPhrase phrase) {
    return kit.words().say("play.chorus", phrase.place().chorus())
        + ", "
        + kit.words().say("play.bar", phrase.place().bar(), bars.size());
  }

  private String verdict(JudgedPhrase phrase) {
    return phrase.statesTheIdea()
        ? kit.words().say("verdict.idea")
        : kit.words().of("mark", PhrasePicture.mark(phrase))
            + ", "
            + said.apply(TreatmentWords.of(phrase.verdict()));
  }

  @Override
  public Dimension getPreferredScrollableViewportSize() {
    return getPreferredSize();
  }

  @Override
  public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
    return (int) cellHeight();
  }

  @Override
  public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
    return visible.height;
  }

  @Override
  public boolean getScrollableTracksViewportWidth() {
    return true;
  }

  @Override
  public boolean getScrollableTracksViewportHeight() {
    return false;
  }
}
