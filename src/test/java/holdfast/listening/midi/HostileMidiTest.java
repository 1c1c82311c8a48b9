package holdfast.listening.midi;

import static holdfast.listening.midi.HandMade.bytes;
import static holdfast.listening.midi.HandMade.chunk;
import static holdfast.listening.midi.HandMade.control;
import static holdfast.listening.midi.HandMade.file;
import static holdfast.listening.midi.HandMade.join;
import static holdfast.listening.midi.HandMade.marker;
import static holdfast.listening.midi.HandMade.name;
import static holdfast.listening.midi.HandMade.off;
import static holdfast.listening.midi.HandMade.on;
import static holdfast.listening.midi.HandMade.tempo;
import static holdfast.listening.midi.HandMade.text;
import static holdfast.listening.midi.HandMade.time;
import static holdfast.listening.midi.HandMade.track;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayedNote;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are broken, lie or mean harm: one clear sentence, or the notes that are there. */
class HostileMidiTest {

  @TempDir Path folder;

  private static final byte[] ONE_NOTE = track(on(0, 1, 60, 80), off(480, 1, 60));

  @Test
  void an_empty_file_is_told() {
    refused("x.mid is empty; record or export the take again.", new byte[0]);
  }

  @Test
  void a_missing_file_is_told() {
    Path missing = folder.resolve("no.mid");
    MidiFileException e = assertThrows(MidiFileException.class, () -> MidiTakeFile.read(missing));
    assertEquals(missing + " is not there; check its name and folder.", e.getMessage());
  }

  @Test
  void a_folder_is_told() {
    MidiFileException e = assertThrows(MidiFileException.class, () -> MidiTakeFile.read(folder));
    assertEquals(folder + " is a folder; give the MIDI file of one take.", e.getMessage());
  }

  @Test
  void a_file_of_a_hundred_megabytes_is_refused_by_its_length() throws IOException {
    Path huge = folder.resolve("huge.mid");
    try (var file = new java.io.RandomAccessFile(huge.toFile(), "rw")) {
      file.setLength(100 << 20);
    }
    MidiFileException e = assertThrows(MidiFileException.class, () -> MidiTakeFile.read(huge));
    assertEquals(
        huge + " is longer than 16 MB, which no take is; give the MIDI file of one take.",
        e.getMessage());
  }

  @Test
  void something_that_is_no_midi_file_is_told() {
    refused(
        "x.mid, header, byte 0: this is not a Standard MIDI File, since it does not begin with"
            + " MThd; give a .mid file of the take.",
        "just some text".getBytes(StandardCharsets.US_ASCII));
    refused(
        "x.mid is a RIFF file of kind “WAVE”, not a MIDI file; give the MIDI file of the take.",
        "RIFF\0\0\0\0WAVEfmt ".getBytes(StandardCharsets.US_ASCII));
  }

  @Test
  void a_header_that_is_cut_off_is_told() {
    refused(
        "x.mid ends within its header, after 9 bytes; copy or export the file again.",
        Arrays.copyOf(file(0, 480, ONE_NOTE), 9));
  }

  @Test
  void format_two_is_told() {
    refused(
        "x.mid, header, byte 8: this is a MIDI file of format 2, whose tracks are separate pieces;"
            + " export the one piece as format 0 or 1.",
        file(2, 480, ONE_NOTE));
  }

  @Test
  void a_division_that_cannot_be_is_told() {
    refused(
        "x.mid, header, byte 12: the header says 0 ticks to a quarter note; export it again as a"
            + " Standard MIDI File of format 0 or 1.",
        file(0, 0, ONE_NOTE));
    refused(
        "x.mid, header, byte 12: the header counts 1 SMPTE frames a second, not 24, 25, 29 or 30;"
            + " export it again as a Standard MIDI File of format 0 or 1.",
        file(0, 0xFF28, ONE_NOTE));
  }

