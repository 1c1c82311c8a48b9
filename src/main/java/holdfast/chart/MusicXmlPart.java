package holdfast.chart;

import holdfast.mistake.Quoted;
import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads the measures of one MusicXML part, one after the other. */
final class MusicXmlPart {

  /** What our own writer puts above a bar that the ear does not expect. */
  static final String UNEXPECTED = "!";

  private final String source;
  private final List<String> notes;
  private final List<MusicXmlMeasure> measures = new ArrayList<>();
  private final Map<XmlNode, Harmony> known = new HashMap<>();
  private final MusicXmlSetting setting;
  private double divisions = 1;
  private int repeating;

  MusicXmlPart(String source, List<String> notes) {
    this.source = source;
    this.notes = notes;
    this.setting = new MusicXmlSetting(source, notes);
  }

  List<MusicXmlMeasure> measures() {
    return measures;
  }

  boolean hasChords() {
    return measures.stream().anyMatch(measure -> !measure.chords().isEmpty());
  }

  /** Metre, key, tempo and transposition. */
  MusicXmlSetting setting() {
    return setting;
  }

  void add(XmlNode node) {
    Measure measure = new Measure(node);
    node.children().forEach(measure::take);
    measures.add(measure.done());
  }

  /** A measure while it is read. */
  private final class Measure {
    private final XmlNode node;
    private final String place;
    private final List<MusicXmlMeasure.Placed> chords = new ArrayList<>();
    private double at;
    private double end;
    private RepeatSigns signs = RepeatSigns.NONE;
    private Optional<String> section = Optional.empty();
    private boolean unexpected;
    private boolean startsRow;

    Measure(XmlNode node) {
      this.node = node;
      this.place = "bar " + node.attribute("number").orElse(String.valueOf(measures.size() + 1));
    }

    void take(XmlNode child) {
      switch (child.name()) {
        case "attributes" -> takeAttributes(child);
        case "harmony" -> takeHarmony(child);
        case "note" -> takeNote(child);
        case "forward" -> move(quarters(child, "duration"));
        case "backup" -> at = Math.max(0, at - quarters(child, "duration"));
        case "direction" -> takeDirection(child);
        case "sound" -> takeSound(child);
        case "barline" -> takeBarline(child);
        case "print" ->
            startsRow |= child.says("new-system", "yes") || child.says("new-page", "yes");
        default -> {
          // Everything else is about how the page looks.
        }
      }
    }

    MusicXmlMeasure done() {
      chords.sort(Comparator.comparingDouble(MusicXmlMeasure.Placed::quarters));
      return new MusicXmlMeasure(
          node.attribute("number").orElse(""),
          node.says("implicit", "yes"),
          end,
          chords,
          signs,
          section,
          unexpected,
          startsRow,
          repeating);
    }

    private double quarters(XmlNode child, String name) {
      return child.numberAt(name).orElse(0.0) / divisions;
    }

    private void move(double quarters) {
      at += quarters;
      end = Math.max(end, at);
    }

    private void takeNote(XmlNode note) {
      boolean lasts = note.first("chord").isEmpty() && note.first("grace").isEmpty();
      if (lasts) {
        move(quarters(note, "duration"));
      }
    }

    private void takeHarmony(XmlNode harmony) {
      if (harmony.says("type", "alternate")) {
        notes.add(place + ": an alternate chord is left out");
        return;
      }
      double from = Math.max(0, at + quarters(harmony, "offset"));
      Harmony read = read(harmony);
      Optional<MusicXmlMeasure.Placed> there =
          chords.stream()
              .filter(c -> Math.abs(c.quarters() - from) < PlayedOut.BEAT_TOLERANCE)
              .findFirst();
      if (there.isEmpty()) {
        chords.add(new MusicXmlMeasure.Placed(from, read));
      } else if (!there.get().harmony().equals(read)) {
        notes.add(
            place + ": of two chords at one place the second, " + read.text() + ", is left out");
      }
    }

