package holdfast.listening.midi;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayedNote;
import holdfast.listening.midi.RecordedTake.Mark;
import holdfast.listening.midi.TakePart.PedalMove;
import holdfast.listening.midi.TakeScore.BeatMark;
import holdfast.listening.midi.TakeScore.Stroke;
import holdfast.listening.midi.TakeScore.Voice;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.theory.Key;
import holdfast.time.Metre;
import holdfast.time.TempoMap;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is written is what was played, for us and for programs of others. */
class MidiTakeWriterTest {

  @TempDir Path folder;

  static List<String> quantities() {
    return SmfReference.lines("variable-length");
  }

  /** The table of variable-length quantities in Standard MIDI Files 1.0. */
  @ParameterizedTest
  @MethodSource("quantities")
  void numbers_are_written_as_the_standards_table_says(String row) {
    String[] sides = row.split(" = ", -1);
    assertArrayEquals(
        SmfReference.bytes(sides[1]), TrackBytes.variableLength(Long.parseLong(sides[0], 16)));
  }

  @Test
  void the_table_of_quantities_is_there() {
    assertEquals(12, quantities().size());
  }

  @RepeatedTest(40)
  void what_is_written_is_read_within_a_tick(RepetitionInfo repetition) {
    RecordedTake take = score(new Random(repetition.getCurrentRepetition())).take();
    RecordedTake read = MidiTakeFile.read(take.source(), MidiTakeWriter.bytes(take));

    assertEquals(List.of(), read.remarks());
    assertEquals(take.title(), read.title());
    assertEquals(take.metres(), read.metres());
    assertEquals(take.keys(), read.keys());
    assertEquals(
        take.marks().stream().map(Mark::text).toList(),
        read.marks().stream().map(Mark::text).toList());
    assertEquals(take.parts().size(), read.parts().size());
    for (int i = 0; i < take.parts().size(); i++) {
      assertSamePart(take.parts().get(i), read.parts().get(i), take.tempo());
    }
    for (int i = 0; i < take.marks().size(); i++) {
      double tick = tickSeconds(take.tempo(), take.marks().get(i).seconds());
      assertEquals(take.marks().get(i).quarters(), read.marks().get(i).quarters(), 1.0 / 1920);
      assertEquals(take.marks().get(i).seconds(), read.marks().get(i).seconds(), 2 * tick);
    }
  }

  private static void assertSamePart(TakePart written, TakePart read, TempoMap tempo) {
    assertEquals(written.track(), read.track());
    assertEquals(written.channel(), read.channel());
    assertEquals(written.name(), read.name());
    assertEquals(written.program(), read.program());
    assertEquals(written.notes().size(), read.notes().size());
    for (int i = 0; i < written.notes().size(); i++) {
      PlayedNote w = written.notes().get(i);
      PlayedNote r = read.notes().get(i);
      double tick = tickSeconds(tempo, w.onsetSeconds());
      assertEquals(w.pitch(), r.pitch());
      assertEquals(w.onsetSeconds(), r.onsetSeconds(), tick);
      assertEquals(w.endSeconds(), r.endSeconds(), tick);
      assertEquals(w.loudness(), r.loudness(), 0.5 / 127 + 1e-9);
      assertEquals(w.cents(), r.cents(), 0.05);
    }
    assertEquals(written.pedal().size(), read.pedal().size());
    for (int i = 0; i < written.pedal().size(); i++) {
      PedalMove w = written.pedal().get(i);
      assertEquals(w.down(), read.pedal().get(i).down());
      assertEquals(w.seconds(), read.pedal().get(i).seconds(), tickSeconds(tempo, w.seconds()));
    }
  }

  /** One tick, and the rounding of the tempo map's own points. */
  private static double tickSeconds(TempoMap tempo, double seconds) {
    double slowest =
        tempo.points().stream().mapToDouble(TempoMap.Point::beatsPerMinute).min().orElseThrow();
    assertTrue(seconds > -1);
    return 60 / slowest / MidiTakeWriter.TICKS_PER_QUARTER + 1e-9;
  }

