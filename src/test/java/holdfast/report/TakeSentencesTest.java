package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.ChartLibrary;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.motif.Treatment;
import holdfast.practice.Plan;
import holdfast.practice.Step;
import holdfast.session.Coach;
import holdfast.session.DemoStudent;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Place;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What people play and what they are told of it when it is over, whole takes. */
class TakeSentencesTest {

  private static final String IDEA = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1";
  private static final Setting SETTING =
      Setting.of(
          ChartLibrary.open("Paper Boats"), TempoMap.steady(56), Player.KEYBOARD, Optional.empty());

  private final List<Note> line = new ArrayList<>();

  private void play(double beat, String notes) {
    for (Note note : IdeaNotation.parse(notes)) {
      line.add(new Note(beat + note.onsetBeats(), note.durationBeats(), note.pitch()));
    }
  }

  private JudgedTake heard() {
    return Coach.judge(SETTING, new DemoStudent(7).play(line, SETTING.beats()), phrase -> {});
  }

  @Test
  void a_second_idea_that_takes_over_is_told_with_its_bar() {
    for (int bar = 0; bar < 8; bar++) {
      play(4 * bar, bar < 4 ? IDEA : "F4/1.5 G4/0.25 A4/0.25 C5/0.5 Bb4/0.5");
    }
    assertTrue(
        TakeSentences.inHindsight(heard()).contains("From bar 5 on you carried a new idea."),
        () -> TakeSentences.inHindsight(heard()).toString());
  }

  @Test
  void entries_a_beat_early_and_a_beat_late_are_the_idea_and_say_where_they_stand() {
    play(0, IDEA);
    play(7, IDEA);
    play(13, IDEA);
    List<JudgedPhrase> phrases = heard().phrases();
    assertEquals(3, phrases.size());
    assertEquals(Treatment.LITERAL, phrases.get(1).verdict().treatment());
    assertEquals(Optional.of("a beat earlier in the bar"), phrases.get(1).verdict().placeInBar());
    assertEquals(Treatment.LITERAL, phrases.get(2).verdict().treatment());
    assertEquals(Optional.of("a beat later in the bar"), phrases.get(2).verdict().placeInBar());
  }

  @Test
  void a_pick_up_belongs_to_the_bar_it_leads_into_and_is_weighed_over_that_bars_chord() {
    String upbeat = "A4/0.5 C5/1 A4/0.5 G4/0.5 F4/1";
    play(3.5, upbeat);
    play(11.5, upbeat);
    JudgedPhrase second = heard().phrases().get(1);
    assertEquals(new Place(1, 4), second.place());
    assertEquals("C7", second.mainChord().harmony().display());
    assertEquals(Treatment.LITERAL, second.verdict().treatment());
    assertEquals(Optional.empty(), second.verdict().placeInBar());
  }

  @Test
  void a_phrase_that_slows_down_towards_its_end_is_the_idea_still() {
    play(0, IDEA);
    double[] slowing = {0, 0.53, 1.12, 2.28, 2.92};
    int[] pitches = {72, 69, 67, 69, 65};
    for (int i = 0; i < slowing.length; i++) {
      double length = i < 4 ? slowing[i + 1] - slowing[i] : 1;
      line.add(new Note(4 + slowing[i], length, pitches[i]));
    }
    assertEquals(Treatment.LITERAL, heard().phrases().get(1).verdict().treatment());
  }

  @Test
  void the_sentence_and_the_plan_name_the_same_bars() {
    for (int bar = 0; bar < 8; bar++) {
      play(4 * bar, bar == 2 || bar == 5 ? "F4/0.5 G4/0.5 A4/0.5 Bb4/0.5 C5/0.5 D5/0.5" : IDEA);
    }
    JudgedTake take = heard();
    Step first = Plan.after(take, "Paper Boats").steps().get(0);
    String bars = first.bars().orElseThrow().words();
    String next = TakeSentences.of(take).get(2);
    assertTrue(next.startsWith("Try next: go round " + bars + " slowly"), next + " " + bars);
    assertTrue(first.what().contains(bars), first.what());
  }

  @Test
  void where_nothing_was_let_go_the_sentence_does_not_speak_of_the_idea_itself() {
    // The idea rubs where it is stated first; that is the player's own choice.
    for (int bar = 0; bar < 2; bar++) {
      play(4 * bar, "F#5/0.5 D#5/0.5 C#5 D#5/0.5 B4/1");
    }
    for (String sentence : TakeSentences.of(heard())) {
      assertTrue(!sentence.contains("bar 1 "), sentence);
    }
  }

  @Test
  void half_an_hour_of_second_thoughts_leaves_the_top_of_the_page_short() {
    JudgedTake take = Takes.long_(30);
    assertTrue(take.afterthoughts().size() > 20, "there are many");
    List<String> told = TakeSentences.foremostInHindsight(take);
    assertEquals(4, told.size(), told.toString());
    assertTrue(
        told.get(3).startsWith("There were " + (take.afterthoughts().size() - 3) + " more"),
        told.get(3));
  }

  @Test
  void each_chorus_is_told_in_words_how_it_sits() {
    for (int bar = 0; bar < 16; bar++) {
      boolean second = bar >= 8;
      play(4 * bar, second ? "F#5/0.5 D#5/0.5 C#5 D#5/0.5 B4/1" : IDEA);
    }
    List<String> lines = new JudgementText(SETTING).close(heard());
    String first = chorus(1, lines);
    String second = chorus(2, lines);
    assertTrue(first.matches("chorus 1: 7 of 7 carried, \\D+"), first);
    assertTrue(second.matches("chorus 2: 8 of 8 carried, \\D+"), second);
    // A semitone off the key all through: the words must differ, and hold no figure.
    assertTrue(!first.split(", ", 2)[1].equals(second.split(", ", 2)[1]), first + second);
  }

  private static String chorus(int number, List<String> lines) {
    return lines.stream().filter(l -> l.startsWith("chorus " + number)).findFirst().orElseThrow();
  }
}
