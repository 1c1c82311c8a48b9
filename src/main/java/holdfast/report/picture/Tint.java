package holdfast.report.picture;

import java.awt.Color;
import java.util.Locale;

/**
 * What colours are for. Every meaning has a shape or a word as well; the colours of meanings are
 * Okabe and Ito's ("Color Universal Design", 2008), darkened on light ground and lightened on dark
 * ground until they can be told from it (WCAG 2.2: words 4.5 : 1, lines 3 : 1).
 */
public enum Tint {
  /** Words, notes, staff. */
  INK(0x23252B, 0xECEAE3),
  /** Words beside the point. */
  QUIET(0x5A5953, 0xB9B7AE),
  /** What pictures and tables stand on. */
  CARD(0xFFFFFF, 0x25272D),
  /** The page itself. */
  PAPER(0xFBFAF6, 0x1A1B1F),
  /** Rules and frames that only divide. */
  LINE(0xDEDBD2, 0x474A52),
  /** The idea's own shape behind another. */
  GHOST(0x8C8A83, 0x8E8C85),
  /** Where a chord's own notes lie. */
  BAND(0xE3ECF2, 0x30404B),
  /** Where the chord's root lies. */
  ROOT(0xC9DCE8, 0x3D5567),
  /** The idea, carried. */
  CARRIED(0x00795A, 0x3CC69B),
  /** The idea, varied. */
  VARIED(0x8A5B00, 0xEBAE2E),
  /** Something new. */
  NEW(0x5D5C5A, 0xBFBDB7),
  /** A turn that nobody expects; also what is measured in cents. */
  TURN(0x0067A3, 0x6DBBEA);

  private final Color light;
  private final Color dark;

  Tint(int light, int dark) {
    this.light = new Color(light);
    this.dark = new Color(dark);
  }

  /** On light ground, and on paper. */
  public Color light() {
    return light;
  }

  /** On dark ground. */
  public Color dark() {
    return dark;
  }

  /** Its name in style sheets: {@code --carried}. */
  public String property() {
    return "--" + name().toLowerCase(Locale.ROOT);
  }
}
