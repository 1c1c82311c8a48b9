package holdfast.report.picture;

import holdfast.chart.Accidentals;
import holdfast.chart.MelodyBar;
import holdfast.chart.NoteValue;
import holdfast.theory.SpelledPitch;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where everything stands along a staff, in staff spaces from its left end. Longer notes get more
 * room, by the logarithm of their length, as engravers do; widths are our own.
 */
final class StaffSpacing {

  private static final double CLEF_AT = 0.6;
  private static final double CLEF_ROOM = 3.6;
  private static final double SIGN_ROOM = 1.0;
  private static final double TIME_DIGIT_ROOM = 1.88;
  private static final double AFTER_HEAD = 1.2;

  /** The room of a sixteenth note, and what each doubling adds. */
  private static final double SIXTEENTH_ROOM = 2.1;

  private static final double DOUBLING_ROOM = 0.95;
  private static final double ACCIDENTAL_ROOM = 1.15;
  private static final double DOT_ROOM = 0.6;
  private static final double FLAG_ROOM = 0.7;
  private static final double AFTER_BAR_LINE = 1.1;

  /** A bar that only rests. */
  private static final double EMPTY_BAR = 7;

  /**
   * A chord's name and where it begins.
   *
   * @param text the name
   * @param x in staff spaces
   */
  record PlacedChord(String text, double x) {}

  private final Staff staff;
  private final List<PlacedNote> notes = new ArrayList<>();
  private final List<PlacedChord> chords = new ArrayList<>();
  private final List<Double> barLines = new ArrayList<>();
  private final List<Double> barRests = new ArrayList<>();
  private final double signature;
  private final double time;
  private double x;

  StaffSpacing(Staff staff) {
    this.staff = staff;
    this.signature = CLEF_AT + CLEF_ROOM;
    this.time = signature + SIGN_ROOM * Math.abs(staff.fifths()) + (staff.fifths() == 0 ? 0 : 0.9);
    int digits = Math.max(digits(staff.metre().beats()), digits(staff.metre().unit()));
    this.x = time + TIME_DIGIT_ROOM * digits + AFTER_HEAD;
    Accidentals accidentals = new Accidentals(staff.fifths());
    for (int bar = 0; bar < staff.bars().size(); bar++) {
      accidentals.startBar();
      place(bar, staff.bars().get(bar), accidentals);
      barLines.add(x);
      x += AFTER_BAR_LINE;
    }
  }

  private static int digits(int number) {
    return Integer.toString(number).length();
  }

  private void place(int bar, MelodyBar written, Accidentals accidentals) {
    double start = x;
    if (written.notes().isEmpty()) {
      barRests.add(x + EMPTY_BAR / 2);
      x += EMPTY_BAR;
    }
    List<Double> at = new ArrayList<>();
    for (int i = 0; i < written.notes().size(); i++) {
      MelodyBar.Written note = written.notes().get(i);
      OptionalInt accidental =
          note.note().isPresent() && !note.tiedFrom()
              ? accidentals.printed(
                  SpelledPitch.of(note.note().get().note().pitch(), note.note().get().name()))
              : OptionalInt.empty();
      x += accidental.isPresent() ? ACCIDENTAL_ROOM : 0;
      at.add(x);
      notes.add(new PlacedNote(bar, i, note, staff.position(note), accidental, x));
      x += room(note);
    }
    for (MelodyBar.Chord chord : written.chords()) {
      chords.add(new PlacedChord(chord.harmony().display(), chordAt(written, chord, at, start, x)));
    }
  }

  private static double room(MelodyBar.Written note) {
    double doublings =
        Math.log((double) note.piece().ticks() / (NoteValue.TICKS / 4)) / Math.log(2);
    return Math.max(1.6, SIXTEENTH_ROOM + DOUBLING_ROOM * doublings)
        + (note.piece().value().dotted() ? DOT_ROOM : 0)
        + (note.beams() > 0 ? FLAG_ROOM * 0.3 : 0);
  }

  /** A chord stands over the note that starts with it, or between the notes around it. */
  private static double chordAt(
      MelodyBar bar, MelodyBar.Chord chord, List<Double> at, double start, double end) {
    for (int i = 0; i < bar.notes().size(); i++) {
      if (bar.notes().get(i).piece().end() > chord.tick()) {
        double from = at.get(i);
        double to = i + 1 < at.size() ? at.get(i + 1) : end;
        double share =
            (double) (chord.tick() - bar.notes().get(i).piece().start())
                / bar.notes().get(i).piece().ticks();
        return from + Math.max(0, share) * (to - from);
      }
    }
    double share = (double) chord.tick() / Math.max(1, bar.endTick());
    return start + share * (end - start);
  }

  List<PlacedNote> notes() {
    return notes;
  }

  List<PlacedChord> chords() {
    return chords;
  }

  /** Where bar lines stand; the last one ends the staff. */
  List<Double> barLines() {
    return barLines;
  }

  /** The middles of bars that only rest. */
  List<Double> barRests() {
    return barRests;
  }

  double clef() {
    return CLEF_AT;
  }

  double signature() {
    return signature;
  }

  double time() {
    return time;
  }

  double width() {
    return barLines.get(barLines.size() - 1);
  }

  /** The note after this one, where a tie may lead. */
  Optional<PlacedNote> after(PlacedNote note) {
    int next = notes.indexOf(note) + 1;
    return next < notes.size() ? Optional.of(notes.get(next)) : Optional.empty();
  }
}
