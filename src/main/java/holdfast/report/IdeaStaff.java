package holdfast.report;

import holdfast.chart.Bar;
import holdfast.chart.ChordSpan;
import holdfast.chart.Form;
import holdfast.chart.MelodyBars;
import holdfast.chart.MelodySheet;
import holdfast.chart.WrittenFor;
import holdfast.harmony.ToneName;
import holdfast.melody.Note;
import holdfast.melody.PlainRhythm;
import holdfast.report.picture.Clef;
import holdfast.report.picture.Staff;
import holdfast.session.JudgedTake;
import holdfast.session.Place;
import holdfast.theory.Harmony;
import holdfast.theory.Interval;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The idea in notes, as its player reads them: in the bar where it stood, under the tune's
 * signature and chords, in the player's clef, moved for a transposing instrument.
 *
 * @param staff what is on the staff
 * @param notes the notes as they are written, in beats from the bar line
 * @param names the written notes in words, in order: {@code E♭4}
 * @param key the written key
 */
record IdeaStaff(Staff staff, List<Note> notes, List<String> names, Optional<Key> key) {

  /** Where the middle of an idea lies below this MIDI note, it is read in the bass clef. */
  private static final int BASS_CLEF_BELOW = 57;

  /** The middle line of a treble staff: transposing instruments read around it. */
  private static final int MIDDLE_LINE = 71;

  private static final int OCTAVE = 12;

  /** An idea that is longer than this is shown by its beginning. */
  private static final int MOST_BARS = 4;

  /** The idea of a take; empty where there is none. */
  static Optional<IdeaStaff> of(JudgedTake take, WrittenFor reader, Optional<Clef> clef) {
    return take.idea().map(idea -> of(take, idea.notes(), reader, clef));
  }

  private static IdeaStaff of(
      JudgedTake take, List<Note> idea, WrittenFor reader, Optional<Clef> clef) {
    Metre metre = take.setting().metre();
    List<Note> rhythm = PlainRhythm.of(idea, metre);
    double placed = Place.beatThatPlaces(rhythm, metre);
    double barLine = Math.floor(placed / metre.beats()) * metre.beats();
    List<Note> inBar =
        rhythm.stream()
            .map(n -> new Note(n.onsetBeats() - barLine, n.durationBeats(), n.pitch()))
            .filter(n -> n.onsetBeats() < (double) MOST_BARS * metre.beats())
            .toList();
    Optional<Key> key =
        take.setting().changes().key().map(k -> k.transpose(reader.fromSoundingToWritten()));
    Interval way = way(take, key, reader);
    int up = semitonesUp(inBar, way, reader);
    List<Bar> bars = bars(take, barLine, inBar, way);
    Form form = new Form(metre, Optional.empty(), bars);
    List<MelodySheet.NamedNote> named = new ArrayList<>();
    for (Note note : inBar) {
      Note written =
          new Note(
              note.onsetBeats(),
              note.durationBeats(),
              Math.max(0, Math.min(127, note.pitch() + up)));
      NoteName name = ToneName.name(written.pitch(), chordAt(bars, note.onsetBeats()), key);
      named.add(new MelodySheet.NamedNote(written, name));
    }
    MelodySheet sheet =
        new MelodySheet("", form, key, take.setting().beats().openingTempo(), named, List.of());
    int fifths = key.map(Key::fifths).filter(f -> Math.abs(f) <= 7).orElse(0);
    Staff staff = new Staff(MelodyBars.of(sheet), metre, fifths, clef.orElseGet(() -> clef(named)));
    List<String> names =
        named.stream()
            .map(n -> holdfast.theory.SpelledPitch.of(n.note().pitch(), n.name()).display())
            .toList();
    return new IdeaStaff(
        staff, named.stream().map(MelodySheet.NamedNote::note).toList(), names, key);
  }

  /** The key may have taken its other name; then everything takes the same way by letters. */
  private static Interval way(JudgedTake take, Optional<Key> key, WrittenFor reader) {
    Optional<Key> sounding = take.setting().changes().key();
    return key.isPresent() && sounding.isPresent()
        ? Interval.up(sounding.get().tonic(), key.get().tonic())
        : reader.fromSoundingToWritten();
  }

  /** By the interval, and for a transposing instrument by octaves to the middle of its staff. */
  private static int semitonesUp(List<Note> notes, Interval way, WrittenFor reader) {
    if (reader.isConcert()) {
      return 0;
    }
    double middle = middle(notes) + way.semitones();
    return way.semitones() + OCTAVE * (int) Math.rint((MIDDLE_LINE - middle) / OCTAVE);
  }

  private static double middle(List<Note> notes) {
    return notes.stream().mapToInt(Note::pitch).average().orElse(MIDDLE_LINE);
  }

  private static Clef clef(List<MelodySheet.NamedNote> notes) {
    double middle = middle(notes.stream().map(MelodySheet.NamedNote::note).toList());
    return middle < BASS_CLEF_BELOW ? Clef.BASS : Clef.TREBLE;
  }

  /** The bars that the idea takes, with the chords that sounded. */
  private static List<Bar> bars(JudgedTake take, double barLine, List<Note> notes, Interval way) {
    int beats = take.setting().metre().beats();
    double end = notes.stream().mapToDouble(Note::endBeats).max().orElse(beats);
    int count = (int) Math.max(1, Math.min(MOST_BARS, Math.ceil(end / beats - 1e-6)));
    List<Bar> bars = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double from = barLine + (double) i * beats;
      List<ChordSpan> chords = new ArrayList<>();
      for (ChordSpan span : take.setting().changes().between(from, from + beats)) {
        double start = Math.max(from, span.startBeat());
        double length = Math.min(from + beats, span.endBeat()) - start;
        if (length > 0) {
          chords.add(new ChordSpan(start - barLine, length, span.harmony().transpose(way), i + 1));
        }
      }
      if (chords.isEmpty()) {
        Harmony first = take.setting().changes().at(from).harmony();
        chords.add(new ChordSpan(from - barLine, beats, first.transpose(way), i + 1));
      }
      bars.add(new Bar(i + 1, i + 1, 1, Optional.empty(), false, chords));
    }
    return bars;
  }

  private static Harmony chordAt(List<Bar> bars, double beat) {
    Harmony harmony = bars.get(0).chords().get(0).harmony();
    for (Bar bar : bars) {
      for (ChordSpan span : bar.chords()) {
        if (span.startBeat() <= beat + 1e-6) {
          harmony = span.harmony();
        }
      }
    }
    return harmony;
  }
}
