package holdfast.harmony;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.NoChord;
import holdfast.theory.ToneClass;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Gives every note of a line its role over its chord, and the line its fit. A pure function. */
public final class FitJudge {

  /**
   * Near a change experts play by the next chord already (up to half a quarter before it), or still
   * by the last one (up to half a quarter after it), so often; chosen, and in a simulation of
   * little consequence.
   */
  private static final double EARLY_SHARE = 0.25;

  private static final double LATE_SHARE = 0.12;

  private static final double NEAR_A_CHANGE_QUARTERS = 0.51;

  /** Just after a note's start, so that a rounding error never hears the chord before. */
  private static final double JUST_BEFORE_BEATS = 1e-6;

  /**
   * A note of this length, in quarters, or longer counts twice as much as one a quarter as long.
   */
  private static final double LONGEST_THAT_COUNTS_QUARTERS = 2;

  /** The note on which a phrase lands counts so much more; common practice, no source. */
  private static final double LANDING_WEIGHT = 1.4;

  private FitJudge() {}

  /** As {@link #judge(List, Changes, Metre)}, four quarters to the bar. */
  public static JudgedLine judge(List<Note> line, Changes changes) {
    return judge(line, changes, Metre.COMMON);
  }

  /**
   * Judges a line: one phrase, or many with rests between them.
   *
   * @param line in order of onset, in the beats of the changes
   * @param changes the chords; bar 1 starts on beat 0
   * @param metre tells accents
   */
  public static JudgedLine judge(List<Note> line, Changes changes, Metre metre) {
    LineReading reading = new LineReading(line, changes, new Beats(metre));
    List<HeardNote> heard = new ArrayList<>(line.size());
    for (int i = 0; i < line.size(); i++) {
      heard.add(heard(reading, i));
    }
    return new JudgedLine(heard, Fit.of(heard));
  }

  private static HeardNote heard(LineReading reading, int i) {
    LineReading.Reading read = reading.read(i);
    Note note = reading.note(i);
    Optional<Note> goal =
        read.goal().isPresent()
            ? Optional.of(reading.note(read.goal().getAsInt()))
            : Optional.empty();
    if (read.chord().isEmpty()) {
      Harmony none = reading.changes().at(note.onsetBeats()).harmony();
      return new HeardNote(
          note,
          none.hasChord() ? NoChord.SILENT : none,
          ToneClass.OUTSIDE,
          NoteRole.UNJUDGED,
          goal,
          0,
          0,
          0);
    }
    ChordHere chord = read.chord().get();
    return new HeardNote(
        note,
        chord.harmony(),
        chord.toneClass(note.pitch()),
        read.role(),
        goal,
        Sitting.of(reading, i, read),
        logOdds(reading, i, chord),
        weight(reading, i));
  }

  private static double logOdds(LineReading reading, int i, ChordHere judged) {
    Note note = reading.note(i);
    double odds = oddsOver(reading, i, judged);
    double toChange = reading.beats().quarters(reading.changeAfter(i) - note.onsetBeats());
    Optional<ChordHere> next = reading.chordAfterChange(i);
    if (toChange <= NEAR_A_CHANGE_QUARTERS && next.isPresent()) {
      return mixed(odds, oddsOver(reading, i, next.get()), EARLY_SHARE);
    }
    double start = reading.changes().at(note.onsetBeats()).startBeat();
    double sinceChange = reading.beats().quarters(note.onsetBeats() - start);
    if (sinceChange < NEAR_A_CHANGE_QUARTERS && sinceChange >= 0) {
      Optional<ChordHere> before = ChordHere.at(reading.changes(), start - JUST_BEFORE_BEATS);
      if (before.isPresent()) {
        return mixed(odds, oddsOver(reading, i, before.get()), LATE_SHARE);
      }
    }
    return odds;
  }

  private static double mixed(double logOdds, double other, double share) {
    return Math.log((1 - share) * Math.exp(logOdds) + share * Math.exp(other));
  }

  private static double oddsOver(LineReading reading, int i, ChordHere chord) {
    Note note = reading.note(i);
    return NotesOverChords.EXPERTS.logOdds(
        chord,
        note.pitch(),
        new NotesOverChords.Situation(
            NotesOverChords.Length.of(reading.beats().quarters(note.durationBeats())),
            reading.beats().place(note.onsetBeats()),
            reading.isLanding(i)));
  }

  private static double weight(LineReading reading, int i) {
    Note note = reading.note(i);
    double quarters =
        Math.min(LONGEST_THAT_COUNTS_QUARTERS, reading.beats().quarters(note.durationBeats()));
    return Math.sqrt(quarters)
        * reading.beats().place(note.onsetBeats()).weight()
        * (reading.isLanding(i) ? LANDING_WEIGHT : 1);
  }
}
