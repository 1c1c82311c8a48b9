package holdfast.chart;

import holdfast.theory.Letter;
import holdfast.theory.SpelledPitch;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Writes the notes and rests of a melody: pitches, ties, accidentals, beams, tuplets. */
final class MusicXmlNotes {

  /** The letters in the order in which a signature takes its sharps. */
  private static final String SHARPS = "FCGDAEB";

  /** A line of the staff, as letter and octave: where an accidental holds until the bar line. */
  private record Line(Letter letter, int octave) {}

  private final XmlPage page;
  private final int fifths;
  private final long ticksOfADivision;
  private final Map<Line, Integer> accidentals = new HashMap<>();

  /**
   * Notes on a page.
   *
   * @param fifths sharps of the signature, flats negative
   * @param ticksOfADivision how many ticks one division of the score lasts
   */
  MusicXmlNotes(XmlPage page, int fifths, long ticksOfADivision) {
    this.page = page;
    this.fifths = fifths;
    this.ticksOfADivision = ticksOfADivision;
  }

  /** A bar line ends what accidentals say. */
  void startBar() {
    accidentals.clear();
  }

  /** Writes a rest of the whole bar. */
  void writeBarRest(long ticks) {
    page.open("note").leaf("rest", "", "measure", "yes");
    page.leaf("duration", divisions(ticks)).leaf("voice", "1").close();
  }

  /** Writes one of the notes of a bar. */
  void write(List<MelodyBar.Written> bar, int index) {
    MelodyBar.Written written = bar.get(index);
    BarRhythm.Piece piece = written.piece();
    page.open("note");
    String accidental = "";
    if (written.note().isPresent()) {
      MelodySheet.NamedNote note = written.note().get();
      SpelledPitch pitch = SpelledPitch.of(note.note().pitch(), note.name());
      writePitch(pitch);
      accidental = written.tiedFrom() ? "" : accidental(pitch);
    } else {
      page.leaf("rest", "");
    }
    page.leaf("duration", divisions(piece.ticks()));
    if (written.tiedFrom()) {
      page.leaf("tie", "", "type", "stop");
    }
    if (written.tiedOn()) {
      page.leaf("tie", "", "type", "start");
    }
    page.leaf("voice", "1").leaf("type", piece.value().type());
    if (piece.value().dotted()) {
      page.leaf("dot", "");
    }
    if (!accidental.isEmpty()) {
      page.leaf("accidental", accidental);
    }
    if (piece.tuplet() > 1) {
      page.open("time-modification").leaf("actual-notes", String.valueOf(piece.tuplet()));
      page.leaf("normal-notes", String.valueOf(piece.normal())).close();
    }
    for (int level = 1; level <= written.beams(); level++) {
      String beam = beam(bar, index, level);
      if (!beam.isEmpty()) {
        page.leaf("beam", beam, "number", String.valueOf(level));
      }
    }
    writeNotations(bar, index);
    page.close();
  }

  private void writePitch(SpelledPitch pitch) {
    page.open("pitch").leaf("step", pitch.name().letter().name());
    if (pitch.name().alter() != 0) {
      page.leaf("alter", String.valueOf(pitch.name().alter()));
    }
    page.leaf("octave", String.valueOf(pitch.octave())).close();
  }

  private String divisions(long ticks) {
    return String.valueOf(ticks / ticksOfADivision);
  }

  /** The accidental that has to be printed, since neither signature nor bar say it already. */
  private String accidental(SpelledPitch pitch) {
    Line line = new Line(pitch.name().letter(), pitch.octave());
    int alter = pitch.name().alter();
    int said = accidentals.getOrDefault(line, signature(line.letter()));
    accidentals.put(line, alter);
    if (alter == said) {
      return "";
    }
    return switch (alter) {
      case -3 -> "triple-flat";
      case -2 -> "flat-flat";
      case -1 -> "flat";
      case 0 -> "natural";
      case 1 -> "sharp";
      case 2 -> "double-sharp";
      default -> "triple-sharp";
    };
  }

  private int signature(Letter letter) {
    int place = SHARPS.indexOf(letter.name());
    return Math.floorDiv(fifths - place - 1, SHARPS.length()) + 1;
  }

  private void writeNotations(List<MelodyBar.Written> bar, int index) {
    MelodyBar.Written written = bar.get(index);
    List<String> tuplet = tuplet(bar, index);
    if (!written.tiedFrom() && !written.tiedOn() && tuplet.isEmpty()) {
      return;
    }
    page.open("notations");
    if (written.tiedFrom()) {
      page.leaf("tied", "", "type", "stop");
    }
    if (written.tiedOn()) {
      page.leaf("tied", "", "type", "start");
    }
    for (String type : tuplet) {
      if (type.equals("start")) {
        page.leaf("tuplet", "", "type", type, "bracket", "yes");
      } else {
        page.leaf("tuplet", "", "type", type);
      }
    }
    page.close();
  }

  private static List<String> tuplet(List<MelodyBar.Written> bar, int index) {
    List<String> types = new ArrayList<>();
    if (bar.get(index).piece().tuplet() > 1) {
      int beat = bar.get(index).beat();
      if (index == 0 || bar.get(index - 1).beat() != beat) {
        types.add("start");
      }
      if (index + 1 == bar.size() || bar.get(index + 1).beat() != beat) {
        types.add("stop");
      }
    }
    return types;
  }

  /** How a note is beamed with its neighbours at a level, counted from 1; empty for not at all. */
  private static String beam(List<MelodyBar.Written> bar, int index, int level) {
    boolean before = isBeamed(bar, index - 1, index, level);
    boolean after = isBeamed(bar, index, index + 1, level);
    if (before || after) {
      return before && after ? "continue" : before ? "end" : "begin";
    }
    if (level == 1) {
      return "";
    }
    // A short beam of its own, towards the neighbour that the longer beams lead to.
    if (isBeamed(bar, index - 1, index, 1)) {
      return "backward hook";
    }
    return isBeamed(bar, index, index + 1, 1) ? "forward hook" : "";
  }

  private static boolean isBeamed(List<MelodyBar.Written> bar, int left, int right, int level) {
    return left >= 0
        && right < bar.size()
        && bar.get(left).group() == bar.get(right).group()
        && bar.get(left).beams() >= level
        && bar.get(right).beams() >= level;
  }
}