  @Test
  void no_tracks_is_told() {
    refused(
        "x.mid, header, byte 10: there is no track in the file; export it again as a Standard MIDI"
            + " File of format 0 or 1.",
        file(1, 480));
  }

  @Test
  void a_cut_within_an_event_is_refused_with_what_would_be_lost() {
    byte[] whole =
        file(0, 480, track(on(0, 1, 60, 80), off(480, 1, 60), on(0, 1, 62, 80), off(480, 1, 62)));
    refused(
        "x.mid, track 1, byte 37: the file is cut off here and should go on to byte 44 (1 note"
            + " of this track is whole); copy or export it again.",
        Arrays.copyOf(whole, 37));
  }

  @Test
  void a_cut_file_gives_its_whole_notes_to_who_asks_for_what_is_there() throws IOException {
    byte[] whole =
        file(0, 480, track(on(0, 1, 60, 80), off(480, 1, 60), on(0, 1, 62, 80), off(480, 1, 62)));
    Path cut = folder.resolve("cut.mid");
    Files.write(cut, Arrays.copyOf(whole, 33));
    RecordedTake take = MidiTakeFile.readWhatIsThere(cut);
    assertEquals(List.of(60), pitches(take));
    assertEquals(1, take.remarks().size());
  }

  @Test
  void a_file_of_which_only_the_end_mark_is_missing_is_plainly_usable() {
    byte[] whole = file(0, 480, ONE_NOTE);
    RecordedTake take = MidiTakeFile.read("x.mid", Arrays.copyOf(whole, whole.length - 4));
    assertEquals(List.of(60), pitches(take));
    assertEquals(
        List.of("the file is cut off in track 1 at byte 31; what is before it was read"),
        take.remarks());
  }

  @Test
  void a_track_without_an_end_mark_is_read() {
    byte[] events = join(on(0, 1, 60, 80), off(480, 1, 60));
    assertEquals(List.of(60), pitches(read(file(0, 480, chunk("MTrk", events.length, events)))));
  }

  @Test
  void a_wrong_track_count_is_mended_and_remarked_on() {
    RecordedTake take = read(file(1, 7, 480, ONE_NOTE, ONE_NOTE));
    assertEquals(List.of(60, 60), pitches(take));
    assertEquals(
        List.of("the header promises 7 tracks and the file holds 2, which were read"),
        take.remarks());
  }

  @Test
  void unknown_chunks_and_a_longer_header_are_passed_over() {
    byte[] header = chunk("MThd", 8, bytes(0, 1, 0, 1, 1, 0xE0, 9, 9));
    byte[] strange = chunk("XFIH", 3, bytes(1, 2, 3));
    assertEquals(List.of(60), pitches(read(join(header, strange, ONE_NOTE, strange))));
  }

  @Test
  void rubbish_behind_the_tracks_is_remarked_on() {
    byte[] rubbish = chunk("JUNK", 1000, bytes(1, 2, 3));
    RecordedTake take = read(join(file(0, 480, ONE_NOTE), rubbish));
    assertEquals(List.of(60), pitches(take));
    assertEquals(1, take.remarks().size());
  }

  @Test
  void a_riff_wrapping_is_taken_off() {
    byte[] inside = file(0, 480, ONE_NOTE);
    byte[] other = join("LIST".getBytes(StandardCharsets.US_ASCII), bytes(3, 0, 0, 0, 1, 2, 3, 0));
    byte[] length = bytes(inside.length, 0, 0, 0);
    byte[] wrapped =
        join(
            "RIFF".getBytes(StandardCharsets.US_ASCII),
            bytes(0, 1, 0, 0),
            "RMID".getBytes(StandardCharsets.US_ASCII),
            other,
            "data".getBytes(StandardCharsets.US_ASCII),
            length,
            inside);
    assertEquals(List.of(60), pitches(read(wrapped)));
  }

