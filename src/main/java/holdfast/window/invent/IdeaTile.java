package holdfast.window.invent;

import holdfast.melody.Note;
import holdfast.practice.invent.Difference;
import holdfast.report.picture.Mark;
import holdfast.report.picture.ShapePainter;
import holdfast.window.NoteNaming;
import holdfast.window.part.Kit;
import holdfast.window.part.Letters;
import holdfast.window.part.Picture;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** One idea as a small picture: its number, its shape, its notes, what makes it another. */
public final class IdeaTile extends Picture {

  private static final long serialVersionUID = 1L;

  private final transient Kit kit;
  private final int number;
  private final transient List<Note> notes;
  private final String names;
  private final String news;

  /**
   * An idea by itself.
   *
   * @param number stands in the corner
   */
  public IdeaTile(Kit kit, NoteNaming naming, int number, List<Note> notes) {
    this(kit, naming, number, notes, Set.of());
  }

  /**
   * An idea after another.
   *
   * @param number stands in the corner
   * @param differences what makes it another than the one before
   */
  IdeaTile(Kit kit, NoteNaming naming, int number, List<Note> notes, Set<Difference> differences) {
    this.kit = kit;
    this.number = number;
    this.news = news(kit, differences);
    this.notes = List.copyOf(notes);
    this.names =
        notes.stream()
            .map(note -> naming.pitch(note.pitch(), Optional.empty()))
            .collect(Collectors.joining(" "));
    setBackground(kit.palette().paper());
  }

  private static String news(Kit kit, Set<Difference> differences) {
    String all =
        Difference.inOrder(differences)
            .map(difference -> kit.words().say(key(difference)))
            .collect(Collectors.joining(", "));
    return all.isEmpty() ? "" : kit.words().say("invent.new", all);
  }

  private static String key(Difference difference) {
    return switch (difference) {
      case RHYTHM -> "invent.rhythm";
      case SHAPE -> "invent.shape";
      case RANGE -> "invent.range";
      case START -> "invent.first";
    };
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(kit.look().px(215), kit.look().px(126));
  }

  @Override
  protected String inWords() {
    String tile = kit.words().say("invent.tile", number, names);
    return news.isEmpty() ? tile : tile + "; " + news;
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = kit.card(this, graphics);
    double inside = kit.look().px(9);
    double room = getWidth() - 2 * inside;
    double line = g.getFontMetrics(kit.font(1)).getHeight();
    g.setColor(kit.palette().quiet());
    Letters.left(
        g, Integer.toString(number), kit.look().bold(1), inside, inside + line * 0.7, room);
    double bottom = getHeight() - inside;
    if (!news.isEmpty()) {
      Letters.left(g, news, kit.font(0.95), inside, bottom, room);
      bottom -= line;
    }
    g.setColor(kit.palette().ink());
    Letters.left(g, names, kit.font(0.95), inside, bottom, room);
    double top = inside + line * 0.4;
    ShapePainter.paint(
        g,
        new Rectangle2D.Double(inside + line, top, room - line, bottom - top - line * 1.2),
        List.of(),
        notes,
        Mark.CARRIED,
        kit.palette());
    g.dispose();
  }
}