  @Test
  void an_hour_of_a_crooked_tempo_does_not_drift() {
    List<PlayedNote> notes =
        IntStream.range(0, 4000).mapToObj(i -> PlayedNote.key(i * 0.9, 0.5, 60, 80)).toList();
    Voice voice = new Voice("Solo", 1, OptionalInt.empty(), notes, List.of());
    RecordedTake take =
        new TakeScore(
                "Long",
                Metre.COMMON,
                Optional.empty(),
                TempoMap.steady(70),
                List.of(),
                List.of(voice))
            .take();
    RecordedTake read = MidiTakeFile.read("x", MidiTakeWriter.bytes(take));
    assertEquals(
        3999 * 0.9, read.parts().get(0).notes().get(3999).onsetSeconds(), 60.0 / 70 / 1920);
  }

  @Test
  void the_file_finds_its_own_bar_one_again_behind_count_in_and_pick_up() {
    TempoMap tempo = TempoMap.steady(60, 10);
    Voice solo =
        new Voice(
            "Solo",
            1,
            OptionalInt.empty(),
            List.of(PlayedNote.key(9.5, 0.4, 67, 80), PlayedNote.key(10, 1, 69, 80)),
            List.of());
    Voice clicks =
        Voice.inBeats(
            "Time",
            10,
            OptionalInt.empty(),
            IntStream.range(-4, 0)
                .mapToObj(beat -> new Stroke(new Note(beat, 0.1, 37), 60))
                .toList(),
            tempo);
    TakeScore score =
        new TakeScore(
            "Slow Ferry",
            Metre.COMMON,
            Optional.of(Key.parse("Eb")),
            tempo,
            List.of(new BeatMark(0, "Ebmaj7"), new BeatMark(4, "Abmaj7")),
            List.of(solo, clicks));
    assertEquals(1, score.barsBefore());
    RecordedTake read = MidiTakeFile.read("x.mid", MidiTakeWriter.bytes(score.take()));
    LineChoice choice = LineChoice.byItself(read);
    TakePlacement placement =
        new BarOne(Metre.COMMON, 60).of(read, choice.line(), OptionalDouble.empty());
    assertEquals(TakePlacement.Rule.MARKER, placement.rule());
    List<Note> notes = placement.notes(choice.line());
    assertEquals(-0.5, notes.get(0).onsetBeats(), 1e-3);
    assertEquals(0, notes.get(1).onsetBeats(), 1e-3);
    assertEquals(List.of(new RecordedTake.KeyChange(0, -3, false)), read.keys());
  }

