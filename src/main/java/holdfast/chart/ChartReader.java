package holdfast.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a chart's text line by line: head lines first, then sections, rows and remarks. */
final class ChartReader {

  /** Longer than any chart, in characters; what is longer is no chart. */
  static final int LONGEST_TEXT = 1 << 20;

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private final String source;
  private final String[] texts;
  private final HeadReader head;
  private final List<ChartLine> body = new ArrayList<>();
  private final List<String> remarksInHead = new ArrayList<>();
  private Optional<RowReader> rows = Optional.empty();

  ChartReader(String text, String source) {
    this.source = source;
    if (text.length() > LONGEST_TEXT) {
      throw new ChartException(
          source, "it is too long for a chart", "give a chart of at most a million characters");
    }
    String plain = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    this.texts = plain.split("\r\n|\r|\n", -1);
    this.head = new HeadReader(source);
  }

  Chart read() {
    for (int i = 0; i < texts.length; i++) {
      read(new TextLine(source, i + 1, texts[i]));
    }
    Heading heading = head.heading();
    RowReader reader = rowReader();
    reader.requireNothingPending();
    try {
      return new Chart(heading, body);
    } catch (UnplayableBarException bar) {
      throw reader.told(bar);
    }
  }

  private void read(TextLine line) {
    if (line.isBlank()) {
      return;
    }
    Optional<String> remark = line.wholeRemark();
    if (remark.isPresent()) {
      readRemark(remark.get());
      return;
    }
    Optional<TextLine.HeadLine> headLine = line.asHeadLine();
    if (headLine.isPresent()) {
      if (rows.isPresent()) {
        throw line.wrong(
            0,
            "“" + headLine.get().name() + ":” belongs to the head",
            "move it above the first bar; a chart keeps one key, metre and tempo");
      }
      remarksInHead.forEach(head::addRemark);
      remarksInHead.clear();
      head.read(line, headLine.get());
      return;
    }
    RowReader reader = rowReader();
    int from = 0;
    Optional<TextLine.Boxed> section = line.boxedName();
    if (section.isPresent()) {
      from = section.get().end();
      boolean alone = line.restIsBlankOrRemark(from);
      body.add(
          new ChartLine.SectionName(
              section.get().name(), alone ? line.remarkFrom(from) : Optional.empty()));
      if (alone) {
        return;
      }
    }
    body.add(reader.read(line, from));
  }

  private void readRemark(String remark) {
    if (rows.isPresent()) {
      body.add(new ChartLine.RemarkLine(remark));
    } else {
      remarksInHead.add(remark);
    }
  }

  /** The reader of rows; the head is over where it is first asked for. */
  private RowReader rowReader() {
    if (rows.isEmpty()) {
      Heading heading = head.heading();
      rows = Optional.of(new RowReader(source, heading.metre().beats(), heading.pickupBeats()));
      remarksInHead.forEach(remark -> body.add(new ChartLine.RemarkLine(remark)));
    }
    return rows.get();
  }
}
