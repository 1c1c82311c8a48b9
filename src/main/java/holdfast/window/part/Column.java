package holdfast.window.part;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Insets;
import java.awt.LayoutManager;

/**
 * One under the other, each as wide as the column and as high as it needs at that width.
 *
 * @param gap between two
 * @param widest the column is no wider than this and stands at the left; 0 for as wide as it may
 */
public record Column(int gap, int widest) implements LayoutManager {

  /** As wide as it may. */
  public Column(int gap) {
    this(gap, 0);
  }

  @Override
  public void addLayoutComponent(String name, Component child) {}

  @Override
  public void removeLayoutComponent(Component child) {}

  @Override
  public Dimension preferredLayoutSize(Container parent) {
    Insets insets = parent.getInsets();
    int sides = insets.left + insets.right;
    int width = parent.getWidth() - sides;
    int widestChild = 0;
    int height = 0;
    int shown = 0;
    for (Component child : parent.getComponents()) {
      if (child.isVisible()) {
        if (width > 0) {
          child.setSize(bounded(width), child.getHeight());
        }
        Dimension wanted = child.getPreferredSize();
        widestChild = Math.max(widestChild, wanted.width);
        height += wanted.height;
        shown++;
      }
    }
    height += Math.max(0, shown - 1) * gap;
    return new Dimension(bounded(widestChild) + sides, height + insets.top + insets.bottom);
  }

  @Override
  public Dimension minimumLayoutSize(Container parent) {
    return preferredLayoutSize(parent);
  }

  @Override
  public void layoutContainer(Container parent) {
    Insets insets = parent.getInsets();
    int room = parent.getWidth() - insets.left - insets.right;
    int width = bounded(room);
    int y = insets.top;
    for (Component child : parent.getComponents()) {
      if (child.isVisible()) {
        child.setSize(width, child.getHeight());
        int height = child.getPreferredSize().height;
        child.setBounds(insets.left, y, width, height);
        y += height + gap;
      }
    }
  }

  private int bounded(int width) {
    return widest > 0 ? Math.min(width, widest) : width;
  }
}
