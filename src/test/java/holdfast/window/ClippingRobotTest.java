package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import holdfast.window.part.Prose;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JViewport;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Nothing is cut off on a small screen, at any text size, on either paper, in either language; and
 * whatever can be used or seen has a name for a screen reader.
 */
class ClippingRobotTest {

  /** Pixels; the pictures of one chorus can still be told apart. */
  private static final int LEAST_FORM = 50;

  @TempDir Path folder;

  @BeforeAll
  static void needs_a_display() {
    assumeFalse(
        GraphicsEnvironment.isHeadless(),
        "there is no DISPLAY here, so no window is measured; start one with Xvfb");
  }

  @ParameterizedTest
  @CsvSource({
    "light, 100, english, 1024, 640",
    "dark, 100, german, 1024, 640",
    "light, 150, german, 1024, 640",
    "dark, 150, english, 1024, 640",
    "light, 100, german, 800, 540"
  })
  void nothing_is_cut_off(String theme, String percent, String language, int width, int height)
      throws Exception {
    Preferences preferences =
        Preferences.usual()
            .with("theme", theme)
            .with("text-size", percent)
            .with("language", language);
    List<String> cut = new ArrayList<>();
    try (WindowDriver driver = WindowDriver.open(folder, width, height, preferences)) {
      String name = "-" + theme + "-" + percent + "-" + language + (width < 1000 ? "-least" : "");
      for (Pages.Entry entry : Pages.ALL) {
        driver.tell(() -> driver.desk().go(entry.name()));
        if (entry.name().equals(Desk.BOOK)) {
          driver.until("the book is read", 20, () -> driver.find("book.new").isPresent());
        }
        look(driver, entry.name() + name, cut);
      }
      driver.tell(() -> driver.desk().go(Desk.CHARTS));
      driver.click(driver.named("charts.new"));
      look(driver, "editor" + name, cut);
      driver.click(driver.named("editor.cancel"));
      driver.click(driver.named("pack.open"));
      look(driver, "pack" + name, cut);
      driver.click(driver.named("pack.back"));
      driver.click(driver.named("charts.demo"));
      driver.until("a take runs", 10, () -> driver.desk().isPlaying());
      driver.until(
          "it is shown",
          20,
          () -> driver.desk().playing().map(p -> p.frameTimes().count() > 120).orElse(false));
      look(driver, "playing" + name, cut);
      driver.press(java.awt.event.KeyEvent.VK_B);
      look(driver, "big" + name, cut);
      driver.press(java.awt.event.KeyEvent.VK_B);
      assertTrue(
          driver.find("play.form").filter(form -> form.getHeight() >= LEAST_FORM).isPresent(),
          "the form is there, however small the screen");
      driver.press(java.awt.event.KeyEvent.VK_SPACE);
      driver.until("the take is over", 20, () -> !driver.desk().isPlaying());
      look(driver, "after" + name, cut);
    }
    assertEquals(List.of(), cut);
  }

  private static void look(WindowDriver driver, String state, List<String> cut) {
    driver.shot(state);
    cut.addAll(
        driver.ask(
            () ->
                WindowDriver.all(driver.window().frame().getRootPane()).stream()
                    .filter(Component::isShowing)
                    .flatMap(c -> trouble(c).stream())
                    .map(words -> state + ": " + words)
                    .toList()));
  }

  private static List<String> trouble(Component part) {
    List<String> found = new ArrayList<>();
    String who =
        part.getClass().getSimpleName()
            + " "
            + part.getName()
            + (part instanceof AbstractButton b ? " “" + b.getText() + "”" : "");
    Rectangle bounds = part.getBounds();
    if (part.getParent() != null && bounds.width > 0 && bounds.height > 0) {
      Rectangle room = new Rectangle(part.getParent().getSize());
      boolean scrolls = part.getParent() instanceof JViewport;
      boolean fits =
          bounds.x >= 0
              && bounds.x + bounds.width <= room.width + 1
              && (scrolls || (bounds.y >= 0 && bounds.y + bounds.height <= room.height + 1));
      boolean ours =
          SwingUtilities.getAncestorOfClass(javax.swing.JComboBox.class, part) == null
              && SwingUtilities.getAncestorOfClass(javax.swing.JSpinner.class, part) == null
              && SwingUtilities.getAncestorOfClass(javax.swing.JScrollBar.class, part) == null
              && SwingUtilities.getAncestorOfClass(javax.swing.CellRendererPane.class, part) == null
              && !part.getClass().getName().toLowerCase(Locale.ROOT).contains("rendererpane");
      if (!fits && ours) {
        found.add(who + " at " + bounds + " leaves " + room);
      }
    }
    found.addAll(overlaps(part));
    boolean isUsed =
        part instanceof AbstractButton
            || part instanceof JComboBox<?>
            || part instanceof javax.swing.JSlider
            || part instanceof javax.swing.JSpinner
            || part instanceof javax.swing.JList<?>
            || part instanceof holdfast.window.part.Picture;
    String spoken =
        part.getAccessibleContext() == null ? "" : part.getAccessibleContext().getAccessibleName();
    boolean inside =
        SwingUtilities.getAncestorOfClass(JComboBox.class, part) != null
            || SwingUtilities.getAncestorOfClass(javax.swing.JSpinner.class, part) != null
            || SwingUtilities.getAncestorOfClass(javax.swing.JScrollBar.class, part) != null;
    if (isUsed && !inside && (spoken == null || spoken.isBlank())) {
      found.add(who + " has no name for a screen reader");
    }
    boolean hasWords =
        (part instanceof AbstractButton b && !b.getText().isEmpty())
            || part instanceof JLabel
            || part instanceof JComboBox<?>
            || part instanceof Prose;
    Dimension wanted = part.getPreferredSize();
    boolean renders =
        SwingUtilities.getAncestorOfClass(javax.swing.JList.class, part) != null
            || SwingUtilities.getAncestorOfClass(JComboBox.class, part) != null;
    if (hasWords
        && !renders
        && (part.getWidth() < wanted.width || part.getHeight() < wanted.height)) {
      found.add(who + " is " + part.getSize() + " and wants " + wanted);
    }
    return found;
  }

  /** Parts of one panel that lie on one another. */
  private static List<String> overlaps(Component part) {
    List<String> found = new ArrayList<>();
    if (part instanceof JPanel panel) {
      Component[] children = panel.getComponents();
      for (int i = 0; i < children.length; i++) {
        for (int j = i + 1; j < children.length; j++) {
          if (children[i].isVisible()
              && children[j].isVisible()
              && children[i].getBounds().intersects(children[j].getBounds())) {
            found.add(children[i] + " lies on " + children[j]);
          }
        }
      }
    }
    return found;
  }
}
