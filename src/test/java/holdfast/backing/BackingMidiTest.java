package holdfast.backing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.chart.ChartText;
import holdfast.disk.WholeFile;
import holdfast.listening.midi.BarOne;
import holdfast.listening.midi.LineChoice;
import holdfast.listening.midi.MidiTakeFile;
import holdfast.listening.midi.RecordedTake;
import holdfast.listening.midi.RecordedTake.Mark;
import holdfast.listening.midi.TakePlacement;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The file is read by midicsv (Debian package midicsv, John Walker's reader of the Standard MIDI
 * File 1.0), so that not we ourselves say that it is right.
 */
class BackingMidiTest {

  @TempDir Path folder;

  private static Performance performance(Chart chart, Set<Part> muted) {
    return new Performance(Arrangement.of(chart), OptionalInt.of(1), 1, muted);
  }

  private List<String> midicsv(Path file) throws IOException, InterruptedException {
    assumeTrue(
        Files.isExecutable(Path.of("/usr/bin/midicsv")), "skipped: midicsv is not installed");
    Process process =
        new ProcessBuilder("/usr/bin/midicsv", file.toString()).redirectErrorStream(true).start();
    String text =
        new String(
            process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.ISO_8859_1);
    assertEquals(0, process.waitFor(), text);
    return text.lines().toList();
  }

  @Test
  void tempo_metre_key_and_chords_are_in_the_first_track() throws Exception {
    Path file = folder.resolve("ferry.mid");
    BackingMidi.write(performance(ChartLibrary.open("slow-ferry"), Set.of()), file);
    List<String> lines = midicsv(file);
    assertEquals("0, 0, Header, 1, 4, 480", lines.get(0));
    double tempo = ChartLibrary.open("slow-ferry").tempo();
    assertTrue(lines.contains("1, 0, Tempo, " + Math.round(60e6 / tempo)), lines.toString());
    assertTrue(lines.contains("1, 0, Time_signature, 4, 2, 24, 8"), lines.toString());
    // C minor: three flats.
    assertTrue(lines.contains("1, 0, Key_signature, -3, \"minor\""), lines.toString());
    List<String> markers = lines.stream().filter(line -> line.contains("Marker_t")).toList();
    // One bar is counted in: 4 quarters of 480 ticks.
    assertEquals("1, 1920, Marker_t, \"Bar 1\"", markers.get(0));
    assertEquals("1, 1920, Marker_t, \"Cm7\"", markers.get(1));
    assertEquals("1, 5760, Marker_t, \"Dm7b5\"", markers.get(3));
    assertEquals("1, 17280, Marker_t, \"end\"", markers.get(9));
  }

  @Test
  void six_eight_counts_in_eighths_and_a_pick_up_keeps_its_bar_line() throws Exception {
    Chart chart =
        ChartText.parse(
            "title: Gate\nkey: D\nmetre: 6/8\ntempo: 150\npickup: 2\n\n| A7 | D | G |\n", "gate");
    Path file = folder.resolve("gate.mid");
    BackingMidi.write(performance(chart, Set.of()), file);
    List<String> lines = midicsv(file);
    assertTrue(lines.contains("1, 0, Time_signature, 6, 3, 12, 8"), lines.toString());
    // 150 eighths a minute are 75 quarters: 800,000 µs each.
    assertTrue(lines.contains("1, 0, Tempo, 800000"), lines.toString());
    // Bar 1 begins after six eighths of 240 ticks, the pick-up two eighths earlier.
    assertTrue(lines.contains("1, 960, Marker_t, \"A7\""), lines.toString());
    assertTrue(lines.contains("1, 1440, Marker_t, \"D\""), lines.toString());
  }

  @Test
  void a_muted_part_has_no_track() throws Exception {
    Path file = folder.resolve("no-bass.mid");
    BackingMidi.write(performance(ChartLibrary.open("slow-ferry"), Set.of(Part.BASS)), file);
    List<String> lines = midicsv(file);
    assertEquals("0, 0, Header, 1, 3, 480", lines.get(0));
    assertTrue(lines.stream().noneMatch(line -> line.contains("Bass")));
  }

  @Test
  void notes_are_those_of_the_performance() throws Exception {
    Performance performance = performance(ChartLibrary.open("lantern-turn"), Set.of());
    Path file = folder.resolve("turn.mid");
    BackingMidi.write(performance, file);
    List<String> lines = midicsv(file);
    for (BackingEvent event : performance.events()) {
      Seat seat = Seat.of(event.part(), performance.arrangement().feel());
      long tick = Math.round((event.onsetBeats() + 4) * 480);
      String note =
          ", %d, Note_on_c, %d, %d, %d"
              .formatted(tick, seat.channel(), event.pitch(), event.velocity());
      assertTrue(lines.stream().anyMatch(line -> line.endsWith(note)), note);
    }
    long on = lines.stream().filter(line -> line.contains("Note_on_c")).count();
    long off = lines.stream().filter(line -> line.contains("Note_off_c")).count();
    assertEquals(performance.events().size(), on);
    assertEquals(on, off);
  }

