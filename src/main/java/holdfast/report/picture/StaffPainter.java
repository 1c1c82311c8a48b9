package holdfast.report.picture;

import holdfast.report.picture.StaffSpacing.PlacedChord;
import holdfast.report.picture.Stems.Beam;
import holdfast.report.picture.Stems.Stem;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws music on a staff: clef, signature, metre, notes, rests, beams, ties, tuplets, and chords
 * above. Signs are Bravura's, by their code points in SMuFL 1.4; what stands where along the staff
 * is {@link StaffSpacing}'s.
 */
public final class StaffPainter {

  private static final double EM = 4;
  private static final double CHORD_EM = 2.3;
  private static final double MARGIN = 0.5;

  /** Places of sharps on a treble staff, in half spaces above the lowest line, F first. */
  private static final int[] SHARPS = {8, 5, 9, 6, 3, 7, 4};

  /** The same of flats, B first. */
  private static final int[] FLATS = {4, 7, 3, 6, 2, 5, 1};

  /** A bass staff has them a third lower. */
  private static final int BASS_LOWER = 2;

  private static final int FLAT = 0xE260;
  private static final int NATURAL = 0xE261;
  private static final int SHARP = 0xE262;
  private static final int DOUBLE_SHARP = 0xE263;
  private static final int DOUBLE_FLAT = 0xE264;
  private static final int TRIPLE_SHARP = 0xE265;
  private static final int TRIPLE_FLAT = 0xE266;
  private static final int TIME_ZERO = 0xE080;
  private static final int TUPLET_ZERO = 0xE880;
  private static final int DOT = 0xE1E7;
  private static final int WHOLE_REST = 0xE4E3;
  private static final int FLAG_UP = 0xE240;

  private final Staff staff;
  private final StaffSpacing spacing;
  private final Stems stems;
  private final double top;
  private final double bottom;
  private final List<String> order =
      List.of("whole", "half", "quarter", "eighth", "16th", "32nd", "64th", "128th");

  /** A painter of this staff. */
  public StaffPainter(Staff staff) {
    this.staff = staff;
    this.spacing = new StaffSpacing(staff);
    this.stems = new Stems(staff, spacing.notes());
    double high = -1.5;
    double low = 5.5;
    for (PlacedNote note : spacing.notes()) {
      if (!note.isRest()) {
        high = Math.min(high, note.y() - 1.6);
        low = Math.max(low, note.y() + 1.2);
      }
    }
    for (Stem stem : stems.stems()) {
      high = Math.min(high, stem.to() - 0.4);
      low = Math.max(low, stem.to() + 0.4);
    }
    boolean tuplets = spacing.notes().stream().anyMatch(n -> n.written().piece().tuplet() > 1);
    this.top = high - (tuplets ? 1.6 : 0) - (spacing.chords().isEmpty() ? 0 : CHORD_EM + 0.2);
    this.bottom = low;
  }

  /** How many staff spaces the picture is wide. */
  public double width() {
    double chords = 0;
    for (PlacedChord chord : spacing.chords()) {
      chords = Math.max(chords, chord.x() + Glyphs.bold().width(chord.text(), CHORD_EM));
    }
    return Math.max(spacing.width(), chords) + 2 * MARGIN;
  }

  /** How many staff spaces it is high. */
  public double height() {
    return bottom - top;
  }

  /**
   * Paints with the top left corner at the point.
   *
   * @param space how large a staff space is
   */
  public void paint(Graphics2D g, double x, double y, double space, Palette palette) {
    Graphics2D own = (Graphics2D) g.create();
    own.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    own.setColor(palette.ink());
    // Everything below is drawn in staff spaces; outlines carry the scale, no transform is needed.
    Pen pen = new Pen(own, x + MARGIN * space, y - top * space, space);
    lines(pen);
    head(pen);
    for (PlacedNote note : spacing.notes()) {
      if (note.isRest()) {
        rest(pen, note);
      } else {
        note(pen, note);
      }
    }
    spacing.barRests().forEach(at -> pen.sign(WHOLE_REST, at, Lines.y(6)));
    stems.stems().forEach(stem -> stem(pen, stem));
    stems.beams().forEach(beam -> beam(pen, beam));
    tuplets(pen);
    for (PlacedChord chord : spacing.chords()) {
      pen.words(chord.text(), chord.x(), top + CHORD_EM * 0.85);
    }
    own.dispose();
  }

