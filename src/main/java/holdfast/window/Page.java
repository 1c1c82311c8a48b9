package holdfast.window;

import javax.swing.JComponent;

/** One thing that the window can show. Made anew when the look or the language changes. */
public interface Page {

  /** What is shown. */
  JComponent component();

  /** It can be seen now. */
  default void shown() {}

  /** Another page is shown now. */
  default void left() {}

  /** Whether it wants the window for itself, without the row of pages above. */
  default boolean isAlone() {
    return false;
  }
}