  @Test
  void a_line_has_a_track_and_a_channel_of_its_own_and_may_begin_before_bar_1() throws Exception {
    Performance performance =
        performance(ChartLibrary.open("slow-ferry"), Set.of())
            .withLine(List.of(new Note(-1, 1, 67), new Note(0, 2, 72), new Note(31, 9, 75)));
    Path file = folder.resolve("line.mid");
    BackingMidi.write(performance, file);
    List<String> lines = midicsv(file);
    assertEquals("0, 0, Header, 1, 5, 480", lines.get(0));
    assertTrue(lines.contains("5, 0, Title_t, \"Line\""), lines.toString());
    // One bar of 4 quarters is counted in; the last note rings over the end.
    assertEquals(
        List.of(
            "5, 1440, Note_on_c, 3, 67, 80",
            "5, 1920, Note_off_c, 3, 67, 0",
            "5, 1920, Note_on_c, 3, 72, 80",
            "5, 2880, Note_off_c, 3, 72, 0",
            "5, 16800, Note_on_c, 3, 75, 80",
            "5, 21120, Note_off_c, 3, 75, 0"),
        lines.stream().filter(line -> line.matches("5, \\d+, Note_.*")).toList());
  }

  /** Read by the reader of takes, with the rule by which it lays any take over a chart. */
  @Test
  void a_take_that_was_recorded_over_the_file_finds_its_bar_1() {
    Chart chart =
        ChartText.parse(
            "title: Gate\nkey: D\nmetre: 3/4\ntempo: 90\npickup: 1\n\n| A7 | D | G | D |\n",
            "gate");
    Path file = folder.resolve("gate.mid");
    BackingMidi.write(performance(chart, Set.of()).withLine(List.of(new Note(0, 1, 69))), file);
    RecordedTake take = MidiTakeFile.read(file);
    LineChoice line = LineChoice.of(take, Optional.of("Line"), OptionalInt.empty());

    TakePlacement placement =
        new BarOne(chart.metre(), chart.tempo()).of(take, line.line(), OptionalDouble.empty());

    assertEquals(TakePlacement.Rule.MARKER, placement.rule());
    double played = line.line().get(0).onsetSeconds();
    assertEquals(0, placement.tempo().beatAt(played), 1e-6);
    // One bar of 3 beats at 90 a minute is counted in; the file counts whole microseconds.
    assertEquals(2.0, played, 1e-5);
  }

  @Test
  void a_file_that_begins_in_the_middle_of_the_form_does_not_call_it_bar_1() {
    Arrangement middle =
        Arrangement.of(
            ChartLibrary.open("slow-ferry"),
            Feel.PLAIN,
            60,
            Optional.of(new BarRange(5, 8)),
            Optional.empty());
    Path file = folder.resolve("middle.mid");
    BackingMidi.write(Performance.of(middle, 1), file);
    List<String> marks = MidiTakeFile.read(file).marks().stream().map(Mark::text).toList();
    assertEquals("Bar 5", marks.get(0));
    assertTrue(!marks.contains("Bar 1"), marks.toString());
  }

  @Test
  void what_stood_there_stays_until_the_new_file_is_whole() throws IOException {
    Path file = Files.writeString(folder.resolve("mine.mid"), "my own work");
    assertThrows(
        IllegalStateException.class,
        () ->
            WholeFile.write(
                file,
                fresh -> {
                  Files.writeString(fresh, "half");
                  throw new IllegalStateException("the writer broke");
                }));
    assertEquals("my own work", Files.readString(file));
    try (var files = Files.list(folder)) {
      assertEquals(List.of(file), files.toList());
    }
  }

  @Test
  void a_folder_that_does_not_exist_is_told_in_one_sentence() {
    Path file = folder.resolve("nowhere").resolve("a.mid");
    Performance performance = performance(ChartLibrary.open("slow-ferry"), Set.of());
    UserMistake mistake =
        assertThrows(UserMistake.class, () -> BackingMidi.write(performance, file));
    assertEquals(
        "there is no folder " + folder.resolve("nowhere") + " to write a.mid into; make it first",
        mistake.getMessage());
    assertEquals(Optional.empty(), Optional.ofNullable(mistake.getCause()));
  }
}
