package holdfast.window.play;

import holdfast.backing.Arrangement;
import holdfast.chart.Bar;
import holdfast.chart.ChordSpan;
import holdfast.melody.Note;
import holdfast.report.picture.BarPainter;
import holdfast.report.picture.BarPainter.Lozenge;
import holdfast.window.NoteNaming;
import holdfast.window.part.Kit;
import holdfast.window.part.Letters;
import holdfast.window.part.Picture;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Two lines of bars, now and next. The page turns when the last bar of the upper line is over, as a
 * musician reads. What stands still is painted once; a frame paints the bar that sounds.
 */
final class Stage extends Picture {

  private static final long serialVersionUID = 1L;

  /** The upper line has this part of the height. */
  private static final double NOW_SHARE = 0.56;

  /** Rows that are always there, so that lozenges stay thick enough to see. */
  private static final int LEAST_ROWS = 13;

  private static final int PLAYHEAD_WIDTH = 3;

  /** Where its round end begins, at most so far from the playhead. */
  private static final int END_OF_A_LOZENGE = 14;

  /** At the usual text size. */
  private static final int LEAST_FOR_TWO = 130;

  private final transient Kit kit;
  private final NoteNaming naming;
  private final transient Arrangement arrangement;
  private final double barBeats;

  private transient List<PlayedBar> now = List.of();
  private transient List<PlayedBar> next = List.of();
  private transient Ghosts ghosts = Ghosts.NONE;
  private double ghostStrength = 1;
  private double paintedStrength = 1;
  private transient List<Lozenge> played = List.of();
  private int low = 60;
  private int high = 60 + LEAST_ROWS - 1;
  private double beat = Double.NEGATIVE_INFINITY;

  private transient Optional<BufferedImage> ground = Optional.empty();

  Stage(Kit kit, NoteNaming naming, Arrangement arrangement) {
    this.kit = kit;
    this.naming = naming;
    this.arrangement = arrangement;
    this.barBeats = arrangement.metre().beats();
    setBackground(kit.palette().paper());
  }

  /** Shows these lines. */
  void turnTo(List<PlayedBar> nowLine, List<PlayedBar> nextLine) {
    if (!now.equals(nowLine) || !next.equals(nextLine)) {
      now = nowLine;
      next = nextLine;
      repaintGround();
    }
  }

  /**
   * Shows the idea where it could go. Where it only grows paler the next page is soon enough: all
   * the bars would be painted anew for it.
   */
  void hint(Ghosts other, double strength) {
    ghostStrength = strength;
    if (!ghosts.equals(other) || strength > paintedStrength || strength == 0) {
      ghosts = other;
      List<Note> all = new ArrayList<>();
      other.byBar().values().forEach(all::addAll);
      played.forEach(lozenge -> all.add(lozenge.note()));
      if (!all.isEmpty()) {
        centre(
            all.stream().mapToInt(Note::pitch).min().orElseThrow(),
            all.stream().mapToInt(Note::pitch).max().orElseThrow());
      }
      repaintGround();
    }
  }

  /** Shows what was played, in beats of the take; repaints what changed since the last time. */
  void play(List<Lozenge> notes, boolean judgedAnew) {
    List<Lozenge> before = played;
    played = notes;
    makeRoom(notes.stream().map(Lozenge::note).toList());
    if (judgedAnew) {
      for (List<PlayedBar> line : List.of(now, next)) {
        for (PlayedBar bar : line) {
          if (!lozenges(bar, before).equals(lozenges(bar, notes))) {
            repaint(grown(cell(bar)));
          }
        }
      }
    }
  }

  /**
   * Moves to this beat. A note that sounds grows at the playhead only; one that was heard anew may
   * have begun anywhere in the bar.
   */
  void moveTo(double beatNow, boolean heardAnew) {
    double before = beat;
    beat = beatNow;
    Rectangle was = strip(before);
    Rectangle is = strip(beatNow);
    if (heardAnew) {
      barAt(beatNow).ifPresent(bar -> repaint(grown(cell(bar))));
    }
    if (!was.equals(is)) {
      repaint(was);
      repaint(is);
    }
  }

