package holdfast.report;

import holdfast.chart.ChartText;
import holdfast.chart.WrittenFor;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.report.picture.Palette;
import holdfast.report.picture.StaffPainter;
import holdfast.session.Counts;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.File;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;

/** Draws ideas in many keys, metres and clefs into one picture, to be looked at. */
final class StaffGallery {

  private StaffGallery() {}

  static JudgedTake take(String key, String metre, String changes, String idea) {
    var chart =
        ChartText.parse(
            "title: A\nkey: " + key + "\nmetre: " + metre + "\n\n" + changes + "\n", "gallery");
    List<Note> notes = IdeaNotation.parse(idea);
    Setting setting =
        Setting.of(chart, TempoMap.steady(60), Player.KEYBOARD, Optional.of(Motif.of(notes)));
    return new JudgedTake(
        setting, Optional.of(Motif.of(notes)), List.of(), Counts.of(List.of()), List.of());
  }

  public static void main(String[] args) throws Exception {
    List<JudgedTake> takes =
        List.of(
            take("F", "4/4", "| Fmaj7 | Gm7 C7 |", "C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5"),
            take(
                "Eb",
                "4/4",
                "| Ebmaj7 | Abm6 |",
                "G4/0.5 Bb4/0.5 Eb5/0.25 D5/0.25 Bb4/0.5 Cb5 Gb4/2"),
            take("A", "3/4", "| A | E7 |", "E4 | A4/0.5 B4/0.5 C#5 E5/0.5 D#5/0.5 C5/2"),
            take("C", "6/8", "| Cm7 | F7 |", "G4/1 Eb5/1 D5/1 C5/3"),
            take("Gm", "5/4", "| Gm7 | Cm7 |", "G3/1.5 Bb3/0.5 C4 D4/0.75 F4/0.25 D4/2"),
            take(
                "C",
                "4/4",
                "| C | F |",
                "C4/0.3333333333 E4/0.3333333333 G4/0.3333333334 C6/1 A3/2"),
            take("Db", "4/4", "| Db | Gb |", "Ab2/0.5 Bb2/0.5 Db3/0.25 Eb3/0.5 F3/0.25 Ab3/2.5"),
            take("E", "12/8", "| E | B7 |", "E4/2 G#4/1 B4/3 F##4/1 G#4/1 B4/1 E5/3"));
    int width = 1100;
    BufferedImage image = new BufferedImage(width, 1500, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(Palette.LIGHT.card());
    g.fillRect(0, 0, width, 1500);
    double y = 10;
    for (JudgedTake take : takes) {
      double x = 10;
      for (WrittenFor reader : List.of(WrittenFor.CONCERT, WrittenFor.E_FLAT)) {
        IdeaStaff staff = IdeaStaff.of(take, reader, Optional.empty()).orElseThrow();
        StaffPainter painter = new StaffPainter(staff.staff());
        painter.paint(g, x, y, 10, Palette.LIGHT);
        x += 540;
      }
      y += 180;
    }
    ImageIO.write(image, "png", new File(args[0]));
  }
}
