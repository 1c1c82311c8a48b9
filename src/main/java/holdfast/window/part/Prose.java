package holdfast.window.part;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.util.ArrayList;
import java.util.List;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import javax.swing.UIManager;

/** Text that breaks its lines at the width it is given. */
public final class Prose extends JComponent {

  private static final long serialVersionUID = 1L;

  /** Before anybody gave it a width, in widths of an m. */
  private static final int USUAL_WIDTH_EMS = 30;

  private String text;
  private boolean centred;

  /** This text in this font and colour. */
  public Prose(String text, Font font, Color colour) {
    this.text = text;
    setFont(font);
    setForeground(colour);
  }

  /** The same with its lines in the middle. */
  public Prose centred() {
    centred = true;
    return this;
  }

  /** Says something else. */
  public void setText(String other) {
    if (!text.equals(other)) {
      text = other;
      revalidate();
      repaint();
    }
  }

  /** What it says. */
  public String text() {
    return text;
  }

  @Override
  public Dimension getPreferredSize() {
    if (isPreferredSizeSet()) {
      return super.getPreferredSize();
    }
    FontMetrics metrics = getFontMetrics(getFont());
    Insets insets = getInsets();
    int sides = insets.left + insets.right;
    int longest = text.lines().mapToInt(line -> metrics.stringWidth(line)).max().orElse(0);
    int width = getWidth() > sides ? getWidth() - sides : USUAL_WIDTH_EMS * metrics.charWidth('m');
    List<String> lines = lines(metrics, width);
    return new Dimension(
        Math.min(longest, width) + sides,
        lines.size() * metrics.getHeight() + insets.top + insets.bottom);
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(0, getPreferredSize().height);
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Object hints = UIManager.getDefaults().get("swing.aatext");
    if (hints != null) {
      g.setRenderingHint(java.awt.RenderingHints.KEY_TEXT_ANTIALIASING, hints);
    } else {
      g.setRenderingHint(
          java.awt.RenderingHints.KEY_TEXT_ANTIALIASING,
          java.awt.RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    }
    g.setFont(getFont());
    g.setColor(getForeground());
    FontMetrics metrics = g.getFontMetrics();
    Insets insets = getInsets();
    int room = getWidth() - insets.left - insets.right;
    int y = insets.top + metrics.getAscent();
    for (String line : lines(metrics, room)) {
      int x = centred ? (room - metrics.stringWidth(line)) / 2 : 0;
      g.drawString(line, insets.left + x, y);
      y += metrics.getHeight();
    }
    g.dispose();
  }

  private List<String> lines(FontMetrics metrics, int width) {
    List<String> lines = new ArrayList<>();
    for (String paragraph : text.split("\n", -1)) {
      StringBuilder line = new StringBuilder();
      for (String word : paragraph.split(" ", -1)) {
        String longer = line.isEmpty() ? word : line + " " + word;
        if (!line.isEmpty() && metrics.stringWidth(longer) > width) {
          lines.add(line.toString());
          line.setLength(0);
          line.append(word);
        } else {
          line.setLength(0);
          line.append(longer);
        }
      }
      lines.add(line.toString());
    }
    return lines;
  }

  @Override
  public AccessibleContext getAccessibleContext() {
    if (accessibleContext == null) {
      accessibleContext = new Spoken();
    }
    return accessibleContext;
  }

  private final class Spoken extends AccessibleJComponent {
    private static final long serialVersionUID = 1L;

    @Override
    public AccessibleRole getAccessibleRole() {
      return AccessibleRole.LABEL;
    }

    @Override
    public String getAccessibleName() {
      return text;
    }
  }
}
