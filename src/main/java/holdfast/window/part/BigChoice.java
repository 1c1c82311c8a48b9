package holdfast.window.part;

import holdfast.melody.Note;
import holdfast.report.picture.Mark;
import holdfast.report.picture.ShapePainter;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.geom.Rectangle2D;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JButton;

/** A large button: a shape, a few words, and a sentence. */
public final class BigChoice extends JButton {

  private static final long serialVersionUID = 1L;

  private final transient Kit kit;
  private final transient List<Note> shape;
  private final transient Mark mark;
  private final Prose sentence;
  private final String title;

  /** A choice called {@code key}, explained by {@code key.why}. */
  public BigChoice(Kit kit, String key, List<Note> shape, Mark mark, Runnable press) {
    this.kit = kit;
    this.shape = shape;
    this.mark = mark;
    setLayout(null);
    setName(key);
    String words = kit.words().say(key);
    this.title = words.replace("&", "");
    if (words.indexOf('&') >= 0) {
      setMnemonic(Character.toUpperCase(words.charAt(words.indexOf('&') + 1)));
    }
    this.sentence = kit.quiet(kit.words().say(key + ".why"));
    getAccessibleContext().setAccessibleName(title);
    getAccessibleContext().setAccessibleDescription(sentence.text());
    int inside = kit.look().px(16);
    setMargin(new Insets(0, 0, 0, 0));
    setBorder(
        BorderFactory.createCompoundBorder(
            getBorder(), BorderFactory.createEmptyBorder(inside, inside, inside, inside)));
    setBackground(kit.palette().card());
    addActionListener(event -> press.run());
    add(sentence);
  }

  private int pictureHeight() {
    return kit.look().px(64);
  }

  private int titleHeight() {
    return (int) (getFontMetrics(kit.look().bold(1.25)).getHeight() * 1.3);
  }

  @Override
  public Dimension getPreferredSize() {
    Insets insets = getInsets();
    int width = getWidth() > 0 ? getWidth() : kit.look().px(250);
    sentence.setSize(width - insets.left - insets.right, sentence.getHeight());
    return new Dimension(
        width,
        insets.top
            + pictureHeight()
            + titleHeight()
            + sentence.getPreferredSize().height
            + insets.bottom);
  }

  @Override
  public void doLayout() {
    Insets insets = getInsets();
    int width = getWidth() - insets.left - insets.right;
    sentence.setSize(width, 1);
    sentence.setBounds(
        insets.left,
        insets.top + pictureHeight() + titleHeight(),
        width,
        sentence.getPreferredSize().height);
  }

  @Override
  protected void paintComponent(Graphics graphics) {

    // The look paints ground and focus; the words stand where we want them.

    super.paintComponent(graphics);

    Graphics2D g = (Graphics2D) graphics.create();
    Letters.smooth(g);
    Insets insets = getInsets();
    double width = getWidth() - insets.left - insets.right;
    ShapePainter.paint(
        g,
        new Rectangle2D.Double(
            insets.left - 4, insets.top - 4, Math.min(width, kit.look().px(150)), pictureHeight()),
        List.of(),
        shape,
        mark,
        kit.palette());
    g.setColor(kit.palette().ink());
    Letters.left(
        g,
        title,
        kit.look().bold(1.25),
        insets.left,
        insets.top + pictureHeight() + titleHeight() * 0.66,
        width);
    g.dispose();
  }
}
