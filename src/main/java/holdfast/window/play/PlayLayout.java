package holdfast.window.play;

import holdfast.window.Look;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;
import java.util.List;

/** Where the parts of the playing view stand, on a small screen as on a wall. */
final class PlayLayout implements LayoutManager {

  private static final int SCROLL_BAR = 12;

  /** Lower than this two lines of bars cannot be read, at the usual text size. */
  private static final int LEAST_STAGE = 160;

  /** One chorus under its chords. */
  private static final int LEAST_FORM = 66;

  /** On a small screen with large text the form takes this part of what the bars have. */
  private static final int SMALLEST_SHARE = 3;

  private final Look look;
  private final Component board;
  private final Component verdict;
  private final Component stage;
  private final Component form;
  private final Component sheet;
  private final Component keys;
  private final List<Component> side;
  private boolean big;

  /**
   * Parts to be placed.
   *
   * @param form the sheet with its scroll bar
   * @param sheet the form itself
   * @param side from top to bottom at the right; the last but one takes what height is left
   */
  PlayLayout(
      Look look,
      Component board,
      Component verdict,
      Component stage,
      Component form,
      Component sheet,
      Component keys,
      List<Component> side) {
    this.look = look;
    this.board = board;
    this.verdict = verdict;
    this.stage = stage;
    this.form = form;
    this.sheet = sheet;
    this.keys = keys;
    this.side = List.copyOf(side);
  }

  /** Chord and bars only, as large as can be, for a class to read. */
  void setBig(boolean nowBig) {
    big = nowBig;
  }

  boolean isBig() {
    return big;
  }

  @Override
  public void addLayoutComponent(String name, Component child) {}

  @Override
  public void removeLayoutComponent(Component child) {}

  @Override
  public Dimension preferredLayoutSize(Container parent) {
    return new Dimension(look.px(1000), look.px(620));
  }

  @Override
  public Dimension minimumLayoutSize(Container parent) {
    return new Dimension(look.px(600), look.px(400));
  }

  @Override
  public void layoutContainer(Container parent) {
    int margin = look.px(14);
    int gap = look.px(8);
    int width = parent.getWidth() - 2 * margin;
    int height = parent.getHeight() - 2 * margin;
    int sideWidth =
        Math.min(
            side.stream().mapToInt(c -> c.getPreferredSize().width).max().orElse(0),
            (int) (width * 0.30));
    int left = width - sideWidth - 2 * gap;
    side(margin + left + 2 * gap, margin, sideWidth, height, gap);
    int boardHeight =
        big
            ? (int) (height * 0.32)
            : (int) Math.min(Math.max(height * 0.17, look.px(84)), height * 0.22);
    int y = margin;
    board.setBounds(margin, y, left, boardHeight);
    y += boardHeight + gap;
    int verdictHeight = verdict.getPreferredSize().height;
    verdict.setBounds(margin, y, left, verdictHeight);
    y += verdictHeight + gap;
    // For a class the bars take what stands free below the ear light as well.
    int across = big ? width : left;
    keys.setSize(across, keys.getHeight());
    int keysHeight = keys.getPreferredSize().height;
    int bottom = margin + height - keysHeight;
    keys.setBounds(margin, bottom, across, keysHeight);
    int formHeight = big ? 0 : formHeight(left, height, bottom - gap - y);
    form.setVisible(formHeight > 0);
    if (formHeight > 0) {
      form.setBounds(margin, bottom - gap - formHeight, left, formHeight);
      formHeight += gap;
    }
    stage.setBounds(margin, y, across, Math.max(look.px(60), bottom - gap - formHeight - y));
  }

  /** The form takes what the bars can spare; where that is little it is small, and scrolls. */
  private int formHeight(int width, int height, int room) {
    sheet.setSize(width - SCROLL_BAR, sheet.getHeight());
    int wanted = Math.min(sheet.getPreferredSize().height + 2, (int) (height * 0.30));
    int spared = Math.min(wanted, room - look.px(LEAST_STAGE));
    return Math.max(spared, Math.min(look.px(LEAST_FORM), room / SMALLEST_SHARE));
  }

  private void side(int x, int top, int width, int height, int gap) {
    int wanted = 0;
    int shown = 0;
    for (Component part : side) {
      wanted += part.getPreferredSize().height;
      shown++;
    }
    int missing = Math.max(0, wanted + (shown - 1) * gap - height);
    int y = top;
    for (int i = 0; i < side.size(); i++) {
      int partHeight = side.get(i).getPreferredSize().height;
      if (i == side.size() - 2) {
        partHeight = Math.max(look.px(90), partHeight - missing);
      }
      side.get(i).setBounds(x, y, width, partHeight);
      y += partHeight + gap;
    }
  }
}
