package holdfast.window.play;

import holdfast.harmony.Fit;
import holdfast.session.Counts;
import holdfast.session.JudgedPhrase;
import holdfast.window.part.Kit;
import holdfast.window.part.Letters;
import holdfast.window.part.Picture;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;

/** What it comes to so far: counts, and no grade. */
final class SoFar extends Picture {

  private static final long serialVersionUID = 1L;

  private record Row(String name, String value) {}

  private final transient Kit kit;
  private transient List<Row> rows = List.of();

  SoFar(Kit kit) {
    this.kit = kit;
    setBackground(kit.palette().paper());
    show(List.of());
  }

  /** Counts these phrases. */
  void show(List<JudgedPhrase> phrases) {
    Counts counts = Counts.of(phrases);
    List<Row> told = new ArrayList<>();
    told.add(
        new Row(
            kit.words().say("sofar.carried"),
            kit.words().say("sofar.of", counts.carried(), counts.phrases())));
    told.add(new Row(kit.words().say("sofar.run"), Integer.toString(counts.longestRun())));
    told.add(
        new Row(
            kit.words().say("sofar.fit"),
            counts.choruses().stream()
                .reduce((first, second) -> second)
                .flatMap(Counts.Chorus::fit)
                .map(Fit::word)
                .map(word -> kit.words().of("fit", word))
                .orElse("–")));
    rows = told;
    repaint();
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(kit.look().px(220), (int) (kit.look().px(26) + rowHeight() * 4.4));
  }

  private double rowHeight() {
    return getFontMetrics(kit.font(1)).getHeight() * 1.25;
  }

  @Override
  protected String inWords() {
    StringBuilder text = new StringBuilder(kit.words().say("sofar.title"));
    rows.forEach(row -> text.append(". ").append(row.name()).append(": ").append(row.value()));
    return text.toString();
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = kit.card(this, graphics);
    double inside = kit.look().px(13);
    double room = getWidth() - 2 * inside;
    double y = inside + rowHeight() * 0.7;
    g.setColor(kit.palette().ink());
    Letters.left(g, kit.words().say("sofar.title"), kit.look().bold(1.1), inside, y, room);
    for (Row row : rows) {
      y += rowHeight();
      g.setColor(kit.palette().ink());
      int wide =
          Letters.right(g, row.value(), kit.look().bold(1), getWidth() - inside, y, room * 0.6);
      g.setColor(kit.palette().quiet());
      Letters.left(g, row.name(), kit.font(0.95), inside, y, room - Math.min(wide, room * 0.6) - 8);
    }
    g.dispose();
  }
}
