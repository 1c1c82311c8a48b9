package holdfast.chart;

import holdfast.theory.ChordKind;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.Letter;
import holdfast.theory.Mode;
import holdfast.theory.NoChord;
import holdfast.theory.NoteName;
import holdfast.theory.OptionalChord;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;

/**
 * Makes charts by chance, with everything that a chart can hold; a seed makes the same one again.
 */
final class Charts {

  private static final List<Metre> METRES =
      List.of(Metre.COMMON, new Metre(3, 4), new Metre(6, 8), new Metre(5, 4), new Metre(2, 2));
  private static final List<String> WORDS =
      List.of("easy", "(2nd x only)", "F# & <b>", "-- twice --", "| not a bar |", "ünï ♭", "a: b");

  private static final List<ChordKind> MADE =
      Stream.of("7b9#11b13", "m7(add11)", "9sus4b13", "maj7#9", "m6(add11)", "7no5", "13b9#11")
          .map(suffix -> ChordKind.read(suffix).orElseThrow())
          .toList();

  private final Random random;

  private Charts(long seed) {
    this.random = new Random(seed);
  }

  static Chart ofSeed(long seed) {
    return new Charts(seed).chart();
  }

  private Chart chart() {
    Metre metre = any(METRES);
    double pickup = random.nextInt(3) == 0 ? anyPart(metre.beats()) : 0;
    Heading heading =
        new Heading(
            any(WORDS),
            maybe(any(WORDS)),
            maybe(new Key(anyName(), any(List.of(Mode.values())))),
            metre,
            10 + random.nextInt(781) / 2.0,
            any(List.of("plain", "slow swing")),
            pickup,
            any(List.of(WrittenFor.CONCERT, WrittenFor.B_FLAT, WrittenFor.E_FLAT, WrittenFor.F)),
            random.nextInt(3) == 0 ? List.of(any(WORDS), "") : List.of());
    List<WrittenBar> bars = new ArrayList<>();
    if (pickup > 0) {
      bars.add(bar(anyChords(pickup, false), RepeatSigns.NONE));
    }
    int blocks = 1 + random.nextInt(4);
    for (int i = 0; i < blocks; i++) {
      addBlock(bars, metre.beats());
    }
    return new Chart(heading, lines(bars));
  }

  /** Some bars, or a repeat of some bars, perhaps with endings. */
  private void addBlock(List<WrittenBar> bars, int beats) {
    int length = 1 + random.nextInt(4);
    switch (random.nextInt(3)) {
      case 0 -> {
        for (int i = 0; i < length; i++) {
          bars.add(bar(anyChords(beats, !bars.isEmpty()), lineAtRight()));
        }
      }
      case 1 -> {
        for (int i = 0; i < length; i++) {
          RepeatSigns signs = i == 0 ? RepeatSigns.NONE.opening() : RepeatSigns.NONE;
          signs = i == length - 1 ? signs.closing(2 + random.nextInt(3)) : signs;
          bars.add(bar(anyContents(beats, i, length), signs));
        }
      }
      default -> {
        for (int i = 0; i < length; i++) {
          bars.add(
              bar(
                  anyContents(beats, i, length),
                  i == 0 ? RepeatSigns.NONE.opening() : RepeatSigns.NONE));
        }
        boolean three = random.nextBoolean();
        bars.add(
            bar(
                anyChords(beats, true),
                RepeatSigns.NONE.startingEnding(three ? List.of(1, 2) : List.of(1)).closing(2)));
        bars.add(
            bar(
                anyContents(beats, 1, 2),
                RepeatSigns.NONE.startingEnding(three ? List.of(3) : List.of(2)).doubled()));
        // The last ending leads on as far as the next repeat that is opened.
        bars.add(bar(anyChords(beats, true), RepeatSigns.NONE));
      }
    }
  }

  private RepeatSigns lineAtRight() {
    return random.nextInt(4) == 0 ? RepeatSigns.NONE.doubled() : RepeatSigns.NONE;
  }

  private WrittenBar bar(BarContents contents, RepeatSigns signs) {
    return new WrittenBar(contents, random.nextInt(5) == 0, signs);
  }

  private BarContents anyContents(int beats, int place, int length) {
    int choice = random.nextInt(5);
    if (choice == 0 && place >= 1) {
      return new BarContents.OneBarRepeat();
    }
    if (choice == 1 && place >= 2) {
      return new BarContents.TwoBarRepeat();
    }
    return anyChords(beats, place > 0 && length > 0);
  }

  private BarContents.Chords anyChords(double beats, boolean mayGoOn) {
    List<TimedChord> chords = new ArrayList<>();
    double left = beats;
    while (left > 0) {
      double length = random.nextInt(3) == 0 ? left : anyPart(left);
      boolean goesOn = chords.isEmpty() && mayGoOn && random.nextInt(5) == 0;
      chords.add(goesOn ? TimedChord.goingOn(length) : TimedChord.of(anyHarmony(), length));
      left -= length;
    }
    return new BarContents.Chords(chords);
  }

  /** A part of so many beats, in quarters of a beat so that sums are exact. */
  private double anyPart(double beats) {
    int quarters = (int) (beats * 4);
    int step = random.nextInt(4) == 0 ? 1 : 4;
    return quarters <= step ? beats : step * (1 + random.nextInt((quarters - 1) / step)) / 4.0;
  }

  private Harmony anyHarmony() {
    return switch (random.nextInt(10)) {
      case 0 -> NoChord.SILENT;
      case 1 -> new OptionalChord(anySymbol());
      default -> anySymbol();
    };
  }

  private ChordSymbol anySymbol() {
    return new ChordSymbol(anyName(), anyKind(), maybe(anyName()));
  }

  /** A kind of the table, or one that the table lacks and the grammar of symbols makes. */
  private ChordKind anyKind() {
    return any(random.nextInt(4) == 0 ? MADE : ChordKind.known());
  }

  private NoteName anyName() {
    return new NoteName(any(List.of(Letter.values())), random.nextInt(3) - 1);
  }

  private List<ChartLine> lines(List<WrittenBar> bars) {
    List<ChartLine> lines = new ArrayList<>();
    int from = 0;
    while (from < bars.size()) {
      if (random.nextInt(3) == 0) {
        lines.add(new ChartLine.RemarkLine(random.nextBoolean() ? any(WORDS) : ""));
      }
      if (random.nextInt(3) == 0) {
        lines.add(new ChartLine.SectionName(any(List.of("A", "Bridge 2", "|: ß")), maybe("soft")));
      }
      int to = Math.min(bars.size(), from + 1 + random.nextInt(5));
      lines.add(new ChartLine.Row(bars.subList(from, to), maybe(any(WORDS))));
      from = to;
    }
    return lines;
  }

  private <T> T any(List<T> choices) {
    return choices.get(random.nextInt(choices.size()));
  }

  private <T> Optional<T> maybe(T value) {
    return random.nextInt(3) == 0 ? Optional.of(value) : Optional.empty();
  }
}