  /** With the edge of a lozenge that comes over the bar line. */
  private static Rectangle grown(Rectangle2D cell) {
    Rectangle grown = cell.getBounds();
    grown.grow(PLAYHEAD_WIDTH, PLAYHEAD_WIDTH);
    return grown;
  }

  private void makeRoom(List<Note> notes) {
    int lowest = notes.stream().mapToInt(Note::pitch).min().orElse(low + 1) - 1;
    int highest = notes.stream().mapToInt(Note::pitch).max().orElse(high - 1) + 1;
    if (lowest < low || highest > high) {
      low = Math.min(low, lowest);
      high = Math.max(high, highest);
      repaintGround();
    }
  }

  /** The rows about these pitches and no others. */
  private void centre(int from, int to) {
    int missing = Math.max(0, LEAST_ROWS - (to - from + 1));
    low = Math.max(0, from - (missing + 1) / 2 - 1);
    high = Math.min(127, to + missing / 2 + 1);
    repaintGround();
  }

  private void repaintGround() {
    ground = Optional.empty();
    repaint();
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(kit.look().px(640), kit.look().px(300));
  }

  @Override
  protected String inWords() {
    return kit.words().say("play.now")
        + ": "
        + chords(now)
        + ". "
        + kit.words().say("play.next")
        + ": "
        + chords(next);
  }

  private String chords(List<PlayedBar> line) {
    return line.stream()
        .map(bar -> label(bar) + (isUnexpected(bar) ? " " + kit.words().say("play.turn") : ""))
        .collect(Collectors.joining(", "));
  }

  private String label(PlayedBar bar) {
    return arrangement.chordsOf(bar.place()).stream()
        .map(span -> naming.chord(span.harmony()))
        .distinct()
        .collect(Collectors.joining(" "));
  }

  private boolean isUnexpected(PlayedBar played) {
    List<Bar> bars = arrangement.form().bars();
    int number = played.place().bar();
    return number >= 1 && bars.get(number - 1).unexpected();
  }

  // Where things are.

  private double labelHeight(boolean isNow) {
    return kit.look().usual().getSize2D() * (isNow ? 2.1 : 1.7);
  }

  /** Two lines that nobody can read are worth less than one. */
  private boolean hasRoomForTwo() {
    return getHeight() >= kit.look().px(LEAST_FOR_TWO);
  }

  private Rectangle2D cell(PlayedBar bar) {
    boolean isNow = now.contains(bar);
    List<PlayedBar> line = isNow ? now : next;
    int index = line.indexOf(bar);
    double split = hasRoomForTwo() ? getHeight() * NOW_SHARE : getHeight() - 2;
    double top = isNow ? 0 : split + kit.look().px(6);
    double bottom = isNow ? split : getHeight() - 2;
    double gap = kit.look().px(5);
    double width =
        (getWidth() - 2 - gap * (PlayedBar.BARS_IN_A_LINE - 1)) / PlayedBar.BARS_IN_A_LINE;
    double label = labelHeight(isNow);
    return new Rectangle2D.Double(
        1 + index * (width + gap), top + label, width, Math.max(10, bottom - top - label));
  }

  private Optional<PlayedBar> barAt(double atBeat) {
    return now.stream()
        .filter(bar -> atBeat >= bar.startBeat() && atBeat < bar.startBeat() + barBeats)
        .findFirst();
  }

  private Rectangle strip(double atBeat) {
    return barAt(atBeat)
        .map(
            bar -> {
              Rectangle2D cell = cell(bar);
              double x = cell.getX() + cell.getWidth() * (atBeat - bar.startBeat()) / barBeats;
              return new Rectangle(
                  (int) Math.floor(x) - END_OF_A_LOZENGE,
                  (int) cell.getY() - 4,
                  2 * END_OF_A_LOZENGE,
                  (int) cell.getHeight() + 8);
            })
        .orElse(new Rectangle());
  }

