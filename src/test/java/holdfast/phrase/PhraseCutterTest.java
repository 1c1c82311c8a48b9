package holdfast.phrase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.Heard;
import holdfast.listening.PlayEvent.NoteOff;
import holdfast.listening.PlayEvent.NoteOn;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PhraseCutterTest {

  private static final TempoMap SIXTY = TempoMap.steady(60);

  /** Five notes of the trade tables' base motif: 0.5 0.5 1 0.5 1.5 beats. */
  private static final List<Note> IDEA =
      List.of(
          new Note(0, 0.5, 67),
          new Note(0.5, 0.5, 69),
          new Note(1, 1, 72),
          new Note(2, 0.5, 69),
          new Note(2.5, 1.5, 64));

  /** Notes played one after the other, each as {onset, duration} in seconds. */
  private static List<PlayedNote> line(double[]... notes) {
    List<PlayedNote> line = new ArrayList<>();
    for (double[] n : notes) {
      line.add(PlayedNote.key(n[0], n[1], 60 + line.size() % 5, 80));
    }
    return line;
  }

  private static List<PlayedNote> play(List<Note> idea, double from, double legato) {
    return idea.stream()
        .map(n -> PlayedNote.key(from + n.onsetBeats(), n.durationBeats() * legato, n.pitch(), 80))
        .toList();
  }

  private static Heard on(double seconds, int pitch) {
    return new Heard(List.of(NoteOn.key(seconds, pitch, 80)), seconds);
  }

  private static Heard off(double seconds, int pitch) {
    return new Heard(List.of(new NoteOff(seconds, pitch)), seconds);
  }

  private static List<Integer> firsts(List<Phrase> phrases) {
    return phrases.stream().map(Phrase::firstNote).toList();
  }

  private static List<Phrase> free(List<PlayedNote> notes) {
    return PhraseCutter.cut(notes, SIXTY, Optional.empty());
  }

  private static List<Phrase> carrying(List<Note> idea, List<PlayedNote> notes) {
    return PhraseCutter.cut(notes, SIXTY, Optional.of(idea));
  }

  @Test
  void a_rest_of_four_tenths_ends_a_phrase_and_one_of_a_tenth_does_not() {
    List<PlayedNote> notes =
        line(
            new double[] {0, 0.2},
            new double[] {0.3, 0.2},
            new double[] {0.5, 0.2},
            new double[] {1.1, 0.2},
            new double[] {1.3, 0.2});
    assertEquals(List.of(0, 3), firsts(free(notes)));
  }

  @Test
  void the_verdict_comes_within_thirty_five_hundredths_of_the_note_off() {
    List<Phrase> phrases =
        free(line(new double[] {0, 0.2}, new double[] {0.25, 0.2}, new double[] {3, 0.5}));
    assertEquals(Ending.REST, phrases.get(0).ending());
    double after = phrases.get(0).decidedSeconds() - phrases.get(0).endSeconds();
    assertTrue(after > 0.15 && after <= 0.35, "decided " + after + " s after the note-off");
  }

  @Test
  void nothing_is_decided_before_the_silence_was_heard() {
    PhraseCutter cutter = new PhraseCutter(SIXTY);
    PlayedNote note = PlayedNote.key(1, 0.5, 60, 80);
    assertEquals(List.of(), cutter.hear(on(1, 60)));
    assertEquals(1, cutter.notesUnderWay());
    assertEquals(List.of(), cutter.hear(off(1.5, 60)));
    assertEquals(List.of(), cutter.heardUpTo(1.6));
    List<Phrase> closed = cutter.heardUpTo(2);
    assertEquals(List.of(note), closed.get(0).notes());
    assertEquals(0, cutter.notesUnderWay());
    assertEquals(List.of(), cutter.heardUpTo(100));
  }

  @Test
  void after_a_long_note_less_silence_is_needed_than_after_a_short_one() {
    double[][] eighths = {{0, 0.16}, {0.17, 0.16}, {0.34, 0.16}, {0.51, 0.16}, {0.68, 0.16}};
    List<PlayedNote> held = new ArrayList<>(line(eighths));
    held.add(PlayedNote.key(0.85, 0.9, 65, 80));
    held.add(PlayedNote.key(1.98, 0.16, 60, 80));
    assertEquals(List.of(0, 6), firsts(free(held)));
    List<PlayedNote> shortNote = new ArrayList<>(line(eighths));
    shortNote.add(PlayedNote.key(0.85, 0.16, 65, 80));
    shortNote.add(PlayedNote.key(1.24, 0.16, 60, 80));
    assertEquals(List.of(0), firsts(free(shortNote)));
  }

  @Test
  void a_detached_line_is_one_phrase_where_a_bare_rest_of_three_tenths_would_cut_every_note() {
    List<PlayedNote> notes = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      notes.add(PlayedNote.key(i * 0.6, 0.28, 60 + i, 80));
    }
    assertEquals(List.of(0), firsts(free(notes)));
  }

  @Test
  void a_rest_inside_the_idea_does_not_cut_a_restatement() {
    List<Note> withRest =
        List.of(new Note(0, 0.5, 60), new Note(0.5, 0.5, 62), new Note(1.5, 1, 64));
    List<PlayedNote> notes = new ArrayList<>(play(withRest, 0, 0.9));
    notes.addAll(play(withRest, 4, 0.9));
    assertEquals(List.of(0, 2, 3, 5), firsts(free(notes)));
    assertEquals(List.of(0, 3), firsts(carrying(withRest, notes)));
  }

  @Test
  void where_the_note_that_the_idea_owes_does_not_come_the_phrase_is_over_soon_after_it_was_due() {
    List<Note> withRest =
        List.of(new Note(0, 0.5, 60), new Note(0.5, 0.5, 62), new Note(1.5, 1, 64));
    List<PlayedNote> notes = new ArrayList<>(play(withRest.subList(0, 2), 0, 0.9));
    notes.addAll(play(withRest, 4, 0.9));
    List<Phrase> phrases = carrying(withRest, notes);
    assertEquals(List.of(0, 2), firsts(phrases));
    double due = 1.5;
    assertTrue(phrases.get(0).decidedSeconds() > due, "the note was still to come");
    assertTrue(phrases.get(0).decidedSeconds() < due + 0.35, "then it was overdue");
  }

  @Test
  void two_restatements_that_join_without_a_rest_are_two_phrases() {
    List<PlayedNote> notes = new ArrayList<>(play(IDEA, 0, 1));
    notes.addAll(play(IDEA, 4, 1));
    List<Phrase> phrases = carrying(IDEA, notes);
    assertEquals(List.of(0, 5), firsts(phrases));
    assertEquals(Ending.RESTART, phrases.get(0).ending());
    assertEquals(4, phrases.get(0).decidedSeconds(), "known at the next note-on");
    assertEquals(List.of(0), firsts(free(notes)), "without the idea there is nothing to go by");
  }

  @Test
  void an_extension_that_follows_the_idea_at_once_stays_in_its_phrase() {
    List<PlayedNote> notes = new ArrayList<>(play(IDEA.subList(0, 4), 0, 0.95));
    notes.add(PlayedNote.key(2.5, 0.45, 64, 80));
    notes.add(PlayedNote.key(3, 0.45, 62, 80));
    notes.add(PlayedNote.key(3.5, 1.4, 60, 80));
    assertEquals(List.of(0), firsts(carrying(IDEA, notes)));
  }

  @Test
  void the_idea_may_be_learnt_in_the_middle_of_a_take() {
    PhraseCutter cutter = new PhraseCutter(SIXTY);
    List<Phrase> out = new ArrayList<>();
    List<PlayedNote> first = play(IDEA, 0, 1);
    first.forEach(
        n -> {
          out.addAll(cutter.hear(on(n.onsetSeconds(), n.pitch())));
          out.addAll(cutter.hear(off(n.endSeconds(), n.pitch())));
        });
    cutter.follow(IDEA);
    out.addAll(cutter.hear(on(4, 67)));
    assertEquals(List.of(0), firsts(out));
    assertEquals(Ending.RESTART, out.get(0).ending());
  }

  @Test
  void a_note_that_overlaps_the_next_belongs_where_it_began_and_is_waited_for() {
    PhraseCutter cutter = new PhraseCutter(SIXTY);
    cutter.follow(IDEA);
    List<PlayedNote> first = play(IDEA, 0, 1);
    List<Phrase> out = new ArrayList<>();
    for (PlayedNote n : first.subList(0, 4)) {
      out.addAll(cutter.hear(on(n.onsetSeconds(), n.pitch())));
      out.addAll(cutter.hear(off(n.endSeconds(), n.pitch())));
    }
    out.addAll(cutter.hear(on(2.5, 64)));
    out.addAll(cutter.hear(on(4, 67)));
    assertEquals(List.of(), out, "its last note still sounds");
    out.addAll(cutter.hear(off(4.05, 64)));
    assertEquals(List.of(0), firsts(out));
    assertEquals(4, out.get(0).decidedSeconds());
    assertEquals(5, out.get(0).notes().size());
  }

  @Test
  void a_note_from_before_what_was_heard_is_refused() {
    PhraseCutter cutter = new PhraseCutter(SIXTY);
    cutter.heardUpTo(5);
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> cutter.hear(on(4.5, 60)));
    assertEquals(
        "notes must come in order of time: everything before 5.0 s has been heard, and now comes"
            + " 4.5 s",
        refused.getMessage());
  }

  @Test
  void an_end_without_a_start_does_no_harm() {
    PhraseCutter cutter = new PhraseCutter(SIXTY);
    assertEquals(List.of(), cutter.hear(off(1.5, 60)));
    cutter.hear(on(2, 60));
    cutter.hear(off(2.2, 61));
    cutter.hear(off(2.5, 60));
    assertEquals(List.of(PlayedNote.key(2, 0.5, 60, 80)), cutter.finish().get(0).notes());
  }

  @Test
  void a_take_cannot_finish_while_a_note_sounds() {
    PhraseCutter cutter = new PhraseCutter(SIXTY);
    cutter.hear(on(1, 60));
    IllegalStateException refused = assertThrows(IllegalStateException.class, cutter::finish);
    assertEquals("end every note before the take ends; sounding: 1", refused.getMessage());
  }

  @Test
  void an_idea_of_one_note_cannot_be_followed() {
    PhraseCutter cutter = new PhraseCutter(SIXTY);
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class, () -> cutter.follow(List.of(new Note(0, 1, 60))));
    assertEquals("an idea to follow has 2 to 64 notes, not 1", refused.getMessage());
  }
}
