package holdfast.chart;

import holdfast.mistake.Quoted;
import holdfast.time.Metre;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a MusicXML score into a chart: the first part that has chord symbols. */
final class MusicXmlReader {

  private static final int BARS_IN_A_ROW = 4;

  private final byte[] xml;
  private final String source;
  private final List<String> notes = new ArrayList<>();
  private Optional<String> title = Optional.empty();
  private Optional<String> about = Optional.empty();
  private Optional<String> feel = Optional.empty();
  private Optional<Double> quartersPerMinute = Optional.empty();

  MusicXmlReader(byte[] xml, String source) {
    this.xml = xml;
    this.source = source;
  }

  MusicXmlChart.Reading read() {
    try (MusicXmlInput input = new MusicXmlInput(xml, source)) {
      String root = input.enterRoot();
      if (!root.equals("score-partwise")) {
        throw new ChartException(
            source,
            root.equals("score-timewise")
                ? "its measures are ordered by time"
                : "it is XML, but no score (it begins with “" + Quoted.shortly(root) + "”)",
            "export it as MusicXML, score-partwise");
      }
      while (input.nextInside()) {
        if (input.name().equals("part")) {
          Optional<MusicXmlPart> part = readPart(input);
          if (part.isPresent()) {
            return new MusicXmlChart.Reading(chart(part.get()), notes);
          }
        } else {
          readHead(input.take());
        }
      }
    }
    throw new ChartException(
        source, "it holds no chord symbols", "add them in your notation program and export again");
  }

  private void readHead(XmlNode node) {
    switch (node.name()) {
      case "work" -> title = node.textAt("work-title").or(() -> title);
      case "movement-title" ->
          title = title.or(() -> Optional.of(node.text()).filter(text -> !text.isEmpty()));
      case "identification" ->
          node.first("miscellaneous").stream()
              .flatMap(fields -> fields.all("miscellaneous-field"))
              .forEach(
                  field -> {
                    Optional<String> words = Optional.of(field.text()).filter(t -> !t.isEmpty());
                    if (field.says("name", "about")) {
                      about = words;
                    } else if (field.says("name", "feel")) {
                      feel = words;
                    }
                  });
      default -> {
        // Credits, defaults and the part list say nothing that a chart keeps.
      }
    }
  }

  /** The part, where it has chords; a tempo is kept even from a part that has none. */
  private Optional<MusicXmlPart> readPart(MusicXmlInput input) {
    List<String> partNotes = new ArrayList<>();
    MusicXmlPart part = new MusicXmlPart(source, partNotes);
    while (input.nextInside()) {
      XmlNode node = input.take();
      if (node.name().equals("measure")) {
        part.add(node);
        if (part.measures().size() > PlayedOut.MOST_BARS) {
          throw new ChartException(
              source, "it has more than " + PlayedOut.MOST_BARS + " bars", "give a shorter score");
        }
      }
    }
    quartersPerMinute = quartersPerMinute.or(part.setting()::quartersPerMinute);
    if (!part.hasChords()) {
      return Optional.empty();
    }
    notes.addAll(partNotes);
    return Optional.of(part);
  }

  private Chart chart(MusicXmlPart part) {
    List<MusicXmlMeasure> measures = part.measures();
    Metre metre = part.setting().metre().orElse(Metre.COMMON);
    if (part.setting().metre().isEmpty()) {
      notes.add("the score names no metre and is read as 4/4");
    }
    MusicXmlBars bars = new MusicXmlBars(source, measures, metre);
    Heading heading =
        new Heading(
            title.map(MusicXmlReader::oneLine).orElseGet(this::fileName),
            about.map(MusicXmlReader::oneLine),
            part.setting().key(),
            metre,
            tempo(metre),
            feel.map(MusicXmlReader::oneLine).orElse(Heading.USUAL_FEEL),
            bars.pickupBeats(),
            part.setting().writtenFor(),
            List.of());
    List<WrittenBar> written = bars.written();
    try {
      return new Chart(heading, lines(bars, written));
    } catch (UnplayableBarException bar) {
      throw new ChartException(
          source,
          "bar " + bars.numberOf(bar.index()) + ": " + bar.wrong(),
          "mend it in your notation program");
    }
  }

  private List<ChartLine> lines(MusicXmlBars bars, List<WrittenBar> written) {
    List<ChartLine> lines = new ArrayList<>();
    List<WrittenBar> row = new ArrayList<>();
    for (int i = 0; i < written.size(); i++) {
      Optional<String> section =
          bars.sectionAt(i).map(name -> oneLine(name.replace(']', ')'))).filter(s -> !s.isEmpty());
      boolean isFull = !bars.hasRows() && row.size() == BARS_IN_A_ROW;
      if (section.isPresent() || bars.startsRow(i) || isFull) {
        endRow(lines, row);
      }
      section.ifPresent(name -> lines.add(new ChartLine.SectionName(name, Optional.empty())));
      row.add(written.get(i));
    }
    endRow(lines, row);
    return lines;
  }

  private static void endRow(List<ChartLine> lines, List<WrittenBar> row) {
    if (!row.isEmpty()) {
      lines.add(new ChartLine.Row(row, Optional.empty()));
      row.clear();
    }
  }

  private double tempo(Metre metre) {
    double beats = quartersPerMinute.map(q -> q / metre.quartersPerBeat()).orElse(0.0);
    if (beats == 0) {
      notes.add("the score names no tempo and is read at " + Decimal.text(Heading.USUAL_TEMPO));
      return Heading.USUAL_TEMPO;
    }
    if (!(beats >= Heading.SLOWEST && beats <= Heading.FASTEST)) {
      notes.add("the tempo of " + Decimal.text(beats) + " beats a minute is out of reach");
      return Math.min(Heading.FASTEST, Math.max(Heading.SLOWEST, beats));
    }
    return beats;
  }

  private String fileName() {
    Path name = Path.of(source).getFileName();
    String bare = (name == null ? source : name.toString()).replaceFirst("\\.[^.]*$", "").strip();
    return bare.isEmpty() ? "Untitled" : oneLine(bare);
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ").strip();
  }
}
