package holdfast.book;

import holdfast.backing.Part;
import holdfast.backing.Performance;
import holdfast.chart.ChordSpan;
import holdfast.listening.PlayedNote;
import holdfast.listening.midi.TakeScore;
import holdfast.melody.Note;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** A finished take as a Standard MIDI File tells it: the player first, then the backing. */
final class TakeMidi {

  /** The name of the player's track. */
  static final String PLAYER_TRACK = "Player";

  /** General MIDI: the player's line on a piano, channel 1; see {@link #channel}. */
  private static final int PLAYER_CHANNEL = 1;

  private static final int CHORDS_CHANNEL = 2;
  private static final int BASS_CHANNEL = 3;
  private static final int LINE_CHANNEL = 4;
  private static final int PERCUSSION_CHANNEL = 10;

  private TakeMidi() {}

  static TakeScore score(JudgedTake judged, Performance performance) {
    Setting setting = judged.setting();
    List<PlayedNote> line = judged.phrases().stream().flatMap(p -> p.played().stream()).toList();
    double end =
        line.isEmpty() ? 0 : setting.beats().beatAt(line.get(line.size() - 1).endSeconds());
    Performance whole = ending(performance, end);
    List<TakeScore.Voice> voices = new ArrayList<>();
    voices.add(
        new TakeScore.Voice(PLAYER_TRACK, PLAYER_CHANNEL, OptionalInt.of(0), line, List.of()));
    for (Part part : Part.values()) {
      List<TakeScore.Stroke> strokes =
          whole.events().stream()
              .filter(e -> e.part() == part)
              .map(
                  e ->
                      new TakeScore.Stroke(
                          new Note(e.onsetBeats(), e.durationBeats(), e.pitch()), e.velocity()))
              .toList();
      voices.add(
          TakeScore.Voice.inBeats(
              name(part), channel(part), OptionalInt.empty(), strokes, setting.beats()));
    }
    return new TakeScore(
        setting.chart().title(),
        setting.metre(),
        setting.changes().key(),
        setting.beats(),
        marks(setting, whole),
        voices);
  }

  /** A performance without end ends with the round in which the last note was played. */
  private static Performance ending(Performance performance, double lastBeat) {
    if (performance.rounds().isPresent()) {
      return performance;
    }
    double round =
        (double) performance.arrangement().bars().size()
            * performance.arrangement().metre().beats();
    int rounds = Math.max(1, (int) Math.ceil(lastBeat / round));
    return new Performance(
        performance.arrangement(),
        OptionalInt.of(rounds),
        performance.countInBars(),
        performance.muted(),
        performance.line());
  }

  private static List<TakeScore.BeatMark> marks(Setting setting, Performance whole) {
    double end = whole.lastBeat().orElse(0.0);
    List<TakeScore.BeatMark> marks = new ArrayList<>();
    if (end > 0) {
      for (ChordSpan span : setting.changes().between(0, end)) {
        marks.add(new TakeScore.BeatMark(Math.max(0, span.startBeat()), span.harmony().text()));
      }
    }
    return marks;
  }

  private static String name(Part part) {
    return switch (part) {
      case CHORDS -> "Chords";
      case BASS -> "Bass";
      case TIME -> "Time";
      case LINE -> "Line";
    };
  }

  private static int channel(Part part) {
    return switch (part) {
      case CHORDS -> CHORDS_CHANNEL;
      case BASS -> BASS_CHANNEL;
      case TIME -> PERCUSSION_CHANNEL;
      case LINE -> LINE_CHANNEL;
    };
  }
}