  @Test
  void system_exclusive_messages_and_running_status_after_them_are_borne() {
    byte[] exclusive = join(time(10), bytes(0xF0), time(4), bytes(0x7E, 0x7F, 9, 0xF7));
    RecordedTake take =
        read(
            file(
                0,
                480,
                track(
                    on(0, 1, 60, 80),
                    exclusive,
                    join(time(470), bytes(60, 0)),
                    join(time(0), bytes(0xFE)),
                    on(0, 1, 64, 1),
                    off(1, 1, 64))));
    assertEquals(List.of(60, 64), pitches(take));
    assertEquals(0.5, take.parts().get(0).notes().get(0).durationSeconds(), 1e-9);
  }

  @Test
  void broken_messages_are_told_with_their_place() {
    refusedTrack(
        "x.mid, track 1, byte 22: there is data before any message; export the take again, or save"
            + " it anew from another program.",
        bytes(0, 60, 80));
    refusedTrack(
        "x.mid, track 1, byte 24: 0x90 stands where a message's data should be; export the take"
            + " again, or save it anew from another program.",
        bytes(0, 0x90, 0x90, 60, 80));
    refusedTrack(
        "x.mid, track 1, byte 22: the message 0xF4 has no place in a file; export the take again,"
            + " or save it anew from another program.",
        bytes(0, 0xF4));
    refusedTrack(
        "x.mid, track 1, byte 22: a time is written with more than four bytes; export the take"
            + " again, or save it anew from another program.",
        bytes(0xFF, 0xFF, 0xFF, 0xFF, 0x7F, 0x90, 60, 80));
  }

  @Test
  void an_event_that_runs_past_its_track_is_told() {
    byte[] events = bytes(0, 0xFF, 1, 0x8F, 0xFF, 0xFF, 0x7F, 'x');
    byte[] lying = join(file(0, 480, chunk("MTrk", events.length, events)), ONE_NOTE);
    refused(
        "x.mid, track 1, byte 22: the event here goes on past the end of its track; export the"
            + " take again, or save it anew from another program.",
        lying);
  }

  @Test
  void the_longest_times_there_are_do_no_harm() {
    int longest = 0x0FFFFFFF;
    byte[] wait = text(longest, 1, "");
    byte[] slow = tempo(0, 0xFFFFFF);
    refused(
        "x.mid, track 1, byte 50: a note here starts later than a whole day into the take; export"
            + " the take again, alone and from its start.",
        file(0, 1, track(slow, wait, wait, wait, on(0, 1, 60, 80))));
    // A last note that is held for an age ends after a day at the latest.
    RecordedTake take = read(file(0, 1, track(slow, on(0, 1, 60, 80), off(longest, 1, 60))));
    assertTrue(take.endSeconds() <= 24 * 3600);
  }

  @Test
  void lengths_that_lie_cost_no_memory() {
    // By the JDK's own reader this file of 28 bytes allocates 268 MB.
    byte[] lie =
        join(
            file(0, 96, new byte[0]),
            chunk("MTrk", 0x10000010, bytes(0, 0xF0, 0xFF, 0xFF, 0xFF, 0x7F)));
    long before = allocated();
    assertThrows(MidiFileException.class, () -> read(lie));
    assertTrue(allocated() - before < 5_000_000, "more than 5 MB for 28 bytes");
  }

  @Test
  void a_tempo_of_zero_is_left_out_and_remarked_on() {
    RecordedTake take = read(file(0, 480, track(tempo(0, 0), on(0, 1, 60, 80), off(480, 1, 60))));
    assertEquals(120, take.tempo().openingTempo(), 1e-9);
    assertEquals(List.of("track 1 names a tempo of 0, which was left out"), take.remarks());
  }

  @Test
  void text_cannot_steer_a_terminal_and_is_not_endless() {
    RecordedTake take =
        read(
            file(
                0,
                480,
                track(
                    name("\u001b[31mred\u0007"), marker(0, "x".repeat(100_000)),
                    on(0, 1, 60, 80), off(480, 1, 60))));
    assertEquals("[31mred", take.title().orElseThrow());
    assertEquals(200, take.marks().get(0).text().length());
  }

