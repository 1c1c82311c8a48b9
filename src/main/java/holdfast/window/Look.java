package holdfast.window;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import holdfast.report.picture.Palette;
import java.awt.Font;
import java.util.Optional;
import javax.swing.UIManager;

/**
 * How the window looks: its paper, its letters, its lengths.
 *
 * @param palette the paper
 * @param percent text size in per cent of the system's
 * @param usual the font of plain text at that size
 */
public record Look(Palette palette, int percent, Font usual) {

  /** Smaller than this nobody reads well, in points. */
  private static final float SMALLEST_POINTS = 13f;

  /** How the user wants it. Installs the look and feel; on the event thread only. */
  static Look install(Preferences preferences) {
    FlatLaf.registerCustomDefaultsSource("holdfast.window");
    boolean dark = preferences.theme() == Preferences.Theme.DARK;
    UIManager.put("defaultFont", null);
    setUp(dark);
    Font system =
        Optional.ofNullable(UIManager.getFont("Label.font"))
            .orElse(new Font("SansSerif", Font.PLAIN, 13));
    float points = Math.max(SMALLEST_POINTS, system.getSize2D()) * preferences.textPercent() / 100f;
    Font font = system.deriveFont(points);
    UIManager.put("defaultFont", font);
    setUp(dark);
    return new Look(dark ? Palette.DARK : Palette.LIGHT, preferences.textPercent(), font);
  }

  private static void setUp(boolean dark) {
    boolean done = dark ? FlatDarkLaf.setup() : FlatLightLaf.setup();
    if (!done) {
      throw new IllegalStateException("the look of the window cannot be set up");
    }
  }

  /** A length that grows with the text. */
  public int px(double length) {
    return (int) Math.round(length * percent / 100);
  }

  /** The font of plain text, so many times as large. */
  public Font font(double times) {
    return usual.deriveFont((float) (usual.getSize2D() * times));
  }

  /** The same in bold. */
  public Font bold(double times) {
    return usual.deriveFont(Font.BOLD, (float) (usual.getSize2D() * times));
  }
}
