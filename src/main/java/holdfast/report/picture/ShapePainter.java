package holdfast.report.picture;

import holdfast.melody.Note;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * Draws a phrase as the shape it makes: a dot for each note, joined by a line, higher is higher.
 * The idea's own shape can stand behind it as a dashed ghost, so that one sees what was kept.
 */
public final class ShapePainter {

  private static final BasicStroke GHOST_LINE =
      new BasicStroke(
          1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, new float[] {3, 3}, 0);

  /** A shape is never drawn steeper than this many semitones from edge to edge. */
  private static final double LEAST_RANGE_SEMITONES = 7;

  private static final double MARGIN = 7;
  private static final double DOT_RADIUS = 3.2;

  private ShapePainter() {}

  /**
   * Paints into the cell.
   *
   * @param ghost the idea where it would lie at this place, or no notes
   * @param notes what was played, at least one note
   */
  public static void paint(
      Graphics2D g, Rectangle2D cell, List<Note> ghost, List<Note> notes, Mark mark) {
    paint(g, cell, ghost, notes, mark, Palette.LIGHT);
  }

  /** Paints into the cell in the colours of this paper. */
  public static void paint(
      Graphics2D g,
      Rectangle2D cell,
      List<Note> ghost,
      List<Note> notes,
      Mark mark,
      Palette palette) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    Frame frame = Frame.around(cell, ghost, notes);
    if (ghost.size() > 1) {
      g.setColor(palette.ghost());
      g.setStroke(GHOST_LINE);
      g.draw(Mark.path(frame.xs(ghost), frame.ys(ghost)));
    }
    double[] x = frame.xs(notes);
    double[] y = frame.ys(notes);
    g.setColor(mark.lineColour(palette));
    g.setStroke(mark.stroke());
    if (notes.size() > 1) {
      g.draw(Mark.path(x, y));
    }
    for (int i = 0; i < x.length; i++) {
      dot(g, x[i], y[i], mark, palette);
    }
  }

  /** Paints one dot of the mark, as in a legend. */
  public static void dot(Graphics2D g, double x, double y, Mark mark) {
    dot(g, x, y, mark, Palette.LIGHT);
  }

  /** Paints one dot of the mark in the colours of this paper. */
  public static void dot(Graphics2D g, double x, double y, Mark mark, Palette palette) {
    Shape dot = mark.dot(x, y, DOT_RADIUS);
    g.setColor(mark.isHollow() ? palette.card() : mark.lineColour(palette));
    g.fill(dot);
    if (mark.isHollow()) {
      g.setStroke(new BasicStroke(1.2f));
      g.setColor(mark.lineColour(palette));
      g.draw(dot);
    }
  }

  /** Where beats and pitches fall in the cell. */
  private record Frame(
      double left,
      double top,
      double width,
      double height,
      double from,
      double span,
      double high,
      double range) {

    static Frame around(Rectangle2D cell, List<Note> ghost, List<Note> notes) {
      double from = Double.POSITIVE_INFINITY;
      double to = Double.NEGATIVE_INFINITY;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (List<Note> line : List.of(ghost, notes)) {
        for (Note note : line) {
          from = Math.min(from, note.onsetBeats());
          to = Math.max(to, note.onsetBeats());
          low = Math.min(low, note.pitch());
          high = Math.max(high, note.pitch());
        }
      }
      double missing = Math.max(0, LEAST_RANGE_SEMITONES - (high - low));
      return new Frame(
          cell.getX() + MARGIN,
          cell.getY() + MARGIN,
          cell.getWidth() - 2 * MARGIN,
          cell.getHeight() - 2 * MARGIN,
          from,
          Math.max(to - from, 0.5),
          high + missing / 2,
          high - low + missing);
    }

    double[] xs(List<Note> line) {
      return line.stream()
          .mapToDouble(n -> left + width * (n.onsetBeats() - from) / span)
          .toArray();
    }

    double[] ys(List<Note> line) {
      return line.stream().mapToDouble(n -> top + height * (high - n.pitch()) / range).toArray();
    }
  }
}
