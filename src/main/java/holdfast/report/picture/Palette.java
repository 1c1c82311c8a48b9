package holdfast.report.picture;

import java.awt.Color;

/**
 * The colours of a picture: ink on paper, or light on dark. Words and lines that carry meaning keep
 * 4.5 : 1 to what they stand on (WCAG 2.2); what is heard is told in the colours of Okabe and Ito,
 * "Color Universal Design" (2008).
 *
 * @param paper what everything lies on
 * @param card a sheet on the paper
 * @param ink words and notes that matter most
 * @param quiet words that can wait
 * @param line hairlines
 * @param band where a chord tone lies
 * @param guide where a third or a seventh lies
 * @param ghost an idea that could be played
 * @param played notes nobody has judged yet
 * @param now the place that sounds
 * @param turn a chord that the ear does not expect
 * @param isDark whether light stands on dark
 */
public record Palette(
    Color paper,
    Color card,
    Color ink,
    Color quiet,
    Color line,
    Color band,
    Color guide,
    Color ghost,
    Color played,
    Color now,
    Color turn,
    boolean isDark) {

  /** Ink on paper, as the report is printed. */
  public static final Palette LIGHT =
      new Palette(
          new Color(0xFBFAF6),
          new Color(0xFFFFFF),
          new Color(0x23262F),
          new Color(0x65645B),
          new Color(0xDFDCD2),
          new Color(0xEAF1F6),
          new Color(0xD8E6EF),
          new Color(0x8C8A80),
          new Color(0x0072B2),
          new Color(0xD55E00),
          new Color(0xE69F00),
          false);

  /** Light on dark, for a stage or an evening. */
  public static final Palette DARK =
      new Palette(
          new Color(0x1D1F23),
          new Color(0x25282D),
          new Color(0xEDEBE5),
          new Color(0xABA9A0),
          new Color(0x41454C),
          new Color(0x2E363E),
          new Color(0x38444F),
          new Color(0x8F8E86),
          new Color(0x56B4E9),
          new Color(0xF07F3C),
          new Color(0xE69F00),
          true);
}