  @Test
  void text_in_windows_latin_letters_is_read() {
    byte[] latin = join(bytes(0, 0xFF, 3, 4), bytes('M', 0xE4, 'r', 'z'));
    assertEquals(
        "März",
        read(file(0, 480, track(latin, on(0, 1, 60, 80), off(9, 1, 60)))).title().orElseThrow());
  }

  @Test
  void notes_that_never_end_last_to_the_next_and_are_remarked_on() {
    RecordedTake take =
        read(
            file(
                0,
                480,
                track(
                    on(0, 1, 60, 80),
                    on(480, 1, 62, 80),
                    off(480, 1, 62),
                    on(0, 1, 64, 80),
                    text(960, 1, "end"))));
    List<PlayedNote> notes = take.parts().get(0).notes();
    assertEquals(List.of(60, 62, 64), pitches(take));
    assertEquals(0.5, notes.get(0).endSeconds(), 1e-9);
    assertEquals(2.0, notes.get(2).endSeconds(), 1e-9);
    assertEquals(
        List.of("2 notes of track 1, channel 1, never ended and last to the next note"),
        take.remarks());
  }

  @Test
  void all_notes_off_ends_notes() {
    RecordedTake take =
        read(file(0, 480, track(on(0, 1, 60, 80), control(480, 1, 123, 0), text(960, 1, "end"))));
    assertEquals(0.5, take.parts().get(0).notes().get(0).endSeconds(), 1e-9);
    assertEquals(List.of(), take.remarks());
  }

  @Test
  void any_change_of_a_few_bytes_gives_a_take_or_one_sentence() {
    byte[] good = SmfReference.example("format1");
    for (int seed = 0; seed < 20_000; seed++) {
      Random chance = new Random(seed);
      byte[] bad = good.clone();
      for (int i = chance.nextInt(4); i >= 0; i--) {
        bad[chance.nextInt(bad.length)] = (byte) chance.nextInt(256);
      }
      readOrOneSentence(
          chance.nextInt(4) == 0 ? Arrays.copyOf(bad, chance.nextInt(bad.length)) : bad);
    }
  }

  @Test
  void a_cut_at_any_byte_gives_a_take_or_one_sentence() {
    byte[] good = SmfReference.example("format1");
    for (int length = 0; length < good.length; length++) {
      readOrOneSentence(Arrays.copyOf(good, length));
    }
  }

  private static void readOrOneSentence(byte[] bytes) {
    try {
      RecordedTake take = read(bytes);
      for (TakePart part : take.parts()) {
        double onset = Double.NEGATIVE_INFINITY;
        for (PlayedNote note : part.notes()) {
          assertTrue(note.onsetSeconds() >= onset);
          onset = note.onsetSeconds();
        }
      }
    } catch (MidiFileException e) {
      assertTrue(e.getMessage().startsWith("x.mid"), e.getMessage());
      assertTrue(e.getMessage().endsWith("."), e.getMessage());
      assertTrue(e.getMessage().contains("; "), e.getMessage());
    }
  }

  private static long allocated() {
    return ((com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean())
        .getCurrentThreadAllocatedBytes();
  }

  private static void refusedTrack(String sentence, byte[] events) {
    refused(sentence, file(0, 480, track(events)));
  }

  private static void refused(String sentence, byte[] bytes) {
    assertEquals(sentence, assertThrows(MidiFileException.class, () -> read(bytes)).getMessage());
  }

  private static RecordedTake read(byte[] bytes) {
    return MidiTakeFile.read("x.mid", bytes);
  }

  private static List<Integer> pitches(RecordedTake take) {
    return take.parts().stream()
        .flatMap(part -> part.notes().stream())
        .map(PlayedNote::pitch)
        .toList();
  }
}
