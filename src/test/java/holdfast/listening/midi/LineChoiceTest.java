package holdfast.listening.midi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import holdfast.listening.PlayedNote;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which part is the melody: what a musician would pick from the score, common practice. */
class LineChoiceTest {

  private static final TakePart CHORDS = part(3, 2, "Piano", chords());
  private static final TakePart BASS = part(4, 3, "", line(36, 40));
  private static final TakePart DRUMS = part(5, 10, "", line(42, 300));

  @Test
  void the_only_part_is_the_line() {
    LineChoice choice = LineChoice.byItself(take(part(1, 1, "", line(60, 8))));
    assertEquals(8, choice.line().size());
    assertEquals("The line is track 1 (channel 1, 8 notes): it is the only part.", choice.reason());
  }

  @Test
  void a_part_called_solo_is_the_line_though_another_is_higher() {
    TakePart solo = part(2, 1, "Tenor solo", line(52, 30));
    TakePart flute = part(6, 4, "Flute", line(84, 90));
    LineChoice choice = LineChoice.byItself(take(flute, solo, CHORDS, BASS, DRUMS));
    assertEquals(solo, choice.part());
    assertEquals(
        "The line is track 2 “Tenor solo” (channel 1, 30 notes): its name says so, and one note"
            + " sounds at a time in 100 % of it, so it is more of a melody than the other 3 parts;"
            + " --track or --channel name another.",
        choice.reason());
  }

  @Test
  void without_names_the_line_is_neither_chords_nor_bass_nor_drums() {
    TakePart melody = part(2, 5, "", line(67, 20));
    assertEquals(melody, LineChoice.byItself(take(CHORDS, BASS, DRUMS, melody)).part());
  }

  @Test
  void a_bass_by_its_program_is_not_the_line() {
    TakePart bass = new TakePart(1, 1, "", OptionalInt.of(33), line(57, 40), List.of());
    TakePart sax = new TakePart(2, 2, "", OptionalInt.of(66), line(57, 40), List.of());
    assertEquals(sax, LineChoice.byItself(take(bass, sax)).part());
  }

  @Test
  void chords_alone_are_thinned_to_their_top_notes() {
    LineChoice choice = LineChoice.byItself(take(CHORDS));
    assertEquals(List.of(67, 67, 67, 67), choice.line().stream().map(PlayedNote::pitch).toList());
  }

  @Test
  void of_two_hands_in_one_part_the_upper_ones_line_is_taken() {
    List<PlayedNote> right = new ArrayList<>();
    List<PlayedNote> left = new ArrayList<>();
    for (int bar = 0; bar < 8; bar++) {
      for (int pitch : new int[] {50, 53, 57 + bar % 3}) {
        left.add(PlayedNote.key(bar * 4, 3.8, pitch, 60));
      }
      for (int i = 0; i < 5; i++) {
        right.add(PlayedNote.key(bar * 4 + 0.5 + i * 0.5, 0.45, 67 + (bar + i * 2) % 9, 80));
      }
    }
    List<PlayedNote> both = new ArrayList<>(left);
    both.addAll(right);
    LineChoice choice = LineChoice.byItself(take(part(1, 1, "", both)));
    assertSame(right, choice.line());
    assertEquals(right, choice.part().notes());
    assertEquals(
        "The line is track 1 (channel 1, 64 notes): it is the only part; what lies below G4 is"
            + " taken for the other hand.",
        choice.reason());
  }

  @Test
  void a_tune_in_block_chords_is_one_hands_and_keeps_its_top_notes() {
    List<PlayedNote> chords = new ArrayList<>();
    List<Integer> tops = List.of(67, 72, 65, 74, 70, 62, 76, 69);
    for (int i = 0; i < tops.size(); i++) {
      for (int below : new int[] {0, 3, 7}) {
        chords.add(PlayedNote.key(i, 0.9, tops.get(i) - below, 70));
      }
    }
    LineChoice choice = LineChoice.byItself(take(part(1, 1, "", chords)));
    assertEquals(tops, choice.line().stream().map(PlayedNote::pitch).toList());
  }