  @Test
  void the_jdks_own_reader_opens_it() throws Exception {
    byte[] bytes = MidiTakeWriter.bytes(score(new Random(5)).take());
    Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(bytes));
    assertEquals(Sequence.PPQ, sequence.getDivisionType(), 0f);
    assertEquals(MidiTakeWriter.TICKS_PER_QUARTER, sequence.getResolution());
    assertEquals(3, sequence.getTracks().length);
  }

  @Test
  void midicsv_reads_what_was_written() throws Exception {
    TempoMap tempo = TempoMap.steady(60);
    Voice solo =
        new Voice(
            "Solo",
            1,
            OptionalInt.of(66),
            List.of(PlayedNote.key(0, 0.5, 60, 80), PlayedNote.key(1, 2, 64, 90)),
            List.of(new PedalMove(0.5, true)));
    RecordedTake take =
        new TakeScore(
                "Lantern Turn",
                new Metre(6, 8),
                Optional.of(Key.parse("Cm")),
                tempo,
                List.of(new BeatMark(6, "Dm7b5")),
                List.of(solo))
            .take();
    Path midi = folder.resolve("take.mid");
    MidiTakeWriter.write(take, midi);
    // A beat of 6/8 at 60 is an eighth note of one second: 960 ticks, 30 quarters a minute.
    assertEquals(
        List.of(
            "0, 0, Header, 1, 2, 1920",
            "1, 0, Start_track",
            "1, 0, Title_t, \"Lantern Turn\"",
            "1, 0, Tempo, 2000000",
            "1, 0, Time_signature, 6, 3, 36, 8",
            "1, 0, Key_signature, -3, \"minor\"",
            "1, 0, Marker_t, \"Bar 1\"",
            "1, 5760, Marker_t, \"Dm7b5\"",
            "1, 5760, End_track",
            "2, 0, Start_track",
            "2, 0, Title_t, \"Solo\"",
            "2, 0, Program_c, 0, 66",
            "2, 0, Note_on_c, 0, 60, 80",
            "2, 480, Note_off_c, 0, 60, 64",
            "2, 480, Control_c, 0, 64, 127",
            "2, 960, Note_on_c, 0, 64, 90",
            "2, 2880, Note_off_c, 0, 64, 64",
            "2, 5760, End_track",
            "0, 0, End_of_file"),
        OutsideProgram.midicsv(folder, midi));
  }

  @Test
  void a_key_struck_again_while_it_sounds_is_two_notes() {
    Voice solo =
        new Voice(
            "Solo",
            1,
            OptionalInt.empty(),
            List.of(PlayedNote.key(0, 1.04, 60, 80), PlayedNote.key(1, 1, 60, 80)),
            List.of());
    RecordedTake take =
        new TakeScore(
                "Again",
                Metre.COMMON,
                Optional.empty(),
                TempoMap.steady(60),
                List.of(),
                List.of(solo))
            .take();
    List<PlayedNote> read =
        MidiTakeFile.read("x", MidiTakeWriter.bytes(take)).parts().get(0).notes();
    assertEquals(List.of(PlayedNote.key(0, 1, 60, 80), PlayedNote.key(1, 1, 60, 80)), read);
  }

  @Test
  void an_old_file_stays_whole_until_the_new_one_is_and_nothing_is_left_beside_it()
      throws IOException {
    Path file = folder.resolve("take.mid");
    Files.writeString(file, "old");
    MidiTakeWriter.write(score(new Random(1)).take(), file);
    assertTrue(Files.size(file) > 100);
    try (var beside = Files.list(folder)) {
      assertEquals(List.of(file), beside.toList());
    }
  }

  @Test
  void a_place_where_nothing_can_be_written_is_told() {
    RecordedTake take = score(new Random(1)).take();
    Path missing = folder.resolve("no").resolve("take.mid");
    assertEquals(
        "there is no folder " + folder.resolve("no") + " to write take.mid into; make it first",
        assertThrows(UserMistake.class, () -> MidiTakeWriter.write(take, missing)).getMessage());
  }

  /** A sung line with cents, a pedal, and a backing by the beat, over a tempo that wanders. */
  private static TakeScore score(Random chance) {
    List<TempoMap.Point> points = new ArrayList<>();
    double beat = -chance.nextInt(3);
    double seconds = chance.nextDouble() * 20;
    int count = 1 + chance.nextInt(30);
    for (int i = 0; i < count; i++) {
      double tempo = 40 + 80 * chance.nextDouble();
      points.add(new TempoMap.Point(beat, seconds, tempo));
      double length = 0.5 + 6 * chance.nextDouble();
      beat += length;
      seconds += length * 60 / tempo;
    }
    TempoMap tempo = new TempoMap(points);
    List<PlayedNote> line = new ArrayList<>();
    double at = tempo.secondsAt(-1);
    boolean sung = chance.nextBoolean();
    for (int i = 0; i < 60; i++) {
      double length = 0.06 + chance.nextDouble();
      double cents = sung ? 90 * chance.nextDouble() - 45 : 0;
      double loudness = (1 + chance.nextInt(127)) / 127.0;
      line.add(new PlayedNote(at, length, 48 + chance.nextInt(40), cents, loudness, 1));
      at += length + (chance.nextInt(3) == 0 ? chance.nextDouble() : 0);
    }
    List<Stroke> backing =
        IntStream.range(-4, 40)
            .mapToObj(b -> new Stroke(new Note(b, 0.9, 36 + b % 4), 50 + b % 7))
            .toList();
    return new TakeScore(
        "Take " + chance.nextInt(),
        new Metre(3, 4),
        Optional.of(Key.parse("F#m")),
        tempo,
        List.of(new BeatMark(0, "F#m7"), new BeatMark(3, "B7"), new BeatMark(6.5, "Emaj7")),
        List.of(
            new Voice(
                "Solo",
                1,
                OptionalInt.of(65),
                line,
                List.of(
                    new PedalMove(tempo.secondsAt(1), true),
                    new PedalMove(tempo.secondsAt(2), false))),
            Voice.inBeats("Chords", 2, OptionalInt.of(0), backing, tempo)));
  }
}
