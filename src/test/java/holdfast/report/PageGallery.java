package holdfast.report;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Writes reports to be looked at. */
final class PageGallery {
  private PageGallery() {}

  public static void main(String[] args) throws Exception {
    Path to = Path.of(args[0]);
    Files.createDirectories(to);
    Occasion mira =
        Occasion.of(Optional.of("Mira"), Takes.DAY)
            .through("Stage keyboard 1")
            .keptAs(
                "2026-11-25_10-15-00_paper-boats",
                List.of(
                    "take.mid", "solo.musicxml", "phrases.csv", "judgement.json", "report.pdf"));
    Files.writeString(
        to.resolve("demo.html"), ReportPage.of(Takes.demo(), mira.after(Takes.progress(false))));
    Files.writeString(
        to.resolve("sung.html"),
        ReportPage.of(
            Takes.sung(2, -60), mira.after(Takes.progress(true)).by(Optional.of("Tomás"))));
    Files.writeString(to.resolve("long.html"), ReportPage.of(Takes.long_(30), mira));

    byte[] pdf = ReportPdf.of(Takes.demo(), mira.after(Takes.progress(false)));
    Files.write(to.resolve("demo.pdf"), pdf);
    pages(pdf, to, "demo");
    pages(ReportPdf.of(Takes.sung(3, -60), mira.after(Takes.progress(true))), to, "sung");
    Files.writeString(
        to.resolve("solo.musicxml"),
        holdfast.chart.MusicXmlMelody.write(SoloSheet.of(Takes.demo())));
    Files.writeString(to.resolve("phrases.csv"), PhrasesCsv.of(Takes.demo()));
  }

  private static void pages(byte[] pdf, Path to, String name) throws Exception {
    try (var doc = org.apache.pdfbox.Loader.loadPDF(pdf)) {
      System.out.println(name + " pages " + doc.getNumberOfPages() + ", bytes " + pdf.length);
      var renderer = new org.apache.pdfbox.rendering.PDFRenderer(doc);
      for (int i = 0; i < doc.getNumberOfPages(); i++) {
        javax.imageio.ImageIO.write(
            renderer.renderImageWithDPI(i, 90),
            "png",
            to.resolve(name + "-" + i + ".png").toFile());
      }
    }
  }
}
