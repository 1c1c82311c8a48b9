package holdfast.chart;

import holdfast.theory.SpelledPitch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Writes the notes and rests of a melody: pitches, ties, accidentals, beams, tuplets. */
final class MusicXmlNotes {

  private final XmlPage page;
  private final long ticksOfADivision;
  private final Accidentals accidentals;

  /**
   * Notes on a page.
   *
   * @param fifths sharps of the signature, flats negative
   * @param ticksOfADivision how many ticks one division of the score lasts
   */
  MusicXmlNotes(XmlPage page, int fifths, long ticksOfADivision) {
    this.page = page;
    this.accidentals = new Accidentals(fifths);
    this.ticksOfADivision = ticksOfADivision;
  }

  /** A bar line ends what accidentals say. */
  void startBar() {
    accidentals.startBar();
  }

  /** Writes a rest of the whole bar. */
  void writeBarRest(long ticks) {
    page.open("note").leaf("rest", "", "measure", "yes");
    page.leaf("duration", divisions(ticks)).leaf("voice", "1").close();
  }

  /**
   * Writes one of the notes of a bar.
   *
   * @param slurs what slurs do at it, {@code start} or {@code stop}
   */
  void write(List<MelodyBar.Written> bar, int index, List<String> slurs) {
    MelodyBar.Written written = bar.get(index);
    RhythmPiece piece = written.piece();
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
      Optional<Beams.Part> beam = Beams.of(bar, index, level);
      if (beam.isPresent()) {
        page.leaf("beam", beam.get().word(), "number", String.valueOf(level));
      }
    }
    writeNotations(bar, index, slurs);
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

  private String accidental(SpelledPitch pitch) {
    OptionalInt printed = accidentals.printed(pitch);
    if (printed.isEmpty()) {
      return "";
    }
    return switch (printed.getAsInt()) {
      case -3 -> "triple-flat";
      case -2 -> "flat-flat";
      case -1 -> "flat";
      case 0 -> "natural";
      case 1 -> "sharp";
      case 2 -> "double-sharp";
      default -> "triple-sharp";
    };
  }

  private void writeNotations(List<MelodyBar.Written> bar, int index, List<String> slurs) {
    MelodyBar.Written written = bar.get(index);
    List<String> tuplet = tuplet(bar, index);
    if (!written.tiedFrom() && !written.tiedOn() && tuplet.isEmpty() && slurs.isEmpty()) {
      return;
    }
    page.open("notations");
    if (written.tiedFrom()) {
      page.leaf("tied", "", "type", "stop");
    }
    if (written.tiedOn()) {
      page.leaf("tied", "", "type", "start");
    }
    for (String type : slurs) {
      page.leaf("slur", "", "type", type, "number", "1");
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
}
