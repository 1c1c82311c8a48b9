package holdfast.window.invent;

import holdfast.melody.Note;
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
import java.util.stream.Collectors;

/** One idea as a small picture: its number, its shape, its notes. */
public final class IdeaTile extends Picture {

  private static final long serialVersionUID = 1L;

  private final transient Kit kit;
  private final int number;
  private final transient List<Note> notes;
  private final String names;

  /**
   * An idea.
   *
   * @param number stands in the corner
   */
  public IdeaTile(Kit kit, NoteNaming naming, int number, List<Note> notes) {
    this.kit = kit;
    this.number = number;
    this.notes = List.copyOf(notes);
    this.names =
        notes.stream()
            .map(note -> naming.pitch(note.pitch(), Optional.empty()))
            .collect(Collectors.joining(" "));
    setBackground(kit.palette().paper());
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(kit.look().px(170), kit.look().px(110));
  }

  @Override
  protected String inWords() {
    return kit.words().say("invent.tile", number, names);
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
    g.setColor(kit.palette().ink());
    Letters.left(g, names, kit.font(0.95), inside, getHeight() - inside, room);
    double top = inside + line * 0.4;
    ShapePainter.paint(
        g,
        new Rectangle2D.Double(
            inside + line, top, room - line, getHeight() - top - inside - line * 1.2),
        List.of(),
        notes,
        Mark.CARRIED,
        kit.palette());
    g.dispose();
  }
}
