package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import holdfast.listening.midi.RecordedTake.KeyChange;
import holdfast.listening.midi.RecordedTake.Mark;
import holdfast.listening.midi.RecordedTake.MarkKind;
import holdfast.listening.midi.RecordedTake.MetreChange;
import holdfast.listening.midi.TakePart.PedalMove;
import holdfast.melody.Note;
import holdfast.theory.Key;
import holdfast.time.Metre;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * A take told as the session knows it, in beats of a chart and seconds of the take, on its way to a
 * {@link RecordedTake} and a file. The file begins with a whole bar early enough for the count-in
 * and any pick-up, and says where bar 1 is.
 *
 * @param title of the chart or take
 * @param metre of the chart
 * @param key of the chart, where it has one
 * @param tempo chart beats against seconds of the take; beat 0 is beat 1 of bar 1
 * @param marks what stands over the bars: chords, choruses
 * @param voices the player first, then whoever else is to be kept
 */
public record TakeScore(
    String title,
    Metre metre,
    Optional<Key> key,
    TempoMap tempo,
    List<BeatMark> marks,
    List<Voice> voices) {

  /** The marker at bar 1; {@link BarOne} looks for it. */
  static final String BAR_ONE = "Bar 1";

  private static final String COUNT_IN = "Count-in";

  /** A beat that is so near to a bar line is on it. */
  private static final double ON_THE_LINE = 1e-6;

  /**
   * A text over a beat.
   *
   * @param beat of the chart, 0 at bar 1
   */
  public record BeatMark(double beat, String text) {}

  /**
   * Somebody who plays.
   *
   * @param name as the track is called
   * @param channel 1 to 16, 10 for percussion
   * @param program General MIDI program 0 to 127, where it matters
   * @param notes in seconds of the take
   * @param pedal in seconds of the take
   */
  public record Voice(
      String name,
      int channel,
      OptionalInt program,
      List<PlayedNote> notes,
      List<PedalMove> pedal) {

    /** Copies. */
    public Voice {
      notes = List.copyOf(notes);
      pedal = List.copyOf(pedal);
    }

    /** A voice that plays by the beat, as a backing does. */
    public static Voice inBeats(
        String name, int channel, OptionalInt program, List<Stroke> strokes, TempoMap tempo) {
      return new Voice(
          name, channel, program, strokes.stream().map(s -> s.played(tempo)).toList(), List.of());
    }
  }

  /**
   * A note by the beat.
   *
   * @param note in chart beats
   * @param velocity 1 to 127
   */
  public record Stroke(Note note, int velocity) {
    PlayedNote played(TempoMap tempo) {
      double from = tempo.secondsAt(note.onsetBeats());
      double to = tempo.secondsAt(note.endBeats());
      return PlayedNote.key(from, to - from, note.pitch(), velocity);
    }
  }

  /** Copies. */
  public TakeScore {
    marks = List.copyOf(marks);
    voices = List.copyOf(voices);
  }

  /** How many whole bars the file has before bar 1. */
  public int barsBefore() {
    double first =
        Stream.concat(
                voices.stream()
                    .flatMap(voice -> voice.notes().stream())
                    .map(note -> tempo.beatAt(note.onsetSeconds())),
                marks.stream().map(BeatMark::beat))
            .min(Comparator.naturalOrder())
            .orElse(0.0);
    return (int) Math.max(0, Math.ceil(-first / metre.beats() - ON_THE_LINE));
  }

  /** The same in quarter notes and seconds of the file. */
  public RecordedTake take() {
    double startBeat = -(double) barsBefore() * metre.beats();
    double startSecond = tempo.secondsAt(startBeat);
    double perBeat = metre.quartersPerBeat();
    List<TakePart> parts = new ArrayList<>();
    for (Voice voice : voices) {
      if (!voice.notes().isEmpty()) {
        parts.add(part(voice, parts.size() + 2, startSecond));
      }
    }
    return new RecordedTake(
        title,
        Optional.of(title),
        parts,
        fromTheStart(startBeat, startSecond),
        true,
        List.of(new MetreChange(0, metre)),
        key
            .filter(k -> Math.abs(k.fifths()) <= 7)
            .map(k -> new KeyChange(0, k.fifths(), k.mode().hasMinorThird()))
            .stream()
            .toList(),
        marksFromTheStart().stream()
            .map(
                mark ->
                    new Mark(
                        (mark.beat() - startBeat) * perBeat,
                        tempo.secondsAt(mark.beat()) - startSecond,
                        MarkKind.MARKER,
                        mark.text()))
            .toList(),
        List.of());
  }

  private List<BeatMark> marksFromTheStart() {
    List<BeatMark> all = new ArrayList<>();
    if (barsBefore() > 0) {
      all.add(new BeatMark(-(double) barsBefore() * metre.beats(), COUNT_IN));
    }
    all.add(new BeatMark(0, BAR_ONE));
    all.addAll(marks);
    all.sort(Comparator.comparingDouble(BeatMark::beat));
    return all;
  }

  /** The tempo map in quarters, with its first point at the start of the file. */
  private TempoMap fromTheStart(double startBeat, double startSecond) {
    double perBeat = metre.quartersPerBeat();
    List<TempoMap.Point> points = new ArrayList<>();
    double opening = tempo.openingTempo();
    for (TempoMap.Point point : tempo.points()) {
      if (point.beat() <= startBeat) {
        opening = point.beatsPerMinute();
      } else {
        points.add(
            new TempoMap.Point(
                (point.beat() - startBeat) * perBeat,
                point.seconds() - startSecond,
                point.beatsPerMinute() * perBeat));
      }
    }
    points.add(0, new TempoMap.Point(0, 0, opening * perBeat));
    return new TempoMap(points);
  }

  private static TakePart part(Voice voice, int track, double startSecond) {
    return new TakePart(
        track,
        voice.channel(),
        voice.name(),
        voice.program(),
        voice.notes().stream()
            .map(
                n ->
                    new PlayedNote(
                        n.onsetSeconds() - startSecond,
                        n.durationSeconds(),
                        n.pitch(),
                        n.cents(),
                        n.loudness(),
                        n.confidence()))
            .toList(),
        voice.pedal().stream()
            .map(move -> new PedalMove(move.seconds() - startSecond, move.down()))
            .toList());
  }
}
