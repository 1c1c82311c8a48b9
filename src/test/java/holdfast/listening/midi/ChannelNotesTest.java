package holdfast.listening.midi;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.listening.PlayedNote;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * One channel's messages and the notes they mean. Bend: 14 bits about 8192, two semitones each way
 * unless registered parameter 0 says otherwise (MIDI 1.0 Detailed Specification, MIDI Association).
 */
class ChannelNotesTest {

  private final List<PlayedNote> notes = new ArrayList<>();
  private final List<Boolean> pedals = new ArrayList<>();
  private final ChannelNotes channel =
      new ChannelNotes(
          new ChannelNotes.Hearer() {
            @Override
            public void ended(int key, PlayedNote note) {
              notes.add(note);
            }

            @Override
            public void pedal(double seconds, boolean down) {
              pedals.add(down);
            }
          });

  @Test
  void the_pedal_does_not_lengthen_a_note() {
    channel.message(0, ChannelNotes.CONTROL, 64, 127);
    channel.message(0, ChannelNotes.NOTE_ON, 60, 80);
    channel.message(1, ChannelNotes.NOTE_OFF, 60, 0);
    channel.message(5, ChannelNotes.CONTROL, 64, 0);
    assertEquals(List.of(PlayedNote.key(0, 1, 60, 80)), notes);
    assertEquals(List.of(true, false), pedals);
  }

  @Test
  void a_note_on_of_velocity_zero_is_a_note_off() {
    channel.message(0, ChannelNotes.NOTE_ON, 60, 80);
    channel.message(1, ChannelNotes.NOTE_ON, 60, 0);
    assertEquals(List.of(PlayedNote.key(0, 1, 60, 80)), notes);
  }

  @Test
  void a_key_struck_again_ends_its_earlier_note() {
    channel.message(0, ChannelNotes.NOTE_ON, 60, 80);
    channel.message(1, ChannelNotes.NOTE_ON, 60, 90);
    channel.message(2, ChannelNotes.NOTE_OFF, 60, 0);
    channel.message(3, ChannelNotes.NOTE_OFF, 60, 0);
    assertEquals(List.of(PlayedNote.key(0, 1, 60, 80), PlayedNote.key(1, 1, 60, 90)), notes);
  }

  @Test
  void the_late_note_off_of_the_stroke_before_does_not_end_the_new_note() {
    channel.message(0, ChannelNotes.NOTE_ON, 60, 80);
    channel.message(1, ChannelNotes.NOTE_ON, 60, 90);
    channel.message(1.05, ChannelNotes.NOTE_OFF, 60, 0);
    channel.message(2, ChannelNotes.NOTE_OFF, 60, 0);
    assertEquals(List.of(PlayedNote.key(0, 1, 60, 80), PlayedNote.key(1, 1, 60, 90)), notes);
  }

  @Test
  void the_same_note_from_two_sources_is_one_note() {
    channel.message(0, ChannelNotes.NOTE_ON, 60, 80);
    channel.message(0, ChannelNotes.NOTE_ON, 60, 90);
    channel.message(1, ChannelNotes.NOTE_OFF, 60, 0);
    channel.message(1, ChannelNotes.NOTE_OFF, 60, 0);
    assertEquals(List.of(PlayedNote.key(0, 1, 60, 90)), notes);
  }

  @Test
  void a_scooped_note_is_where_the_bend_settles() {
    bend(0, -8192);
    channel.message(0, ChannelNotes.NOTE_ON, 62, 80);
    bend(0.05, -4096);
    bend(0.1, 0);
    channel.message(1, ChannelNotes.NOTE_OFF, 62, 0);
    assertEquals(List.of(PlayedNote.key(0, 1, 62, 80)), notes);
  }

  @Test
  void a_fall_at_the_end_leaves_the_note_where_it_was() {
    channel.message(0, ChannelNotes.NOTE_ON, 62, 80);
    bend(0.8, -4096);
    bend(0.9, -8192);
    channel.message(1, ChannelNotes.NOTE_OFF, 62, 0);
    assertEquals(List.of(PlayedNote.key(0, 1, 62, 80)), notes);
  }

  @Test
  void a_note_bent_up_a_whole_tone_is_that_tone() {
    channel.message(0, ChannelNotes.NOTE_ON, 62, 80);
    bend(0.1, 4096);
    bend(0.2, 8191);
    channel.message(1, ChannelNotes.NOTE_OFF, 62, 0);
    assertEquals(64, notes.get(0).pitch());
    assertEquals(0, notes.get(0).cents(), 0.1);
  }

  @Test
  void vibrato_leaves_the_note_in_its_middle() {
    channel.message(0, ChannelNotes.NOTE_ON, 69, 80);
    for (int i = 0; i < 100; i++) {
      bend(i * 0.01, (int) (1000 * Math.sin(i * 0.37)));
    }
    channel.message(1, ChannelNotes.NOTE_OFF, 69, 0);
    assertEquals(69, notes.get(0).pitch());
    assertEquals(0, notes.get(0).cents(), 3);
  }

  @Test
  void a_quarter_tone_is_told_in_cents() {
    bend(0, 2047);
    channel.message(0, ChannelNotes.NOTE_ON, 60, 80);
    channel.message(1, ChannelNotes.NOTE_OFF, 60, 0);
    assertEquals(60, notes.get(0).pitch());
    assertEquals(50, notes.get(0).cents(), 0.1);
  }

  @Test
  void the_bend_range_is_the_registered_parameters() {
    channel.message(0, ChannelNotes.CONTROL, 101, 0);
    channel.message(0, ChannelNotes.CONTROL, 100, 0);
    channel.message(0, ChannelNotes.CONTROL, 6, 12);
    bend(0, -4096);
    channel.message(0, ChannelNotes.NOTE_ON, 72, 80);
    channel.message(1, ChannelNotes.NOTE_OFF, 72, 0);
    assertEquals(66, notes.get(0).pitch());
    // Data entry after the null parameter changes nothing.
    channel.message(1, ChannelNotes.CONTROL, 101, 127);
    channel.message(1, ChannelNotes.CONTROL, 100, 127);
    channel.message(1, ChannelNotes.CONTROL, 6, 2);
    channel.message(2, ChannelNotes.NOTE_ON, 72, 80);
    channel.message(3, ChannelNotes.NOTE_OFF, 72, 0);
    assertEquals(66, notes.get(1).pitch());
  }

  @Test
  void aftertouch_and_other_controllers_do_no_harm() {
    channel.message(0, ChannelNotes.NOTE_ON, 60, 80);
    for (int i = 0; i < 10_000; i++) {
      channel.message(i * 1e-4, 0xA0, 60, i % 128);
      channel.message(i * 1e-4, 0xD0, i % 128, 0);
      channel.message(i * 1e-4, ChannelNotes.CONTROL, 1, i % 128);
    }
    channel.message(1, ChannelNotes.NOTE_OFF, 60, 0);
    assertEquals(List.of(PlayedNote.key(0, 1, 60, 80)), notes);
  }

  private void bend(double seconds, int value) {
    int wheel = value + 8192;
    channel.message(seconds, ChannelNotes.PITCH_BEND, wheel & 0x7F, wheel >> 7);
  }
}
