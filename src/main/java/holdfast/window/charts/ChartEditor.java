package holdfast.window.charts;

import holdfast.backing.Performance;
import holdfast.chart.Chart;
import holdfast.chart.ChartException;
import holdfast.chart.ChartText;
import holdfast.mistake.UserMistake;
import holdfast.window.Aloud;
import holdfast.window.Desk;
import holdfast.window.part.Keys;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import holdfast.window.play.TakeRequest;
import java.awt.BasicStroke;
import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.Timer;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import javax.swing.text.BadLocationException;
import javax.swing.text.DefaultHighlighter.DefaultHighlightPainter;
import javax.swing.text.JTextComponent;
import javax.swing.text.Position;
import javax.swing.text.View;
import javax.swing.undo.UndoManager;

/** A chart as text, with its sheet beside it and every mistake underlined where it is. */
final class ChartEditor {

  /** A mistake is told when the writer rests so long. */
  private static final int REST_MILLIS = 250;

  /** Takes the chart and its text when the writer is done. */
  @FunctionalInterface
  interface Keeping {
    void keep(Chart chart, String text) throws IOException;
  }

  private final Desk desk;
  private final Kit kit;
  private final Keeping keeping;
  private final JTextArea text;
  private final Prose mistake;
  private final ChartSheet sheet;
  private final JButton keep;
  private final JButton listen;
  private final JPanel panel = new JPanel(new BorderLayout());
  private final Aloud aloud = new Aloud();
  private final Timer rest;
  private Optional<Chart> chart = Optional.empty();

  ChartEditor(Desk desk, String start, Keeping keeping, Runnable cancel) {
    this.desk = desk;
    this.kit = desk.kit();
    this.keeping = keeping;
    this.text = new JTextArea(start);
    this.mistake = kit.prose("");
    this.sheet = new ChartSheet(kit, desk.preferences().noteNames());
    this.keep = kit.primary("editor.keep", this::keep);
    this.listen = kit.button("editor.listen", this::listen);
    this.rest = new Timer(REST_MILLIS, event -> read());
    rest.setRepeats(false);
    text.setFont(
        new Font(Font.MONOSPACED, Font.PLAIN, Math.round(kit.look().usual().getSize2D() * 1.1f)));
    text.setName("editor.text");
    text.getAccessibleContext().setAccessibleName(kit.words().say("editor.title"));
    text.setMargin(new java.awt.Insets(10, 10, 10, 10));
    mistake.setName("editor.mistake");
    UndoManager undo = new UndoManager();
    text.getDocument().addUndoableEditListener(undo);
    Keys.bind(text, "ctrl Z", () -> undo(undo, true));
    Keys.bind(text, "ctrl Y", () -> undo(undo, false));
    text.getDocument()
        .addDocumentListener(
            new DocumentListener() {
              @Override
              public void insertUpdate(DocumentEvent event) {
                rest.restart();
              }

              @Override
              public void removeUpdate(DocumentEvent event) {
                rest.restart();
              }

              @Override
              public void changedUpdate(DocumentEvent event) {
                rest.restart();
              }
            });
    int margin = kit.look().px(18);
    JPanel middle = new JPanel(new java.awt.GridLayout(1, 2, kit.look().px(14), 0));
    middle.setOpaque(false);
    middle.add(new JScrollPane(text));
    Kit.WidthTracking right = new Kit.WidthTracking(kit.look().px(16));
    right.setLayout(new holdfast.window.part.Column(kit.look().px(8)));
    right.setBackground(kit.palette().paper());
    right.add(kit.card(6, sheet));
    right.add(kit.quiet(kit.words().say("editor.signs")));
    middle.add(kit.scroll(right));
    JPanel below =
        kit.column(
            8, mistake, kit.row(8, keep, listen, kit.button("editor.cancel", () -> leave(cancel))));
    panel.setBackground(kit.palette().paper());
    ((BorderLayout) panel.getLayout()).setVgap(kit.look().px(10));
    panel.setBorder(BorderFactory.createEmptyBorder(margin / 2, margin, margin, margin));
    panel.add(kit.title("editor.title"), BorderLayout.NORTH);
    panel.add(middle, BorderLayout.CENTER);
    panel.add(below, BorderLayout.SOUTH);
    read();
  }

