package holdfast.window.part;

import java.awt.event.ActionEvent;
import javax.swing.AbstractAction;
import javax.swing.JComponent;
import javax.swing.KeyStroke;

/** Keys that do something while a page is shown. */
public final class Keys {

  private Keys() {}

  /**
   * Binds a key.
   *
   * @param key as {@link KeyStroke#getKeyStroke(String)} reads it: {@code SPACE}, {@code ctrl Z}
   */
  public static void bind(JComponent page, String key, Runnable action) {
    page.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW).put(KeyStroke.getKeyStroke(key), key);
    page.getActionMap()
        .put(
            key,
            new AbstractAction() {
              private static final long serialVersionUID = 1L;

              @Override
              public void actionPerformed(ActionEvent event) {
                action.run();
              }
            });
  }
}
