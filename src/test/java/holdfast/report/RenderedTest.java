package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The page in a real browser: Debian's chromium without a window, on a phone and on A4. The
 * pictures stay in {@code target/report} to be looked at.
 */
class RenderedTest {

  private static final Path PICTURES = Path.of("target", "report");

  @TempDir Path folder;

  @BeforeAll
  static void there_is_a_browser() {
    boolean found =
        List.of(System.getenv().getOrDefault("PATH", "").split(java.io.File.pathSeparator, -1))
            .stream()
            .anyMatch(path -> Files.isExecutable(Path.of(path, "chromium")));
    assumeTrue(found, "chromium is not installed: apt-get install chromium");
  }

  private Path page(boolean sung) throws IOException {
    Occasion occasion =
        Occasion.of(Optional.of("Mira"), Takes.DAY)
            .after(Takes.progress(sung))
            .keptAs("2026-11-25_10-15-00_paper-boats", List.of("take.mid", "solo.musicxml"));
    Path file = folder.resolve("report.html");
    Files.writeString(file, ReportPage.of(sung ? Takes.sung(2, -60) : Takes.demo(), occasion));
    return file;
  }

  private String chromium(Path page, int width, int height, String... more) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                "chromium",
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--user-data-dir=" + folder.resolve("browser"),
                "--hide-scrollbars",
                "--window-size=" + width + "," + height));
    command.addAll(List.of(more));
    command.add(page.toUri().toString());
    Path out = folder.resolve("out.txt");
    Process process =
        new ProcessBuilder(command)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .redirectOutput(out.toFile())
            .start();
    assertTrue(process.waitFor(90, TimeUnit.SECONDS), "the browser did not come back");
    return Files.readString(out, StandardCharsets.UTF_8);
  }

  /** A frame on a page of ours: the browser's own windows are never narrower than 500 px. */
  private static String frame(String name, int width, int height, String html) {
    return "<iframe id="
        + name
        + " style='border:0;float:left;height:"
        + height
        + "px;width:"
        + width
        + "px'></iframe><script>"
        + name
        + ".srcdoc=decodeURIComponent('"
        + java.net.URLEncoder.encode(html, StandardCharsets.UTF_8)
            .replace("+", "%20")
            .replace("'", "%27")
        + "')</script>";
  }

  /** Frames of the widths of screens hold the pages; a script of the test measures them. */
  @Test
  void nothing_runs_over_the_right_edge() throws Exception {
    StringBuilder frames = new StringBuilder("<!DOCTYPE html><body style='margin:0'>");
    List<Integer> widths = new ArrayList<>();
    for (boolean sung : List.of(false, true)) {
      for (int width : List.of(390, 794)) {
        String script =
            "<script>onload=()=>parent.document.body.setAttribute('data-wide"
                + widths.size()
                + "',document.documentElement.scrollWidth+' '"
                + "+document.documentElement.clientWidth)</script></body>";
        String html = Files.readString(page(sung), StandardCharsets.UTF_8);
        frames.append(frame("f" + widths.size(), width, 4000, html.replace("</body>", script)));
        widths.add(width);
      }
    }
    Path measured = folder.resolve("measured.html");
    Files.writeString(measured, frames);
    String dom = chromium(measured, 1300, 800, "--dump-dom", "--virtual-time-budget=8000");
    String body = dom.substring(dom.indexOf("<body"), dom.indexOf('>', dom.indexOf("<body")));
    for (int i = 0; i < widths.size(); i++) {
      Matcher wide = Pattern.compile("data-wide" + i + "=\"(\\d+) (\\d+)\"").matcher(body);
      assertTrue(wide.find(), body);
      assertEquals(widths.get(i), Integer.parseInt(wide.group(2)));
      assertTrue(
          Integer.parseInt(wide.group(1)) <= widths.get(i),
          wide.group(1) + " px wide on " + widths.get(i) + " px");
    }
  }

  @Test
  void the_page_can_be_seen_on_a_phone_and_on_a4() throws Exception {
    Files.createDirectories(PICTURES);
    String html = Files.readString(page(false), StandardCharsets.UTF_8);
    Path both = folder.resolve("both.html");
    Files.writeString(
        both,
        "<!DOCTYPE html><body style='margin:0'>"
            + frame("phone", 390, 1123, html)
            + frame("a4", 794, 1123, html));
    Path picture = folder.resolve("both.png");
    chromium(both, 1184, 1123, "--screenshot=" + picture, "--virtual-time-budget=8000");
    BufferedImage image = ImageIO.read(picture.toFile());
    seen(image.getSubimage(0, 0, 390, 844), "phone");
    seen(image.getSubimage(390, 0, 794, 1123), "a4");
  }

  private static void seen(BufferedImage image, String name) throws IOException {
    ImageIO.write(image, "png", PICTURES.resolve(name + ".png").toFile());
    Set<Integer> colours = new HashSet<>();
    for (int y = 0; y < image.getHeight(); y += 2) {
      for (int x = 0; x < image.getWidth(); x += 2) {
        colours.add(image.getRGB(x, y) | 0xFF000000);
      }
    }
    assertTrue(colours.size() > 30, "the picture is nearly empty: " + colours.size() + " colours");
    assertTrue(
        colours.contains(holdfast.report.picture.Mark.CARRIED.lineColour().getRGB()),
        "the idea's shape is not there on " + name);
  }

  @Test
  void it_prints_on_few_pages() throws Exception {
    Files.createDirectories(PICTURES);
    Path pdf = PICTURES.resolve("printed.pdf").toAbsolutePath();
    chromium(page(false), 794, 1123, "--no-pdf-header-footer", "--print-to-pdf=" + pdf);
    try (var printed = org.apache.pdfbox.Loader.loadPDF(pdf.toFile())) {
      assertEquals(2, printed.getNumberOfPages());
    }
  }
}
