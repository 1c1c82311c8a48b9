package holdfast.chart;

import holdfast.mistake.Quoted;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the head lines of a chart, each a name, a colon and a value, in any order. */
final class HeadReader {

  /** The names a head line can have. */
  enum Name {
    TITLE("title"),
    ABOUT("about"),
    KEY("key"),
    METRE("metre"),
    TEMPO("tempo"),
    FEEL("feel"),
    PICKUP("pickup"),
    WRITTEN_FOR("written for");

    private final String text;

    Name(String text) {
      this.text = text;
    }

    String text() {
      return text;
    }

    static Optional<Name> of(String typed) {
      String plain = typed.toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
      String usual =
          switch (plain) {
            case "meter", "time" -> METRE.text;
            case "pick-up" -> PICKUP.text;
            default -> plain;
          };
      return Arrays.stream(values()).filter(name -> name.text.equals(usual)).findFirst();
    }
  }

  private record Value(TextLine line, TextLine.HeadLine head) {
    String said() {
      return "“" + Quoted.shortly(head.value()) + "”";
    }

    ChartException wrong(String wrong, String mend) {
      return line.wrong(head.valueAt(), wrong, mend);
    }
  }

  private static final Pattern METRE = Pattern.compile("(\\d{1,2})\\s*/\\s*(\\d{1,2})");
  private static final Pattern BEATS_A_MINUTE =
      Pattern.compile("(\\d{1,3}(?:\\.\\d+)?)(?:\\s*bpm)?");
  private static final Pattern NOTES_A_MINUTE =
      Pattern.compile("(dotted )?\\s*(whole|half|quarter|eighth)\\s*=\\s*(\\d{1,3}(?:\\.\\d+)?)");
  private static final Pattern BEATS = Pattern.compile("(\\d{1,2}(?:\\.\\d+)?)(?:\\s*beats?)?");

  private final String source;
  private final Map<Name, Value> values = new EnumMap<>(Name.class);
  private final List<String> remarks = new ArrayList<>();

  HeadReader(String source) {
    this.source = source;
  }

  void addRemark(String remark) {
    remarks.add(remark);
  }

  void read(TextLine line, TextLine.HeadLine head) {
    Name name =
        Name.of(head.name())
            .orElseThrow(
                () ->
                    line.wrong(
                        0,
                        "a chart's head has no “" + Quoted.shortly(head.name()) + "”",
                        "use title, about, key, metre, tempo, feel, pickup or written for,"
                            + " or begin the line with -- as a remark"));
    if (head.value().isEmpty()) {
      throw line.wrong(0, "“" + name.text() + ":” says nothing", "give it a value or drop it");
    }
    Value before = values.putIfAbsent(name, new Value(line, head));
    if (before != null) {
      throw line.wrong(
          0,
          "“" + name.text() + ":” stands twice, first in line " + before.line().number(),
          "keep one of them");
    }
  }

  Heading heading() {
    if (!values.containsKey(Name.TITLE)) {
      throw new ChartException(
          source, "it has no title", "write one on top, as in title: Lantern Turn");
    }
    Metre metre = value(Name.METRE).map(HeadReader::metre).orElse(Metre.COMMON);
    return new Heading(
        words(Name.TITLE).orElseThrow(),
        words(Name.ABOUT),
        value(Name.KEY).map(HeadReader::key),
        metre,
        value(Name.TEMPO).map(v -> tempo(v, metre)).orElse(Heading.USUAL_TEMPO),
        words(Name.FEEL).orElse(Heading.USUAL_FEEL),
        value(Name.PICKUP).map(v -> pickup(v, metre)).orElse(0.0),
        value(Name.WRITTEN_FOR).map(HeadReader::writtenFor).orElse(WrittenFor.CONCERT),
        remarks);
  }

  private Optional<Value> value(Name name) {
    return Optional.ofNullable(values.get(name));
  }

  private Optional<String> words(Name name) {
    return value(name).map(v -> v.head().value());
  }

  private static Key key(Value value) {
    try {
      return Key.parse(value.head().value());
    } catch (IllegalArgumentException e) {
      throw value.wrong(
          value.said() + " is no key I know", "write it as C, Eb, F#m or Dm (Dorian)");
    }
  }

  private static Metre metre(Value value) {
    Matcher matcher = METRE.matcher(value.head().value());
    if (!matcher.matches()) {
      throw value.wrong(value.said() + " is no metre", "write it as 4/4, 3/4, 6/8 or 5/4");
    }
    try {
      return new Metre(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)));
    } catch (IllegalArgumentException e) {
      throw value.wrong(e.getMessage(), "write it as 4/4, 3/4, 6/8 or 5/4");
    }
  }

  private static double tempo(Value value, Metre metre) {
    String text = value.head().value().toLowerCase(Locale.ROOT);
    Matcher beats = BEATS_A_MINUTE.matcher(text);
    Matcher notes = NOTES_A_MINUTE.matcher(text);
    double tempo;
    if (beats.matches()) {
      tempo = Double.parseDouble(beats.group(1));
    } else if (notes.matches()) {
      double beatsLong = wholes(notes.group(2)) * metre.unit() * (notes.group(1) == null ? 1 : 1.5);
      tempo = Double.parseDouble(notes.group(3)) * beatsLong;
    } else {
      throw value.wrong(
          value.said() + " is no tempo",
          "write beats a minute, as in 60, or a note value, as in dotted quarter = 50");
    }
    if (!(tempo >= Heading.SLOWEST && tempo <= Heading.FASTEST)) {
      throw value.wrong(
          "a tempo of " + Decimal.text(tempo) + " beats a minute is out of reach",
          "choose "
              + Decimal.text(Heading.SLOWEST)
              + " to "
              + Decimal.text(Heading.FASTEST)
              + ", a beat being one of the metre's lower number");
    }
    return tempo;
  }

  /** A note value in whole notes. */
  private static double wholes(String name) {
    return switch (name) {
      case "whole" -> 1;
      case "half" -> 0.5;
      case "quarter" -> 0.25;
      default -> 0.125;
    };
  }

  private static double pickup(Value value, Metre metre) {
    Matcher matcher = BEATS.matcher(value.head().value().toLowerCase(Locale.ROOT));
    double beats = matcher.matches() ? Double.parseDouble(matcher.group(1)) : 0;
    if (!(beats > 0 && beats < metre.beats())) {
      throw value.wrong(
          value.said() + " is no pick-up",
          "write how many beats it has, more than 0 and fewer than " + metre.beats());
    }
    return beats;
  }

  private static WrittenFor writtenFor(Value value) {
    return NoteName.read(value.head().value())
        .map(WrittenFor::new)
        .orElseThrow(
            () ->
                value.wrong(
                    value.said() + " is no instrument's pitch",
                    "write Bb, Eb or F, or drop the line for concert pitch"));
  }
}
