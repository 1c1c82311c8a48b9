package holdfast.window.play;

import holdfast.melody.Note;
import holdfast.motif.Motif;
import holdfast.report.RhythmWords;
import holdfast.report.picture.Mark;
import holdfast.report.picture.ShapePainter;
import holdfast.theory.Key;
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

/** The idea: its shape, its notes, its rhythm. */
public final class IdeaCard extends Picture {

  private static final long serialVersionUID = 1L;

  private final transient Kit kit;
  private final NoteNaming naming;
  private final transient Optional<Key> key;
  private transient Optional<Motif> idea = Optional.empty();

  /** A card that waits for an idea. */
  public IdeaCard(Kit kit, NoteNaming naming, Optional<Key> key) {
    this.kit = kit;
    this.naming = naming;
    this.key = key;
    setBackground(kit.palette().paper());
  }

  /** Shows this idea, or none. */
  public void show(Optional<Motif> known) {
    if (!idea.equals(known)) {
      idea = known;
      repaint();
    }
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(kit.look().px(220), kit.look().px(178));
  }

  @Override
  protected String inWords() {
    return kit.words().say("idea.title")
        + ": "
        + idea.map(i -> names(i) + ", " + rhythm(i)).orElse(kit.words().say("idea.none"));
  }

  private String names(Motif motif) {
    return String.join(
        "  ", motif.notes().stream().map(n -> naming.pitch(n.pitch(), key)).toList());
  }

  private String rhythm(Motif motif) {
    return RhythmWords.of(motif.notes())
        .replace("even notes", kit.words().say("rhythm.even"))
        .replace("short", kit.words().say("rhythm.short"))
        .replace("long", kit.words().say("rhythm.long"));
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = kit.card(this, graphics);
    double inside = kit.look().px(13);
    double room = getWidth() - 2 * inside;
    double line = g.getFontMetrics(kit.font(1)).getHeight();
    g.setColor(kit.palette().ink());
    Letters.left(
        g, kit.words().say("idea.title"), kit.look().bold(1.1), inside, inside + line * 0.8, room);
    if (idea.isEmpty()) {
      g.setColor(kit.palette().quiet());
      Letters.left(
          g, kit.words().say("idea.none"), kit.font(0.95), inside, inside + line * 2.2, room);
      g.dispose();
      return;
    }
    Motif motif = idea.get();
    double bottom = getHeight() - inside;
    g.setColor(kit.palette().quiet());
    Letters.left(g, rhythm(motif), kit.font(0.95), inside, bottom - 2, room);
    g.setColor(kit.palette().ink());
    double namesAt = bottom - 2 - line * 1.1;
    List<Note> notes = motif.notes();
    Letters.left(g, names(motif), kit.look().bold(1.1), inside, namesAt, room);
    double top = inside + line * 1.1;
    double height = namesAt - line - top;
    if (height > 12) {
      ShapePainter.paint(
          g,
          new Rectangle2D.Double(inside, top, room, height),
          List.of(),
          notes,
          Mark.CARRIED,
          kit.palette());
    }
    g.dispose();
  }
}