    /** A chord that reads without a note is read once, however often it comes. */
    private Harmony read(XmlNode harmony) {
      Harmony before = known.get(harmony);
      if (before != null) {
        return before;
      }
      int told = notes.size();
      Harmony read = new MusicXmlHarmony(harmony, source, place, notes).read();
      if (notes.size() == told) {
        known.put(harmony, read);
      }
      return read;
    }

    private void takeAttributes(XmlNode attributes) {
      attributes
          .numberAt("divisions")
          .filter(perQuarter -> perQuarter > 0)
          .ifPresent(perQuarter -> divisions = perQuarter);
      attributes.first("time").ifPresent(time -> setting.takeTime(time, place));
      attributes.first("key").ifPresent(key -> setting.takeKey(key, place));
      attributes.first("transpose").ifPresent(setting::takeTranspose);
      attributes
          .all("measure-style")
          .flatMap(style -> style.all("measure-repeat"))
          .forEach(this::takeMeasureRepeat);
    }

    private void takeMeasureRepeat(XmlNode repeat) {
      repeating = repeat.says("type", "start") ? Math.max(1, XmlNode.whole(repeat.text())) : 0;
      if (repeating > 2) {
        notes.add(place + ": a sign repeats " + repeating + " bars; they are read as they sound");
        repeating = 0;
      }
    }

    private void takeDirection(XmlNode direction) {
      // What sounds counts before what is printed, which may be rounded.
      direction.first("sound").ifPresent(this::takeSound);
      direction
          .all("direction-type")
          .flatMap(type -> type.children().stream())
          .forEach(
              type -> {
                switch (type.name()) {
                  case "rehearsal" ->
                      section = Optional.of(type.text()).filter(name -> !name.isEmpty());
                  case "words" -> unexpected |= type.text().equals(UNEXPECTED);
                  case "metronome" -> MusicXmlKey.tempo(type).ifPresent(setting::takeTempo);
                  case "segno", "coda" -> noteJump();
                  default -> {
                    // Dynamics, lines and the like are not the chart's.
                  }
                }
              });
    }

    private void takeSound(XmlNode sound) {
      sound.attribute("tempo").flatMap(XmlNode::number).ifPresent(setting::takeTempo);
      if (sound.attribute("dacapo").isPresent() || sound.attribute("dalsegno").isPresent()) {
        noteJump();
      }
    }

    private void noteJump() {
      String jump =
          "D.C., D.S. and coda signs are not followed; the bars are read once, in their order";
      if (!notes.contains(jump)) {
        notes.add(jump);
      }
    }

    private void takeBarline(XmlNode barline) {
      boolean left = barline.says("location", "left");
      if (!left && barline.textAt("bar-style").orElse("").equals("light-light")) {
        signs = signs.doubled();
      }
      barline
          .first("ending")
          .filter(ending -> ending.says("type", "start"))
          .flatMap(ending -> ending.attribute("number"))
          .ifPresent(number -> signs = signs.startingEnding(passes(number)));
      barline
          .first("repeat")
          .ifPresent(
              repeat -> {
                if (repeat.says("direction", "forward")) {
                  signs = signs.opening();
                } else {
                  int times = repeat.attribute("times").map(XmlNode::whole).orElse(2);
                  signs = signs.closing(Math.min(RepeatSigns.MOST_PLAYS, Math.max(2, times)));
                }
              });
    }

    private List<Integer> passes(String number) {
      List<Integer> passes = new ArrayList<>();
      for (String part : number.split(",", -1)) {
        passes.add(XmlNode.whole(part.strip()));
      }
      List<Integer> sorted = passes.stream().sorted().distinct().toList();
      boolean usable =
          sorted.get(0) >= 1 && sorted.get(sorted.size() - 1) <= RepeatSigns.MOST_PLAYS;
      if (!usable) {
        throw new ChartException(
            source,
            place + ": an ending is numbered “" + Quoted.shortly(number) + "”",
            "number endings from 1 on, in your notation program");
      }
      return sorted;
    }
  }
}
