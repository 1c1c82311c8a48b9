package holdfast.report.picture;

import holdfast.melody.Note;
import holdfast.theory.PitchClassSet;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.Optional;

/**
 * Draws one bar: bands where the tones of its chords lie, the idea where it could go as a dashed
 * ghost, and what was played as lozenges. Round ends for the idea carried, square ones for the idea
 * varied, a hollow outline for something new: shape says it, colour says it again.
 */
public final class BarPainter {

  /** A lozenge is never thinner than this, however many rows a bar has. */
  private static final double THINNEST = 7;

  /** A ghost is a little lower than what is played into it. */
  private static final double GHOST_HEIGHT = 0.8;

  private static final BasicStroke BEAT_LINE =
      new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {2, 4}, 0);
  private static final BasicStroke GHOST_LINE =
      new BasicStroke(
          1.3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {4, 3}, 0);
  private static final BasicStroke OUTLINE = new BasicStroke(1.8f);
  private static final BasicStroke FRAME = new BasicStroke(1f);
  private static final BasicStroke TURN_FRAME = new BasicStroke(2f);

  private BarPainter() {}

  /**
   * Where a chord lies in the bar.
   *
   * @param fromBeat where it begins, from the bar's first beat
   * @param toBeat where it ends
   * @param tones its notes
   * @param guides its third and seventh
   */
  public record Band(double fromBeat, double toBeat, PitchClassSet tones, PitchClassSet guides) {}

  /**
   * A note that was played.
   *
   * @param note in beats from the bar's first
   * @param mark what its phrase was, once that is known
   */
  public record Lozenge(Note note, Optional<Mark> mark) {}

  /**
   * One bar.
   *
   * @param beats how long it is
   * @param low the lowest row, a MIDI pitch
   * @param high the highest
   * @param bands its chords
   * @param unexpected whether the ear does not expect it
   */
  public record Picture(double beats, int low, int high, List<Band> bands, boolean unexpected) {

    /** Copies. */
    public Picture {
      bands = List.copyOf(bands);
    }

    double x(Rectangle2D cell, double beat) {
      return cell.getX() + cell.getWidth() * beat / beats;
    }

    double row(Rectangle2D cell) {
      return cell.getHeight() / (high - low + 1);
    }

    double y(Rectangle2D cell, int pitch) {
      return cell.getY() + (high - pitch) * row(cell);
    }
  }

  /** What does not change while the bar is played: bands, beats, frame. */
  public static void paintGround(Graphics2D g, Rectangle2D cell, Picture bar, Palette palette) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setColor(palette.card());
    g.fill(cell);
    for (Band band : bar.bands()) {
      double from = bar.x(cell, band.fromBeat());
      double to = bar.x(cell, band.toBeat());
      for (int pitch = bar.low(); pitch <= bar.high(); pitch++) {
        if (band.tones().contains(pitch)) {
          g.setColor(band.guides().contains(pitch) ? palette.guide() : palette.band());
          g.fill(new Rectangle2D.Double(from, bar.y(cell, pitch), to - from, bar.row(cell)));
        }
      }
    }
    g.setColor(palette.line());
    g.setStroke(BEAT_LINE);
    for (int beat = 1; beat < bar.beats(); beat++) {
      double x = bar.x(cell, beat);
      g.draw(new Line2D.Double(x, cell.getY(), x, cell.getMaxY()));
    }
    g.setColor(bar.unexpected() ? palette.turn() : palette.line());
    g.setStroke(bar.unexpected() ? TURN_FRAME : FRAME);
    g.draw(cell);
  }

  /** The idea where it could go, paler as {@code strength} falls from 1 to 0. */
  public static void paintGhost(
      Graphics2D g,
      Rectangle2D cell,
      Picture bar,
      List<Note> ghost,
      double strength,
      Palette palette) {
    if (strength <= 0) {
      return;
    }
    Graphics2D pen = clipped(g, cell);
    int alpha = (int) Math.round(255 * Math.min(1, strength));
    pen.setColor(
        new java.awt.Color(
            palette.ghost().getRed(),
            palette.ghost().getGreen(),
            palette.ghost().getBlue(),
            alpha));
    pen.setStroke(GHOST_LINE);
    for (Note note : ghost) {
      pen.draw(lozenge(cell, bar, note, true, GHOST_HEIGHT));
    }
    pen.dispose();
  }

  /** What was played. */
  public static void paintPlayed(
      Graphics2D g, Rectangle2D cell, Picture bar, List<Lozenge> played, Palette palette) {
    Graphics2D pen = clipped(g, cell);
    for (Lozenge lozenge : played) {
      Mark mark = lozenge.mark().orElse(Mark.CARRIED);
      Shape shape = lozenge(cell, bar, lozenge.note(), mark != Mark.VARIED, 1);
      pen.setColor(lozenge.mark().map(m -> m.lineColour(palette)).orElse(palette.played()));
      if (mark.isHollow()) {
        pen.setStroke(OUTLINE);
        pen.draw(shape);
      } else {
        pen.fill(shape);
      }
    }
    pen.dispose();
  }

  private static Graphics2D clipped(Graphics2D g, Rectangle2D cell) {
    Graphics2D pen = (Graphics2D) g.create();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.clip(cell);
    return pen;
  }

  private static Shape lozenge(
      Rectangle2D cell, Picture bar, Note note, boolean round, double share) {
    double height = share * Math.max(THINNEST, bar.row(cell) * 0.86);
    double middle = bar.y(cell, note.pitch()) + bar.row(cell) / 2;
    double from = bar.x(cell, note.onsetBeats());
    double to = Math.max(bar.x(cell, note.endBeats()) - 1.5, from + 3);
    double arc = round ? height : 1;
    return new RoundRectangle2D.Double(from, middle - height / 2, to - from, height, arc, arc);
  }
}
