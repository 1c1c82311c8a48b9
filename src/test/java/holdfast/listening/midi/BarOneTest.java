package holdfast.listening.midi;

import static holdfast.listening.midi.HandMade.file;
import static holdfast.listening.midi.HandMade.join;
import static holdfast.listening.midi.HandMade.marker;
import static holdfast.listening.midi.HandMade.metre;
import static holdfast.listening.midi.HandMade.off;
import static holdfast.listening.midi.HandMade.on;
import static holdfast.listening.midi.HandMade.tempo;
import static holdfast.listening.midi.HandMade.track;
import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.listening.midi.TakePlacement.Rule;
import holdfast.melody.Note;
import holdfast.time.Metre;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Where bar 1 is. Files are made byte by byte; 480 ticks are a quarter note. */
class BarOneTest {

  private static final byte[] TEMPO_60 = tempo(0, 1_000_000);
  private static final byte[] SOLO =
      track(on(1920, 1, 60, 80), off(480, 1, 60), on(0, 1, 62, 80), off(480, 1, 62));

  private final BarOne chart = new BarOne(Metre.COMMON, 66);

  @Test
  void a_file_that_knows_its_tempo_starts_with_bar_one() {
    TakePlacement placement = place(file(1, 480, track(TEMPO_60), SOLO));
    assertEquals(Rule.FIRST_BAR, placement.rule());
    assertEquals(60, placement.tempo().openingTempo(), 1e-9);
    assertEquals(
        List.of(new Note(4, 1, 60), new Note(5, 1, 62)),
        notes(file(1, 480, track(TEMPO_60), SOLO)));
    assertEquals(
        "Bar 1 is taken to be the first bar of the file; --starts-at BEATS names another place.",
        placement.reason());
  }

  @Test
  void a_pick_up_bar_as_notation_programs_write_it_comes_before_bar_one() {
    byte[] conductor = track(TEMPO_60, metre(0, 1, 2), metre(480, 4, 2));
    TakePlacement placement = place(file(1, 480, conductor, SOLO));
    assertEquals(Rule.FIRST_BAR, placement.rule());
    assertEquals(1.0, placement.barOneSeconds(), 1e-9);
  }

  @Test
  void a_marker_that_names_bar_one_is_believed() {
    for (String name : List.of("Bar 1", "1", "m. 1", "Chorus 1", "Chorus", "[Solo]", "top")) {
      byte[] conductor = track(TEMPO_60, marker(0, "Intro"), marker(960, name));
      TakePlacement placement = place(file(1, 480, conductor, SOLO));
      assertEquals(Rule.MARKER, placement.rule(), name);
      assertEquals(2.0, placement.barOneSeconds(), 1e-9, name);
    }
    byte[] other = track(TEMPO_60, marker(960, "Chorus 2"), marker(0, "A"), marker(0, "F7"));
    assertEquals(Rule.FIRST_BAR, place(file(1, 480, other, SOLO)).rule());
  }

  @Test
  void bar_one_comes_after_four_clicks() {
    byte[] clicks = track(clicks(4));
    TakePlacement placement = place(file(1, 480, track(TEMPO_60), SOLO, clicks));
    assertEquals(Rule.COUNT_IN, placement.rule());
    assertEquals(4.0, placement.barOneSeconds(), 1e-9);
    assertEquals(
        "Bar 1 comes after the count-in of 4 beats, at 4 s; --starts-at BEATS names another place.",
        placement.reason());
  }

  @Test
  void two_bars_counted_in_halves_first_are_a_count_in() {
    byte[] late = track(on(8 * 480, 1, 60, 80), off(480, 1, 60));
    byte[] clicks = track(click(0), click(960), click(960), click(480), click(480), click(480));
    TakePlacement placement = place(file(1, 480, track(TEMPO_60), late, clicks));
    assertEquals(Rule.COUNT_IN, placement.rule());
    assertEquals(8.0, placement.barOneSeconds(), 1e-9);
  }

  @Test
  void drums_that_go_on_as_they_began_are_no_count_in() {
    byte[] drums = track(clicks(16));
    assertEquals(Rule.FIRST_BAR, place(file(1, 480, track(TEMPO_60), SOLO, drums)).rule());
  }

  @Test
  void clicks_in_a_file_without_a_tempo_give_the_tempo() {
    // Without a tempo event 480 ticks last 0.5 s, so the clicks are at 120.
    TakePlacement placement = place(file(1, 480, SOLO, track(clicks(4))));
    assertEquals(Rule.COUNT_IN, placement.rule());
    assertEquals(120, placement.tempo().openingTempo(), 1e-6);
    assertEquals(2.0, placement.barOneSeconds(), 1e-9);
  }

  @Test
  void a_free_recording_starts_with_its_first_note_at_the_charts_tempo() {
    TakePlacement placement = place(file(0, 480, SOLO));
    assertEquals(Rule.FIRST_NOTE, placement.rule());
    assertEquals(66, placement.tempo().openingTempo(), 1e-9);
    assertEquals(2.0, placement.barOneSeconds(), 1e-9);
    assertEquals(
        "The file names no tempo, so the chart's 66 beats a minute hold and the first note is taken"
            + " as beat 1 of bar 1; --starts-at BEATS names another place.",
        placement.reason());
  }

  @Test
  void the_users_word_comes_first() {
    byte[] bytes = file(1, 480, track(TEMPO_60, marker(0, "Bar 1")), SOLO);
    RecordedTake take = MidiTakeFile.read("take.mid", bytes);
    TakePlacement placement =
        chart.of(take, LineChoice.byItself(take).line(), OptionalDouble.of(3.5));
    assertEquals(Rule.STARTS_AT, placement.rule());
    assertEquals(3.5, placement.barOneSeconds(), 1e-9);
  }

  @Test
  void beats_are_the_metres_lower_number() {
    byte[] bytes = file(1, 480, track(TEMPO_60, metre(0, 6, 3)), SOLO);
    RecordedTake take = MidiTakeFile.read("take.mid", bytes);
    BarOne sixEight = new BarOne(new Metre(6, 8), 100);
    TakePlacement placement =
        sixEight.of(take, LineChoice.byItself(take).line(), OptionalDouble.empty());
    assertEquals(120, placement.tempo().openingTempo(), 1e-9);
    assertEquals(new Note(8, 2, 60), placement.note(LineChoice.byItself(take).line().get(0)));
  }

  @Test
  void tempo_changes_are_followed() {
    byte[] conductor = track(TEMPO_60, tempo(960, 500_000));
    List<Note> notes = notes(file(1, 480, conductor, SOLO));
    assertEquals(List.of(new Note(4, 1, 60), new Note(5, 1, 62)), notes);
  }

  private static byte[] clicks(int count) {
    byte[] clicks = click(0);
    for (int i = 1; i < count; i++) {
      clicks = join(clicks, click(480));
    }
    return clicks;
  }

  /** A stroke so many ticks after the one before, that lasts no time. */
  private static byte[] click(int delta) {
    return join(on(delta, 10, 37, 90), off(0, 10, 37));
  }

  private TakePlacement place(byte[] bytes) {
    RecordedTake take = MidiTakeFile.read("take.mid", bytes);
    return chart.of(take, LineChoice.byItself(take).line(), OptionalDouble.empty());
  }

  private List<Note> notes(byte[] bytes) {
    RecordedTake take = MidiTakeFile.read("take.mid", bytes);
    return place(bytes).notes(LineChoice.byItself(take).line());
  }
}