  private void lines(Pen pen) {
    double right = spacing.width();
    for (int line = 0; line <= Lines.TOP; line += 2) {
      pen.rectangle(0, Lines.y(line) - Lines.THICKNESS / 2, right, Lines.THICKNESS);
    }
    int bars = spacing.barLines().size();
    for (int i = 0; i < bars; i++) {
      double at = spacing.barLines().get(i);
      pen.rectangle(at - Lines.BAR_LINE_THICKNESS, 0, Lines.BAR_LINE_THICKNESS, Lines.y(0));
    }
  }

  private void head(Pen pen) {
    pen.sign(staff.clef().sign(), spacing.clef(), Lines.y(staff.clef().line()));
    int lower = staff.clef() == Clef.BASS ? BASS_LOWER : 0;
    int[] places = staff.fifths() > 0 ? SHARPS : FLATS;
    for (int i = 0; i < Math.abs(staff.fifths()); i++) {
      pen.sign(
          staff.fifths() > 0 ? SHARP : FLAT, spacing.signature() + i, Lines.y(places[i] - lower));
    }
    number(pen, staff.metre().beats(), 6);
    number(pen, staff.metre().unit(), 2);
  }

  private void number(Pen pen, int number, int position) {
    String digits = Integer.toString(number);
    int most =
        Math.max(
            Integer.toString(staff.metre().beats()).length(),
            Integer.toString(staff.metre().unit()).length());
    double at = spacing.time() + 0.94 * (most - digits.length());
    for (int i = 0; i < digits.length(); i++) {
      pen.sign(TIME_ZERO + digits.charAt(i) - '0', at + 1.88 * i, Lines.y(position));
    }
  }

  private void rest(Pen pen, PlacedNote note) {
    String type = note.written().piece().value().type();
    int place = type.equals("whole") ? 6 : Lines.MIDDLE;
    pen.sign(WHOLE_REST + order.indexOf(type), note.x(), Lines.y(place));
    if (note.written().piece().value().dotted()) {
      pen.sign(DOT, note.x() + 1.5, Lines.y(5));
    }
  }

  private void note(Pen pen, PlacedNote note) {
    String type = note.written().piece().value().type();
    int head = type.equals("whole") ? 0xE0A2 : type.equals("half") ? 0xE0A3 : 0xE0A4;
    int position = note.position().orElseThrow();
    ledgers(pen, note, position);
    pen.sign(head, note.x(), note.y());
    if (note.accidental().isPresent()) {
      int sign = accidental(note.accidental().getAsInt());
      double wide = Glyphs.music().width(sign, EM);
      pen.sign(sign, note.x() - wide - 0.22, note.y());
    }
    if (note.written().piece().value().dotted()) {
      // A dot never stands on a line.
      int dot = position % 2 == 0 ? position + 1 : position;
      pen.sign(DOT, note.x() + note.headWidth() + 0.35, Lines.y(dot));
    }
    if (note.written().tiedOn()) {
      tie(pen, note, position);
    }
  }

  private static void ledgers(Pen pen, PlacedNote note, int position) {
    double left = note.x() - Lines.LEDGER_EXTENSION;
    double wide = note.headWidth() + 2 * Lines.LEDGER_EXTENSION;
    for (int line = -2; line >= position; line -= 2) {
      pen.rectangle(left, Lines.y(line) - Lines.LEDGER_THICKNESS / 2, wide, Lines.LEDGER_THICKNESS);
    }
    for (int line = Lines.TOP + 2; line <= position; line += 2) {
      pen.rectangle(left, Lines.y(line) - Lines.LEDGER_THICKNESS / 2, wide, Lines.LEDGER_THICKNESS);
    }
  }

  private static int accidental(int alter) {
    return switch (alter) {
      case -3 -> TRIPLE_FLAT;
      case -2 -> DOUBLE_FLAT;
      case -1 -> FLAT;
      case 0 -> NATURAL;
      case 1 -> SHARP;
      case 2 -> DOUBLE_SHARP;
      default -> TRIPLE_SHARP;
    };
  }

  private void tie(Pen pen, PlacedNote note, int position) {
    double from = note.x() + note.headWidth() * 0.75;
    double to =
        spacing.after(note).map(n -> n.x() + n.headWidth() * 0.25).orElse(spacing.width() - 0.2);
    boolean below = position < Lines.MIDDLE;
    double side = below ? 1 : -1;
    double y = note.y() + side * 0.75;
    double high = side * Math.min(1, 0.35 + (to - from) / 12);
    pen.crescent(from, y, to, high);
  }

