package holdfast.window.part;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Insets;
import java.awt.LayoutManager;

/**
 * Side by side, and on the next line where the width is used up.
 *
 * @param gap between two, and between lines
 */
public record Wrapping(int gap) implements LayoutManager {

  @Override
  public void addLayoutComponent(String name, Component child) {}

  @Override
  public void removeLayoutComponent(Component child) {}

  @Override
  public Dimension preferredLayoutSize(Container parent) {
    return place(parent, false);
  }

  @Override
  public Dimension minimumLayoutSize(Container parent) {
    return preferredLayoutSize(parent);
  }

  @Override
  public void layoutContainer(Container parent) {
    place(parent, true);
  }

  private Dimension place(Container parent, boolean reallyPlace) {
    Insets insets = parent.getInsets();
    int room = parent.getWidth() - insets.left - insets.right;
    boolean bounded = room > 0;
    int x = 0;
    int y = 0;
    int lineHeight = 0;
    int widest = 0;
    int lineStart = 0;
    Component[] children = parent.getComponents();
    for (int i = 0; i < children.length; i++) {
      if (!children[i].isVisible()) {
        continue;
      }
      Dimension wanted = children[i].getPreferredSize();
      int width = bounded ? Math.min(wanted.width, room) : wanted.width;
      if (bounded && x > 0 && x + width > room) {
        align(children, lineStart, i, insets.top + y, lineHeight, reallyPlace);
        lineStart = i;
        y += lineHeight + gap;
        x = 0;
        lineHeight = 0;
      }
      if (reallyPlace) {
        children[i].setBounds(insets.left + x, insets.top + y, width, wanted.height);
      }
      x += width + gap;
      widest = Math.max(widest, x - gap);
      lineHeight = Math.max(lineHeight, wanted.height);
    }
    align(children, lineStart, children.length, insets.top + y, lineHeight, reallyPlace);
    return new Dimension(
        widest + insets.left + insets.right, y + lineHeight + insets.top + insets.bottom);
  }

  /** The children of one line stand on its ground: a button beside the field that it belongs to. */
  private static void align(
      Component[] children, int from, int to, int top, int height, boolean reallyPlace) {
    for (int i = from; reallyPlace && i < to; i++) {
      if (children[i].isVisible()) {
        children[i].setLocation(children[i].getX(), top + height - children[i].getHeight());
      }
    }
  }
}