  // Painting.

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    AffineTransform scale = g.getTransform();
    BufferedImage image = ground(scale.getScaleX());
    Rectangle clip = g.getClipBounds();
    g.drawImage(image, 0, 0, getWidth(), getHeight(), null);
    for (List<PlayedBar> line : hasRoomForTwo() ? List.of(now, next) : List.of(now)) {
      for (PlayedBar bar : line) {
        Rectangle2D cell = cell(bar);
        if (clip == null || cell.intersects(clip)) {
          BarPainter.paintPlayed(g, cell, picture(bar), lozenges(bar, played), kit.palette());
        }
      }
    }
    barAt(beat)
        .ifPresent(
            bar -> {
              Rectangle2D cell = cell(bar);
              double x = cell.getX() + cell.getWidth() * (beat - bar.startBeat()) / barBeats;
              g.setColor(kit.palette().now());
              Letters.smooth(g);
              g.fill(
                  new Rectangle2D.Double(
                      x - PLAYHEAD_WIDTH / 2.0,
                      cell.getY() - 3,
                      PLAYHEAD_WIDTH,
                      cell.getHeight() + 6));
            });
    g.dispose();
  }

  private BufferedImage ground(double scale) {
    int width = (int) Math.ceil(getWidth() * scale);
    int height = (int) Math.ceil(getHeight() * scale);
    if (ground.isPresent()
        && ground.get().getWidth() == width
        && ground.get().getHeight() == height) {
      return ground.get();
    }
    BufferedImage image =
        getGraphicsConfiguration() == null
            ? new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB)
            : getGraphicsConfiguration().createCompatibleImage(width, height);
    Graphics2D g = image.createGraphics();
    g.scale(scale, scale);
    Letters.smooth(g);
    g.setColor(getBackground());
    g.fillRect(0, 0, getWidth(), getHeight());
    paintedStrength = ghostStrength;
    now.forEach(bar -> paintGround(g, bar, true));
    if (hasRoomForTwo()) {
      next.forEach(bar -> paintGround(g, bar, false));
    }
    g.dispose();
    ground = Optional.of(image);
    return image;
  }

  private void paintGround(Graphics2D g, PlayedBar bar, boolean isNow) {
    Rectangle2D cell = cell(bar);
    BarPainter.Picture picture = picture(bar);
    BarPainter.paintGround(g, cell, picture, kit.palette());
    BarPainter.paintGhost(
        g, cell, picture, ghosts.in(bar.place().bar()), ghostStrength, kit.palette());
    double label = labelHeight(isNow);
    double baseline = cell.getY() - label * 0.28;
    Font font = kit.look().bold(isNow ? 1.45 : 1.15);
    boolean turn = isUnexpected(bar);
    double used = 0;
    if (turn) {
      String words = kit.words().say("play.turn");
      g.setColor(kit.palette().quiet());
      used =
          kit.look().px(8)
              + Letters.right(
                  g, words, kit.font(0.85), cell.getMaxX() - 2, baseline, cell.getWidth() * 0.45);
    }
    g.setColor(kit.palette().ink());
    List<ChordSpan> spans = arrangement.chordsOf(bar.place());
    for (int i = 0; i < spans.size(); i++) {
      double x = cell.getX() + cell.getWidth() * spans.get(i).startBeat() / barBeats;
      double end =
          i + 1 < spans.size()
              ? cell.getX() + cell.getWidth() * spans.get(i + 1).startBeat() / barBeats
              : cell.getMaxX() - used;
      String name = naming.chord(spans.get(i).harmony());
      String shown = turn && i == 0 ? "! " + name : name;
      Letters.left(g, shown, font, x + 2, baseline, Math.max(20, end - x - 6));
    }
  }

  private BarPainter.Picture picture(PlayedBar bar) {
    List<BarPainter.Band> bands = new ArrayList<>();
    for (ChordSpan span : arrangement.chordsOf(bar.place())) {
      bands.add(
          new BarPainter.Band(
              span.startBeat(),
              span.endBeat(),
              span.harmony().pitchClasses(),
              span.harmony().guideTones()));
    }
    return new BarPainter.Picture(barBeats, low, high, bands, isUnexpected(bar));
  }

  private List<Lozenge> lozenges(PlayedBar bar, List<Lozenge> played) {
    double end = bar.startBeat() + barBeats;
    List<Lozenge> here = new ArrayList<>();
    for (Lozenge lozenge : played) {
      Note note = lozenge.note();
      if (note.onsetBeats() < end && note.endBeats() > bar.startBeat()) {
        here.add(
            new Lozenge(
                new Note(note.onsetBeats() - bar.startBeat(), note.durationBeats(), note.pitch()),
                lozenge.mark()));
      }
    }
    return here;
  }
}
