package holdfast.window.part;

import com.formdev.flatlaf.ui.FlatLineBorder;
import holdfast.report.picture.Palette;
import holdfast.window.Look;
import holdfast.window.Words;
import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.Rectangle;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import javax.swing.AbstractButton;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.Scrollable;

/**
 * The parts of pages, in one look and one language.
 *
 * @param look fonts, colours, lengths
 * @param words what they say
 */
public record Kit(Look look, Words words) {

  /** A page's own name. */
  public Prose title(String key) {
    return new Prose(words.say(key).replace("&", ""), look.bold(1.7), palette().ink());
  }

  /** The name of a part of a page. */
  public Prose heading(String key) {
    return new Prose(words.say(key), look.bold(1.15), palette().ink());
  }

  /** Plain text. */
  public Prose prose(String text) {
    return new Prose(text, look.font(1), palette().ink());
  }

  /** Text that can wait. */
  public Prose quiet(String text) {
    return new Prose(text, look.font(0.95), palette().quiet());
  }

  /** A button; an ampersand in its words stands before the letter that presses it. */
  public JButton button(String key, Runnable press) {
    JButton button = new JButton();
    label(button, words.say(key));
    button.setName(key);
    button.addActionListener(event -> press.run());
    return button;
  }

  /** The button that most people want. */
  public JButton primary(String key, Runnable press) {
    JButton button = button(key, press);
    button.putClientProperty("JButton.buttonType", "default");
    button.setBackground(palette().ink());
    button.setForeground(palette().paper());
    button.setFont(look.bold(1.05));
    return button;
  }

  /** Gives a button its words and its letter. */
  public static void label(AbstractButton button, String text) {
    int mark = text.indexOf('&');
    if (mark < 0 || mark + 1 >= text.length()) {
      button.setText(text);
      return;
    }
    button.setText(text.substring(0, mark) + text.substring(mark + 1));
    button.setMnemonic(Character.toUpperCase(text.charAt(mark + 1)));
    button.setDisplayedMnemonicIndex(mark);
  }

  /** One under the other. */
  public JPanel column(double gap, Component... parts) {
    return panel(new JPanel(new Column(look.px(gap))), parts);
  }

  /** Side by side, wrapped where there is no room. */
  public JPanel row(double gap, Component... parts) {
    return panel(new JPanel(new Wrapping(look.px(gap))), parts);
  }

  /** A name and the part that it names, for eyes and for screen readers. */
  public JPanel named(String key, JComponent part) {
    JLabel label = new JLabel();
    String text = words.say(key);
    int mark = text.indexOf('&');
    label.setText(text.replace("&", ""));
    if (mark >= 0) {
      label.setDisplayedMnemonic(Character.toUpperCase(text.charAt(mark + 1)));
      label.setDisplayedMnemonicIndex(mark);
    }
    label.setLabelFor(part);
    label.setForeground(palette().quiet());
    part.setName(key);
    part.getAccessibleContext().setAccessibleName(label.getText());
    return column(3, label, part);
  }

  /** A sheet on the paper. */
  public JPanel card(double gap, Component... parts) {
    JPanel card = column(gap, parts);
    card.setOpaque(true);
    card.setBackground(palette().card());
    int inside = look.px(14);
    card.setBorder(
        new FlatLineBorder(new Insets(inside, inside, inside, inside), palette().line(), 1f, 14));
    return card;
  }

  /** A page: its parts in a column, scrolled where the window is too low. */
  public JComponent page(int widest, Component... parts) {
    WidthTracking view = new WidthTracking(look.px(16));
    int margin = look.px(24);
    view.setBorder(BorderFactory.createEmptyBorder(margin, margin, margin, margin));
    view.setLayout(new Column(look.px(14), look.px(widest)));
    view.setBackground(palette().paper());
    List.of(parts).forEach(view::add);
    return scroll(view);
  }

  /** Scrolled up and down. */
  public JScrollPane scroll(JComponent view) {
    JScrollPane pane = new JScrollPane(view);
    pane.setBorder(null);
    pane.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    pane.getVerticalScrollBar().setUnitIncrement(look.px(16));
    pane.getViewport().setBackground(palette().paper());
    return pane;
  }

  /** A part as wide as it wants to be, and another in what is left beside it. */
  public JPanel beside(double gap, Component narrow, Component wide) {
    JPanel panel = new JPanel(new BorderLayout(look.px(gap), 0));
    panel.setOpaque(false);
    panel.add(narrow, BorderLayout.WEST);
    panel.add(wide, BorderLayout.CENTER);
    return panel;
  }

  /** Something in the middle, something under it, something at its right. */
  public JPanel frame(double gap, Component middle, Component below) {
    JPanel panel = new JPanel(new BorderLayout(0, look.px(gap)));
    panel.setOpaque(false);
    panel.add(middle, BorderLayout.CENTER);
    panel.add(below, BorderLayout.SOUTH);
    return panel;
  }

  /** The paper. */
  public Palette palette() {
    return look.palette();
  }

  /** Plain text, so many times as large. */
  public Font font(double times) {
    return look.font(times);
  }

  private static JPanel panel(JPanel panel, Component... parts) {
    panel.setOpaque(false);
    for (Component part : parts) {
      panel.add(part);
    }
    return panel;
  }

  /** As wide as its place, however high. */
  public static final class WidthTracking extends JPanel implements Scrollable {

    private static final long serialVersionUID = 1L;

    private final int step;

    /** Scrolls by so much. */
    public WidthTracking(int step) {
      this.step = step;
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
      return getPreferredSize();
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
      return step;
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
      return Math.max(step, visible.height - step);
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
      return true;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
      return getParent() != null && getParent().getHeight() > getPreferredSize().height;
    }
  }

  /** Begins to paint a part that looks like a card lying on the page: its ground and its edge. */
  public Graphics2D card(JComponent part, Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    Letters.smooth(g);
    g.setColor(part.getBackground());
    g.fillRect(0, 0, part.getWidth(), part.getHeight());
    RoundRectangle2D card =
        new RoundRectangle2D.Double(
            0.5, 0.5, part.getWidth() - 1.5, part.getHeight() - 1.5, 14, 14);
    g.setColor(palette().card());
    g.fill(card);
    g.setColor(palette().line());
    g.draw(card);
    return g;
  }
}