  private void stem(Pen pen, Stem stem) {
    double up = Math.min(stem.from(), stem.to());
    pen.rectangle(
        stem.x() - Lines.STEM_THICKNESS / 2,
        up,
        Lines.STEM_THICKNESS,
        Math.abs(stem.to() - stem.from()));
    boolean beamed =
        stems.beams().stream().anyMatch(b -> b.left() <= stem.x() && b.right() >= stem.x());
    int flags = stem.note().written().beams();
    if (flags > 0 && !beamed) {
      int sign = FLAG_UP + 2 * (flags - 1) + (stem.up() ? 0 : 1);
      pen.sign(sign, stem.x() - Lines.STEM_THICKNESS / 2, stem.to());
    }
  }

  private static void beam(Pen pen, Beam beam) {
    double thick = beam.up() ? Lines.BEAM_THICKNESS : -Lines.BEAM_THICKNESS;
    pen.slab(beam.left(), beam.leftY(), beam.right(), beam.rightY(), thick);
  }

  private void tuplets(Pen pen) {
    List<PlacedNote> group = new ArrayList<>();
    for (PlacedNote note : spacing.notes()) {
      boolean goesOn =
          !group.isEmpty()
              && group.get(0).bar() == note.bar()
              && group.get(0).written().beat() == note.written().beat();
      if (!group.isEmpty() && !goesOn) {
        tuplet(pen, group);
        group.clear();
      }
      if (note.written().piece().tuplet() > 1) {
        group.add(note);
      }
    }
    if (!group.isEmpty()) {
      tuplet(pen, group);
    }
  }

  /** A bracket with its number, above everything in it. */
  private void tuplet(Pen pen, List<PlacedNote> group) {
    double y = -0.4;
    for (PlacedNote note : group) {
      y = Math.min(y, note.isRest() ? y : note.y() - 1);
      for (Stem stem : stems.stems()) {
        if (stem.note().equals(note)) {
          y = Math.min(y, stem.to() - 0.6);
        }
      }
    }
    double left = group.get(0).x();
    PlacedNote last = group.get(group.size() - 1);
    double right = last.x() + last.headWidth();
    double middle = (left + right) / 2;
    double line = 0.12;
    pen.rectangle(left, y - line, middle - 0.8 - left, line);
    pen.rectangle(middle + 0.8, y - line, right - middle - 0.8, line);
    pen.rectangle(left, y - line, line, 0.5);
    pen.rectangle(right - line, y - line, line, 0.5);
    int number = group.get(0).written().piece().tuplet();
    pen.sign(TUPLET_ZERO + number, middle - 0.6, y + 0.6);
  }

  /** Draws in staff spaces from the left end of the top line. */
  private record Pen(Graphics2D g, double x, double y, double space) {

    void sign(int codePoint, double atX, double atY) {
      Glyphs.music().fill(g, codePoint, x + atX * space, y + atY * space, EM * space);
    }

    void words(String text, double atX, double atY) {
      Glyphs.bold().fill(g, text, x + atX * space, y + atY * space, CHORD_EM * space);
    }

    void rectangle(double atX, double atY, double wide, double high) {
      g.fill(new Rectangle2D.Double(x + atX * space, y + atY * space, wide * space, high * space));
    }

    void slab(double left, double leftY, double right, double rightY, double thick) {
      Path2D.Double path = new Path2D.Double();
      path.moveTo(left, leftY);
      path.lineTo(right, rightY);
      path.lineTo(right, rightY + thick);
      path.lineTo(left, leftY + thick);
      path.closePath();
      g.fill(placed(path));
    }

    void crescent(double from, double atY, double to, double high) {
      double bend = (to - from) / 4;
      Path2D.Double path = new Path2D.Double();
      path.moveTo(from, atY);
      path.curveTo(from + bend, atY + high, to - bend, atY + high, to, atY);
      double thin = high - Math.copySign(0.22, high);
      path.curveTo(to - bend, atY + thin, from + bend, atY + thin, from, atY);
      path.closePath();
      g.fill(placed(path));
    }

    private java.awt.Shape placed(Path2D path) {
      AffineTransform place = new AffineTransform(space, 0, 0, space, x, y);
      return place.createTransformedShape(path);
    }
  }
}
