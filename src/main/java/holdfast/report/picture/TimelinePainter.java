package holdfast.report.picture;

import holdfast.chart.ChordSpan;
import holdfast.harmony.NoteRole;
import holdfast.report.picture.TimelineRow.Sounding;
import holdfast.theory.ChordSymbol;
import holdfast.theory.NoteName;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Draws what sounded over some bars: each note at its time and pitch over bands where the chord's
 * own notes lie. A note at rest in its chord is full, one on its way is half full, one that rubs is
 * hollow; what it does is written under it where it is no note of the chord. What was sung stands
 * at its true height, with a line at the height that was meant.
 */
public final class TimelinePainter {

  private static final double HEAD = 18;
  private static final double LANE = 11;
  private static final int LANES = 3;
  private static final double ENTRIES = 12;
  private static final double TEXT = 9.5;
  private static final double CHORD_TEXT = 12;
  private static final double SEMITONE = 5.5;
  private static final double LEAST_NOTE_WIDTH = 3;

  /** Under this nobody hears it in a melody; it is drawn, and no number is set beside it. */
  private static final double WORTH_A_NUMBER_CENTS = 20;

  private TimelinePainter() {}

  /** How high a row is, whatever its width. */
  public static double height(TimelineRow row) {
    return HEAD + SEMITONE * (row.highest() - row.lowest() + 1) + ENTRIES + LANES * LANE + 2;
  }

  /** Paints a row with its top left corner at the point. */
  public static void paint(
      Graphics2D g, double x, double y, double width, TimelineRow row, Palette palette) {
    Graphics2D own = (Graphics2D) g.create();
    own.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    new Drawing(own, x, y, width, row, palette).draw();
    own.dispose();
  }

