package holdfast.chart;

import holdfast.theory.Key;
import holdfast.time.Metre;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What holds for a whole part: its metre, its key, its tempo, the instrument it is written for. */
final class MusicXmlSetting {

  private final String source;
  private final List<String> notes;
  private Optional<Metre> metre = Optional.empty();
  private Optional<XmlNode> keyNode = Optional.empty();
  private Optional<Key> key = Optional.empty();
  private Optional<Double> quartersPerMinute = Optional.empty();
  private WrittenFor writtenFor = WrittenFor.CONCERT;

  MusicXmlSetting(String source, List<String> notes) {
    this.source = source;
    this.notes = notes;
  }

  Optional<Metre> metre() {
    return metre;
  }

  Optional<Key> key() {
    return key;
  }

  /** The first tempo of the part, in quarter notes a minute. */
  Optional<Double> quartersPerMinute() {
    return quartersPerMinute;
  }

  WrittenFor writtenFor() {
    return writtenFor;
  }

  void takeTime(XmlNode time, String place) {
    int beats = 0;
    // A metre such as 3+2 over 8 counts its beats together.
    for (String group : time.textAt("beats").orElse("").split("\\+", -1)) {
      beats += XmlNode.whole(group.strip());
    }
    Metre read;
    try {
      read = new Metre(beats, XmlNode.whole(time.textAt("beat-type").orElse("")));
    } catch (IllegalArgumentException e) {
      throw new ChartException(
          source, place + ": it has no metre that can be counted", "give it one such as 4/4");
    }
    if (metre.isPresent() && !metre.get().equals(read)) {
      throw new ChartException(
          source,
          place + ": the metre changes from " + metre.get().text() + " to " + read.text(),
          "a chart keeps one metre; cut the score in two");
    }
    metre = Optional.of(read);
  }

  void takeKey(XmlNode written, String place) {
    if (keyNode.isPresent()) {
      if (!keyNode.get().equals(written)) {
        notes.add(place + ": the key changes; the chart keeps the first one");
      }
      return;
    }
    keyNode = Optional.of(written);
    Optional<Double> fifths = written.numberAt("fifths");
    String mode = written.textAt("mode").orElse("").toLowerCase(Locale.ROOT);
    if (fifths.isEmpty() || mode.equals("none")) {
      notes.add(place + ": the key signature names no key; the chart has none");
      return;
    }
    if (mode.isEmpty()) {
      notes.add(place + ": the key signature names no mode and is read as major");
    }
    key = MusicXmlKey.read((int) Math.rint(fifths.get()), mode);
    if (key.isEmpty()) {
      notes.add(place + ": the key signature is no usual one; the chart has no key");
    }
  }

  void takeTranspose(XmlNode transpose) {
    int chromatic = transpose.numberAt("chromatic").map(n -> (int) Math.rint(n)).orElse(0);
    Optional<Integer> diatonic =
        transpose.numberAt("diatonic").map(steps -> (int) Math.rint(steps));
    writtenFor = new WrittenFor(MusicXmlKey.soundingC(chromatic, diatonic));
  }

  void takeTempo(double quarters) {
    if (quartersPerMinute.isEmpty()) {
      quartersPerMinute = Optional.of(quarters);
    }
  }
}
