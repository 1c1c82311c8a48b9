package holdfast.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.carry.Carrying;
import holdfast.carry.Habit;
import holdfast.carry.PitchRange;
import holdfast.carry.Question;
import holdfast.carry.Statement;
import holdfast.chart.ChartLibrary;
import holdfast.listening.keyboard.TestCable;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Player;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The ways of practising, live: a MIDI cable, the real backing, a clock that goes step by step. */
class PracticeTakeTest {

  private static final int LINE_CHANNEL = 3;
  private static final String IDEA = "G4/0.5 Bb4/0.5 C5/0.5 G4/1.5";

  @BeforeEach
  void plugIn() {
    TestCable.plugIn();
  }

  @AfterEach
  void pullOut() {
    TestCable.pullOut();
  }

  @Test
  void coach_and_student_share_the_chords_and_only_the_student_is_judged() throws Exception {
    Lesson lesson = lesson(Way.SWAP, Optional.of(IDEA), 1, 4);
    Stage stage =
        new Stage() {
          @Override
          public void passage(Passage passage) {
            super.passage(passage);
            if (passage.who() == Passage.Who.STUDENT) {
              hands(carried(lesson, passage));
            }
          }

          @Override
          public void coachSays(CoachLine line) {
            super.coachSays(line);
            // A student who plays along with the coach is not judged for it.
            hands(line.notes());
          }
        };

    PracticeTake take =
        stage.play(
            lesson,
            judged -> {
              assertEquals(2, judged.phrases().size(), judged.phrases().toString());
              judged.phrases().forEach(phrase -> assertTrue(phrase.carries()));
            });

    assertEquals(List.of(0.0, 8.0), starts(stage));
    assertEquals(2, take.outcomes().size());
    assertTrue(take.outcomes().stream().allMatch(Outcome::reached), take.outcomes().toString());
    assertEquals("Over 2 of 2 chords of yours the idea was kept and sat.", take.summary());
    List<Integer> sounded =
        stage.out.sent().stream()
            .filter(m -> m.getCommand() == ShortMessage.NOTE_ON && m.getChannel() == LINE_CHANNEL)
            .map(ShortMessage::getData1)
            .toList();
    List<Integer> said =
        stage.lines.stream().flatMap(l -> l.notes().stream()).map(Note::pitch).toList();
    assertEquals(said, sounded, "what the coach says is what sounds");
    assertEquals(said.size(), take.performance().line().size(), "and is kept with the take");
  }

  @Test
  void what_the_student_sings_back_is_held_against_what_the_coach_said() throws Exception {
    Lesson lesson = lesson(Way.SING_BACK, Optional.empty(), 1, 3);
    Stage stage =
        new Stage() {
          private int turn;

          @Override
          public void passage(Passage passage) {
            super.passage(passage);
            if (passages.size() == 1) {
              hands(later(IdeaNotation.parse(IDEA), passage.startBeat()));
            }
          }

          @Override
          public void coachSays(CoachLine line) {
            super.coachSays(line);
            double away = line.passage().endBeat() - line.passage().startBeat();
            List<Note> back = new ArrayList<>();
            for (Note note : line.notes()) {
              boolean slips = turn == 1 && back.isEmpty();
              back.add(
                  new Note(
                      note.onsetBeats() + away,
                      note.durationBeats(),
                      note.pitch() - 12 + (slips ? -1 : 0)));
            }
            turn++;
            hands(back);
          }
        };

    PracticeTake take = stage.play(lesson);

    List<String> said =
        take.outcomes().stream()
            .map(o -> o.sentence() + o.phrase().map(p -> " " + p.notes()).orElse(""))
            .toList();
    assertTrue(
        said.get(0).startsWith("That is your idea; let us see where it goes."), said.toString());
    assertEquals(2, stage.lines.size(), said + " " + stage.notices);
    assertTrue(said.get(2).startsWith("Sung back over C7 in another octave"), said.toString());
    assertTrue(said.get(3).startsWith("Nearly over Fm7"), said.toString());
    assertTrue(said.get(3).contains("note 1 was"), said.toString());
  }

  @Test
  void a_loop_grows_faster_with_success_and_the_verdicts_follow_the_new_tempo() throws Exception {
    Exercise exercise = exercise(Way.CLIMB, Optional.of(IDEA), 1, 2, 72);
    Lesson lesson =
        Lesson.of(
            new Exercise(
                exercise.way(),
                exercise.chart(),
                exercise.feel(),
                exercise.tempo(),
                exercise.bars(),
                exercise.range(),
                exercise.idea(),
                1,
                OptionalInt.of(3)),
            1);
    Stage stage =
        new Stage() {
          @Override
          public void passage(Passage passage) {
            super.passage(passage);
            for (double bar = 0; bar < 2; bar++) {
              hands(carried(lesson, passage.startBeat() + 4 * bar));
            }
          }
        };

    PracticeTake take =
        stage.play(
            lesson,
            judged -> {
              assertEquals(6, judged.phrases().size());
              assertTrue(judged.setting().beats().points().size() > 1, "the tempo has changed");
              judged.phrases().forEach(p -> assertTrue(p.carries(), p.why().toString()));
            });

    List<String> said = take.outcomes().stream().map(Outcome::sentence).toList();
    assertEquals("That round held; a little faster now, 76.", said.get(0), said.toString());
    assertFalse(said.stream().anyMatch(s -> s.contains("slipped")), said.toString());
  }

