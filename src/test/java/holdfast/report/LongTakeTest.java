package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.session.JudgedTake;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** Half an hour, which is more than anybody plays in one go. */
class LongTakeTest {

  private static final long MEGABYTE = 1 << 20;

  @Test
  void a_report_of_thirty_minutes_is_small_and_takes_little_memory() {
    JudgedTake take = Takes.long_(30);
    assertTrue(take.phrases().size() > 300, "half an hour has many phrases");
    com.sun.management.ThreadMXBean threads =
        (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    String page = ReportPage.of(take, Occasion.UNKNOWN);
    long made = threads.getCurrentThreadAllocatedBytes() - before;

    int bytes = page.getBytes(StandardCharsets.UTF_8).length;
    assertTrue(bytes < 8 * MEGABYTE, bytes + " bytes");
    // All that was ever allocated on the way, collected or not: it bounds what is held at once.
    assertTrue(made < 600 * MEGABYTE, made / MEGABYTE + " MB were allocated");
  }

  /** What a teacher reads in a minute stands on the first page; the long sheet comes last. */
  @Test
  void on_paper_the_sheet_of_thirty_minutes_stands_behind_what_matters() throws Exception {
    byte[] paper = ReportPdf.of(Takes.long_(30), Occasion.UNKNOWN);
    assertTrue(paper.length < 8 * MEGABYTE, paper.length + " bytes");
    try (PDDocument pdf = Loader.loadPDF(paper)) {
      PDFTextStripper text = new PDFTextStripper();
      String all = text.getText(pdf);
      assertTrue(
          all.indexOf("How this was judged") < all.indexOf("The form, chorus by chorus"), all);
      text.setEndPage(1);
      assertTrue(text.getText(pdf).contains("Next practice"), "the first page says what to do");
    }
  }
}
