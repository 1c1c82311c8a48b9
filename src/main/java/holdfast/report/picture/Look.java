package holdfast.report.picture;

import java.awt.Color;

/** On which ground pictures are painted. */
public enum Look {
  /** Paper and light screens. */
  LIGHT,
  /** Dark screens. */
  DARK;

  /** The colour of a meaning on this ground. */
  public Color of(Tint tint) {
    return this == LIGHT ? tint.light() : tint.dark();
  }
}