  @Test
  void a_channel_for_each_string_is_one_player() {
    List<PlayedNote> tune = line(60, 30);
    TakePart[] strings = new TakePart[3];
    for (int s = 0; s < 3; s++) {
      int string = s;
      strings[s] =
          part(
              1,
              s + 1,
              "Guitar",
              IntStream.range(0, 30).filter(i -> i % 3 == string).mapToObj(tune::get).toList());
    }
    assertSame(tune, LineChoice.byItself(take(strings)).line());
    assertEquals(
        10, LineChoice.of(take(strings), Optional.empty(), OptionalInt.of(2)).line().size());
  }

  @Test
  void a_track_can_be_named_by_number_name_or_part_of_it() {
    RecordedTake take = take(part(2, 1, "Tenor solo", line(52, 30)), CHORDS, BASS);
    assertEquals(3, named(take, "3").part().track());
    assertEquals(3, named(take, "piano").part().track());
    assertEquals(2, named(take, "tenor").part().track());
    assertEquals(
        "The line is track 3 “Piano” (channel 2, 12 notes): you named it.",
        named(take, "3").reason());
  }

  @Test
  void a_channel_can_be_named_even_the_drums() {
    RecordedTake take = take(part(2, 1, "", line(52, 30)), DRUMS);
    assertEquals(DRUMS, LineChoice.of(take, Optional.empty(), OptionalInt.of(10)).part());
  }

  @Test
  void a_name_that_is_not_there_is_told_with_those_that_are() {
    RecordedTake take = take(part(2, 1, "Tenor solo", line(52, 30)), CHORDS);
    assertEquals(
        "take.mid has no notes in track “alto”; choose one of these: track 2 “Tenor solo” (channel"
            + " 1, 30 notes), track 3 “Piano” (channel 2, 12 notes).",
        assertThrows(MidiFileException.class, () -> named(take, "alto")).getMessage());
  }

  @Test
  void drums_alone_and_no_notes_at_all_are_told() {
    assertEquals(
        "take.mid holds percussion only (channel 10); give a file with a melody, or name --channel"
            + " 10 if those notes are one.",
        assertThrows(MidiFileException.class, () -> LineChoice.byItself(take(DRUMS))).getMessage());
    assertEquals(
        "take.mid holds no notes; give a file in which somebody plays.",
        assertThrows(MidiFileException.class, () -> LineChoice.byItself(take())).getMessage());
  }

  private static void assertSame(List<PlayedNote> expected, List<PlayedNote> line) {
    assertEquals(
        expected.stream().map(PlayedNote::pitch).toList(),
        line.stream().map(PlayedNote::pitch).toList());
    for (int i = 0; i < line.size(); i++) {
      assertEquals(expected.get(i).onsetSeconds(), line.get(i).onsetSeconds(), 1e-9);
      assertEquals(expected.get(i).endSeconds(), line.get(i).endSeconds(), 1e-9);
    }
  }

  private static LineChoice named(RecordedTake take, String track) {
    return LineChoice.of(take, Optional.of(track), OptionalInt.empty());
  }

  static RecordedTake take(TakePart... parts) {
    return new RecordedTake(
        "take.mid",
        Optional.empty(),
        Arrays.asList(parts),
        TempoMap.steady(120),
        false,
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  private static TakePart part(int track, int channel, String name, List<PlayedNote> notes) {
    return new TakePart(track, channel, name, OptionalInt.empty(), notes, List.of());
  }

  private static List<PlayedNote> line(int around, int count) {
    return IntStream.range(0, count)
        .mapToObj(i -> PlayedNote.key(i * 0.5, 0.4, around + (i * 5) % 7 - 3, 80))
        .toList();
  }

  private static List<PlayedNote> chords() {
    return IntStream.range(0, 12)
        .mapToObj(
            i ->
                PlayedNote.key(
                    (double) (i - i % 3) * 2 / 3, 1.9, new int[] {60, 64, 67}[i % 3], 60))
        .toList();
  }
}