  private record Drawing(
      Graphics2D g, double x, double y, double width, TimelineRow row, Palette palette) {

    void draw() {
      row.chords().forEach(this::bands);
      grid();
      row.chords().forEach(this::chordName);
      for (Sounding note : row.notes()) {
        note(note);
      }
      row.voice().forEach(this::voice);
      entries();
      roles();
    }

    /** A stretch of the voice; what stands outside of the picture is cut off at its edge. */
    private void voice(List<TimelineRow.Voice> stroke) {
      Path2D.Double curve = new Path2D.Double();
      for (TimelineRow.Voice moment : stroke) {
        double across = at(moment.beat());
        double within = Math.max(row.lowest(), Math.min(row.highest(), moment.pitch()));
        double height = top(within) + SEMITONE / 2;
        if (curve.getCurrentPoint() == null) {
          curve.moveTo(across, height);
        }
        curve.lineTo(across, height);
      }
      // A light edge lets it be seen on full notes.
      g.setColor(palette.card());
      g.setStroke(new BasicStroke(2.4f));
      g.draw(curve);
      g.setColor(palette.ink());
      g.setStroke(new BasicStroke(0.9f));
      g.draw(curve);
    }

    private double at(double beat) {
      double within = Math.max(row.fromBeat(), Math.min(row.endBeat(), beat));
      return x + width * (within - row.fromBeat()) / (row.endBeat() - row.fromBeat());
    }

    /** The top of a semitone's row. */
    private double top(double pitch) {
      return y + HEAD + SEMITONE * (row.highest() - pitch);
    }

    private double floor() {
      return top(row.lowest()) + SEMITONE;
    }

    private void bands(ChordSpan span) {
      Optional<ChordSymbol> chord = span.harmony().chord();
      if (chord.isEmpty()) {
        return;
      }
      for (int pitch = row.lowest(); pitch <= row.highest(); pitch++) {
        int wanted = Math.floorMod(pitch, 12);
        boolean isRoot = chord.get().root().pitchClass() == wanted;
        boolean belongs =
            chord.get().notes().stream().map(NoteName::pitchClass).anyMatch(pc -> pc == wanted);
        if (belongs || isRoot) {
          g.setColor(isRoot ? palette.guide() : palette.band());
          g.fill(
              new Rectangle2D.Double(
                  at(span.startBeat()),
                  top(pitch),
                  at(span.endBeat()) - at(span.startBeat()),
                  SEMITONE));
        }
      }
    }

    private void grid() {
      g.setStroke(new BasicStroke(0.6f));
      int beats = row.bars() * row.beatsInBar();
      for (int i = -(int) row.leadBeats(); i <= beats; i++) {
        boolean isBar = Math.floorMod(i, row.beatsInBar()) == 0;
        g.setColor(isBar ? palette.quiet() : palette.line());
        double line = at(row.startBeat() + i);
        g.draw(new Line2D.Double(line, isBar ? y : y + HEAD, line, floor()));
      }
      g.setColor(palette.quiet());
      for (int bar = 0; bar < row.bars(); bar++) {
        String number = Integer.toString(row.firstBar() + bar);
        double right = at(row.startBeat() + (double) (bar + 1) * row.beatsInBar());
        double wide = Glyphs.words().width(number, TEXT);
        Glyphs.words().fill(g, number, right - wide - 3, y + TEXT, TEXT);
      }
    }

    private void chordName(ChordSpan span) {
      if (span.endBeat() <= row.startBeat()) {
        // A pick-up is narrower than a chord's name.
        return;
      }
      g.setColor(palette.ink());
      String name = span.harmony().display();
      Glyphs.bold()
          .fill(
              g,
              name,
              at(Math.max(row.startBeat(), span.startBeat())) + 3,
              y + CHORD_TEXT,
              CHORD_TEXT);
    }

    private void note(Sounding note) {
      double left = at(note.onset());
      double wide = Math.max(LEAST_NOTE_WIDTH, at(note.onset() + note.duration()) - left);
      double sung = note.pitch() + note.cents() / 100;
      Rectangle2D place = new Rectangle2D.Double(left, top(sung), wide, SEMITONE);
      RoundRectangle2D shape =
          new RoundRectangle2D.Double(left, place.getY(), wide, SEMITONE, 3, 3);
      g.setStroke(new BasicStroke(1.1f));
      g.setColor(palette.card());
      g.fill(shape);
      // Darker than in the sheet: it must stand out from the bands, too.
      g.setColor(note.mark().textColour(palette));
      switch (note.role().effect()) {
        case RESTS, NONE -> g.fill(shape);
        case MOVES, RESOLVES -> {
          Path2D.Double half = new Path2D.Double();
          half.moveTo(left, place.getMaxY());
          half.lineTo(left, place.getY() + SEMITONE / 2);
          half.lineTo(left + wide, place.getY() + SEMITONE / 2);
          half.lineTo(left + wide, place.getMaxY());
          half.closePath();
          g.fill(half);
        }
        case RUBS -> {}
      }
      g.draw(shape);
      if (note.cents() != 0) {
        cents(note, left, wide);
      }
    }

    private void cents(Sounding note, double left, double wide) {
      double meant = top(note.pitch()) + SEMITONE / 2;
      g.setColor(palette.played());
      g.setStroke(new BasicStroke(0.9f));
      g.draw(new Line2D.Double(left, meant, left + wide, meant));
      if (Math.abs(note.cents()) >= WORTH_A_NUMBER_CENTS) {
        String number = String.format(Locale.ROOT, "%+.0f", note.cents()).replace('-', '−');
        double above = top(note.pitch() + note.cents() / 100) - 1.5;
        g.setColor(palette.ink());
        Glyphs.words().fill(g, number, left, above, TEXT * 0.85);
      }
    }

    /** A flag under the first note of each phrase: how it came in. */
    private void entries() {
      double line = floor() + ENTRIES - 2.5;
      for (Sounding note : row.notes()) {
        if (note.entry().isPresent() && row.begins(note)) {
          double at = at(note.onset());
          g.setColor(palette.ink());
          g.setStroke(new BasicStroke(0.8f));
          g.draw(new Line2D.Double(at, floor(), at, line));
          long off = Math.round(note.entry().get());
          String words = (off >= 0 ? "+" : "−") + Math.abs(off) + " ms";
          Glyphs.words().fill(g, words, at + 2, line, TEXT);
        }
      }
    }

    /** What notes do that are not of their chord, in as many lanes as it takes, three at most. */
    private void roles() {
      List<Double> free = new ArrayList<>();
      for (int lane = 0; lane < LANES; lane++) {
        free.add(x);
      }
      g.setColor(palette.quiet());
      for (Sounding note : row.notes()) {
        if (note.role() == NoteRole.CHORD_TONE
            || note.role() == NoteRole.UNJUDGED
            || !row.begins(note)) {
          continue;
        }
        String word = word(note.role());
        double wide = Glyphs.words().width(word, TEXT);
        double left = Math.min(at(note.onset()), x + width - wide);
        for (int lane = 0; lane < LANES; lane++) {
          if (free.get(lane) <= left) {
            double line = floor() + ENTRIES + LANE * (lane + 1) - 2;
            Glyphs.words().fill(g, word, left, line, TEXT);
            free.set(lane, left + wide + 4);
            break;
          }
        }
      }
    }

    private static String word(NoteRole role) {
      return role == NoteRole.HELD_AGAINST ? "held against" : role.text();
    }
  }
}
