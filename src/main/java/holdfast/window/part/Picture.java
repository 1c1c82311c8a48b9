package holdfast.window.part;

import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;

/** Something painted, that says to a screen reader in words what it shows. */
public abstract class Picture extends JComponent {

  private static final long serialVersionUID = 1L;

  /** It paints all of itself. */
  @Override
  public boolean isOpaque() {
    return true;
  }

  /** What it shows, in words. */
  protected abstract String inWords();

  /** What kind of thing it is. */
  protected AccessibleRole role() {
    return AccessibleRole.CANVAS;
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
      return role();
    }

    @Override
    public String getAccessibleName() {
      return inWords();
    }
  }
}
