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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The page in a real browser: Debian's chromium without a window, on a phone and on A4. The
 * pictures stay in {@code target/report} to be looked at.
 */
class RenderedTest {

  private static final Path PICTURES = Path.of("target", "report");
  private static final Pattern MEASURED = Pattern.compile("data-wide=\"(\\d+) (\\d+)\"");

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

  /** A frame of the width of the screen holds the page; a script of the test measures it. */
  @ParameterizedTest
  @CsvSource({"390,false", "390,true", "794,false", "794,true"})
  void nothing_runs_over_the_right_edge(int width, boolean sung) throws Exception {
    String html = Files.readString(page(sung), StandardCharsets.UTF_8);
    String script =
        "<script>document.documentElement.setAttribute('data-wide',"
            + "document.documentElement.scrollWidth+' '+document.documentElement.clientWidth)"
            + "</script></body>";
    // The browser's own windows are never narrower than 500 px; a frame can be.
    Path measured = folder.resolve("measured.html");
    Files.writeString(
        measured,
        "<!DOCTYPE html><body style='margin:0'><iframe id=f style='border:0;height:4000px;width:"
            + width
            + "px'></iframe><script>f.srcdoc=decodeURIComponent('"
            + java.net.URLEncoder.encode(html.replace("</body>", script), StandardCharsets.UTF_8)
                .replace("+", "%20")
                .replace("'", "%27")
            + "');f.onload=()=>document.body.setAttribute('data-wide',"
            + "f.contentDocument.documentElement.getAttribute('data-wide'))</script>");
    String dom = chromium(measured, 1000, 800, "--dump-dom", "--virtual-time-budget=8000");
    Matcher wide = MEASURED.matcher(dom.substring(0, Math.min(dom.length(), 2000)));
    assertTrue(wide.find(), () -> dom.substring(0, Math.min(dom.length(), 300)));
    assertEquals(width, Integer.parseInt(wide.group(2)));
    assertTrue(
        Integer.parseInt(wide.group(1)) <= width, wide.group(1) + " px wide on " + width + " px");
  }

  @ParameterizedTest
  @CsvSource({"phone,390,844", "a4,794,1123"})
  void the_page_can_be_seen(String name, int width, int height) throws Exception {
    Files.createDirectories(PICTURES);
    Path picture = PICTURES.resolve(name + ".png").toAbsolutePath();
    chromium(page(false), width, height, "--screenshot=" + picture);
    BufferedImage image = ImageIO.read(picture.toFile());
    Set<Integer> colours = new HashSet<>();
    for (int y = 0; y < image.getHeight(); y += 2) {
      for (int x = 0; x < image.getWidth(); x += 2) {
        colours.add(image.getRGB(x, y));
      }
    }
    assertTrue(colours.size() > 30, "the picture is nearly empty: " + colours.size() + " colours");
    assertTrue(
        colours.contains(holdfast.report.picture.Mark.CARRIED.lineColour().getRGB()),
        "the idea's shape is not there");
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