  JComponent component() {
    return panel;
  }

  void focus() {
    text.requestFocusInWindow();
    text.setCaretPosition(0);
  }

  private static void undo(UndoManager undo, boolean back) {
    if (back && undo.canUndo()) {
      undo.undo();
    } else if (!back && undo.canRedo()) {
      undo.redo();
    }
  }

  private void read() {
    text.getHighlighter().removeAllHighlights();
    try {
      Chart read = ChartText.parse(text.getText(), kit.words().say("editor.source"));
      chart = Optional.of(read);
      sheet.show(read);
      mistake.setForeground(kit.palette().quiet());
      mistake.setText(kit.words().say("editor.fine", read.formAsWritten().bars().size()));
    } catch (ChartException e) {
      chart = Optional.empty();
      mistake.setForeground(kit.palette().ink());
      mistake.setText("! " + place(e) + desk.said(e.wrong() + "; " + e.mend() + "."));
      underline(e);
    }
    keep.setEnabled(chart.isPresent());
    listen.setEnabled(chart.isPresent());
    panel.revalidate();
  }

  private String place(ChartException e) {
    return e.line() == 0
        ? ""
        : kit.words().say("editor.place", e.line(), Math.max(1, e.column())) + " ";
  }

  private void underline(ChartException e) {
    try {
      int line = Math.max(0, Math.min(text.getLineCount(), e.line()) - 1);
      int start = text.getLineStartOffset(line);
      int end = text.getLineEndOffset(line);
      int from = Math.min(end, start + Math.max(0, e.column() - 1));
      String all = text.getText();
      int to = from;
      while (to < all.length() && !Character.isWhitespace(all.charAt(to)) && to < end) {
        to++;
      }
      text.getHighlighter()
          .addHighlight(
              from, Math.max(to, Math.min(all.length(), from + 1)), new Wave(kit.palette().now()));
    } catch (BadLocationException gone) {
      // The text is shorter by now; the next reading underlines anew.
      return;
    }
  }

  private void keep() {
    chart.ifPresent(
        read -> {
          try {
            aloud.stop();
            keeping.keep(read, text.getText());
          } catch (IOException | UserMistake e) {
            desk.tell(e.getMessage());
          }
        });
  }

  private void listen() {
    if (aloud.isPlaying()) {
      aloud.stop();
      return;
    }
    chart.ifPresent(
        read -> {
          Performance once = TakeRequest.of(read.sounding(), 1, TakeRequest.Who.DEMO).performance();
          aloud.play(once, desk.devices(), desk::tell);
        });
  }

  private void leave(Runnable cancel) {
    aloud.stop();
    cancel.run();
  }

  /** A wavy line under the words. */
  private static final class Wave extends DefaultHighlightPainter {

    Wave(Color colour) {
      super(colour);
    }

    @Override
    public Shape paintLayer(
        Graphics graphics, int from, int to, Shape bounds, JTextComponent component, View view) {
      try {
        Rectangle place =
            view.modelToView(from, Position.Bias.Forward, to, Position.Bias.Backward, bounds)
                .getBounds();
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(
            java.awt.RenderingHints.KEY_ANTIALIASING, java.awt.RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(getColor());
        g.setStroke(new BasicStroke(1.8f));
        Path2D wave = new Path2D.Double();
        double y = place.getMaxY() - 2;
        wave.moveTo(place.x, y);
        for (double x = place.x; x < place.getMaxX(); x += 4) {
          wave.lineTo(x + 2, y - 2);
          wave.lineTo(x + 4, y);
        }
        g.draw(wave);
        g.dispose();
        return new Rectangle2D.Double(place.x, place.y, place.width, place.height);
      } catch (BadLocationException e) {
        return bounds;
      }
    }
  }
}