  @Test
  void after_a_head_start_the_rest_is_the_students_and_silence_is_told() throws Exception {
    Lesson lesson = lesson(Way.HEAD_START, Optional.of(IDEA), 1, 3);
    Stage stage =
        new Stage() {
          @Override
          public void passage(Passage passage) {
            super.passage(passage);
            if (passage.startBeat() == 4) {
              hands(carried(lesson, passage));
            }
          }
        };

    PracticeTake take = stage.play(lesson);

    assertEquals(List.of(0.0), starts(stage));
    List<String> said = take.outcomes().stream().map(Outcome::sentence).toList();
    assertEquals(
        List.of(
            "Kept over C7, and it sits.",
            "Over Fm7 I heard nothing; come in again at the next chord."),
        said);
  }

  @Test
  void an_idea_is_taken_through_the_keys_and_each_key_is_told() throws Exception {
    Lesson lesson = lesson(Way.TWELVE_KEYS, Optional.of(IDEA), 1, 1);
    Stage stage =
        new Stage() {
          @Override
          public void passage(Passage passage) {
            super.passage(passage);
            if (passage.who() == Passage.Who.STUDENT) {
              hands(carried(lesson, passage));
            }
          }
        };

    PracticeTake take = stage.play(lesson);

    assertEquals(11, take.outcomes().size(), "the coach has the first key");
    assertTrue(take.outcomes().stream().allMatch(Outcome::reached), take.outcomes().toString());
  }

  @Test
  void a_class_hears_two_statements_and_guesses_the_third() throws Exception {
    Lesson lesson = lesson(Way.GUESS_NEXT, Optional.of(IDEA), 1, 6);
    Stage stage =
        new Stage() {
          @Override
          public void passage(Passage passage) {
            super.passage(passage);
            if (passage.who() == Passage.Who.STUDENT && passage.startBeat() < 16) {
              // As the coach goes on from what it said last.
              Statement before =
                  new Statement(
                      later(lines.get(1).notes(), -lines.get(1).passage().startBeat()),
                      Optional.of(lines.get(1).passage().chords().get(0).harmony()));
              hands(carried(lesson, before, passage.startBeat()));
            } else if (passage.who() == Passage.Who.STUDENT) {
              hands(later(IdeaNotation.parse("B4 Gb4/0.5 D5/0.5 A4"), passage.startBeat()));
            }
          }
        };

    PracticeTake take = stage.play(lesson);

    List<String> said = take.outcomes().stream().map(Outcome::sentence).toList();
    assertEquals(2, said.size(), said.toString());
    assertTrue(said.get(0).startsWith("Guessed over Fm7"), said.toString());
    assertFalse(take.outcomes().get(1).reached(), said.toString());
    assertEquals(6, stage.lines.size(), "two statements and the answer, twice");
    assertEquals("Fm7", stage.lines.get(2).passage().chord(), "told over the same chord");
  }

  private static List<Double> starts(Stage stage) {
    return stage.lines.stream().map(line -> line.passage().startBeat()).toList();
  }

  private static Lesson lesson(Way way, Optional<String> idea, int first, int last) {
    return Lesson.of(exercise(way, idea, first, last, 60), 1);
  }

  private static Exercise exercise(
      Way way, Optional<String> idea, int first, int last, double tempo) {
    return new Exercise(
        way,
        ChartLibrary.open("lantern-turn"),
        Feel.PLAIN,
        tempo,
        Optional.of(new BarRange(first, last)),
        PitchRange.ANY,
        idea.map(IdeaNotation::parse),
        1,
        OptionalInt.of(1));
  }

  /** The idea as a good student would say it in this passage. */
  private static List<Note> carried(Lesson lesson, Passage passage) {
    return carried(lesson, passage.startBeat());
  }

  private static List<Note> carried(Lesson lesson, double start) {
    return carried(lesson, lesson.idea().orElseThrow(), start);
  }

  private static List<Note> carried(Lesson lesson, Statement before, double start) {
    Statement idea = lesson.idea().orElseThrow();
    Question question =
        new Question(
            idea,
            before,
            lesson.setting(Player.KEYBOARD).changes(),
            start,
            lesson.setting(Player.KEYBOARD).metre(),
            PitchRange.ANY,
            Habit.UNKNOWN);
    return Carrying.choices(question).get(0).placedAt(start);
  }

  private static List<Note> later(List<Note> notes, double beats) {
    return notes.stream()
        .map(n -> new Note(n.onsetBeats() + beats, n.durationBeats(), n.pitch()))
        .toList();
  }
}
