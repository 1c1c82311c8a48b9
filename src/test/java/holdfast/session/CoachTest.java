package holdfast.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayedNote;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Family;
import holdfast.motif.Player;
import holdfast.motif.Treatment;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CoachTest {

  private static final DemoTake DEMO = DemoTake.shipped();

  private static Setting setting() {
    return Setting.of(
        DEMO.chart(), TempoMap.steady(DEMO.tempo()), Player.KEYBOARD, Optional.empty());
  }

  /** What is said while the take runs, phrase by phrase. */
  private static List<JudgedPhrase> saidLive(List<PlayedNote> played) {
    List<JudgedPhrase> said = new ArrayList<>();
    Coach.judge(setting(), played, said::add);
    return said;
  }

  private static List<PlayedNote> playing(String... bars) {
    List<Note> line = new ArrayList<>();
    for (int bar = 0; bar < bars.length; bar++) {
      for (Note note : IdeaNotation.parse(bars[bar])) {
        line.add(new Note(4 * bar + note.onsetBeats(), note.durationBeats(), note.pitch()));
      }
    }
    return new DemoStudent(7).play(line, TempoMap.steady(DEMO.tempo()));
  }

  @Test
  void an_idea_that_takes_over_is_told_when_the_take_is_over() {
    String first = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1";
    String second = "F4/1.5 G4/0.25 A4/0.25 C5/0.5 Bb4/0.5";
    JudgedTake take =
        Coach.judge(
            setting(),
            playing(first, first, first, second, second, second, second, second),
            phrase -> {});

    List<Afterthought> newIdeas =
        take.afterthoughts().stream().filter(t -> t.kind() == Afterthought.Kind.NEW_IDEA).toList();
    assertEquals(1, newIdeas.size(), take.afterthoughts().toString());
    assertEquals(new Place(1, 4), newIdeas.get(0).phrase().place());
    assertEquals(6, take.counts().carried());
  }

  @Test
  void an_idea_that_is_taken_back_after_a_rest_is_told_once() {
    String idea = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1";
    String other = "F4/1.5 G4/0.25 A4/0.25 C5/0.5 Bb4/0.5";
    JudgedTake take = Coach.judge(setting(), playing(idea, idea, other, idea, idea), phrase -> {});

    List<Afterthought> back =
        take.afterthoughts().stream()
            .filter(t -> t.kind() == Afterthought.Kind.TAKEN_BACK)
            .toList();
    assertEquals(1, back.size(), take.afterthoughts().toString());
    assertEquals(new Place(1, 4), back.get(0).phrase().place());
  }

  @Test
  void an_answer_is_told_where_it_answers() {
    String question = "C5/0.5 A4/0.5 G4 A4/0.5 G4/1";
    String answer = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1";
    JudgedTake take = Coach.judge(setting(), playing(question, answer), phrase -> {});

    assertTrue(
        take.afterthoughts().stream()
            .anyMatch(t -> t.kind() == Afterthought.Kind.ANSWER && t.phrase().place().bar() == 2),
        take.phrases().get(1)::toString);
  }

  @Test
  void what_a_listener_expected_is_known_of_every_phrase_but_the_idea() {
    String idea = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1";
    String other = "F3/1.5 D5/0.25 G3/0.25 C6/0.5 Bb3/0.5";
    JudgedTake take = Coach.judge(setting(), playing(idea, idea, idea, other), phrase -> {});

    assertTrue(take.phrases().get(0).expectation().isEmpty());
    assertTrue(take.phrases().get(1).expectation().orElseThrow().nearness() > 0.85);
    assertTrue(take.phrases().get(3).expectation().orElseThrow().brokeThread());
  }

  @Test
  void another_velocity_changes_nothing() {
    String idea = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1";
    List<PlayedNote> played = playing(idea, idea, "F4/1.5 G4/0.25 A4/0.25 C5/0.5 Bb4/0.5", idea);
    List<PlayedNote> soft =
        played.stream()
            .map(n -> PlayedNote.key(n.onsetSeconds(), n.durationSeconds(), n.pitch(), 12))
            .toList();

    assertEquals(
        saidLive(played).stream().map(JudgedPhrase::verdict).toList(),
        saidLive(soft).stream().map(JudgedPhrase::verdict).toList());
  }

  @Test
  void statements_that_join_without_a_breath_are_told_apart() {
    String idea = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1";
    String joined = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5 D5/0.5 Bb4/0.5 A4 Bb4/0.5 G4/1";
    JudgedTake take = Coach.judge(setting(), playing(idea, idea, joined), phrase -> {});

    assertEquals(List.of(5, 5, 5, 5), take.phrases().stream().map(p -> p.notes().size()).toList());
    assertEquals(3, take.counts().restated());
  }

  /** The demo take was written down before it was judged: what she does in each bar is known. */
  @Test
  void the_demo_take_is_heard_as_it_was_written() {
    JudgedTake take = Coach.judge(setting(), DEMO.played(), phrase -> {});

    List<Treatment> heard = take.phrases().stream().map(p -> p.verdict().treatment()).toList();
    assertEquals(
        List.of(
            Treatment.LITERAL,
            Treatment.LITERAL,
            Treatment.SEQUENCE,
            Treatment.SEQUENCE,
            Treatment.LITERAL,
            Treatment.NEW,
            Treatment.SEQUENCE,
            Treatment.LITERAL,
            Treatment.LITERAL,
            Treatment.SEQUENCE,
            Treatment.SEQUENCE,
            Treatment.FRAGMENT,
            Treatment.ORNAMENTED,
            Treatment.SEQUENCE,
            Treatment.SEQUENCE,
            Treatment.LITERAL),
        heard);
  }

  @Test
  void where_the_idea_was_let_go_is_counted_once_and_by_its_bar() {
    Counts counts = Coach.judge(setting(), DEMO.played(), phrase -> {}).counts();

    assertEquals(15, counts.phrases());
    assertEquals(14, counts.carried());
    assertEquals(List.of(new Place(1, 6)), counts.lost().stream().map(p -> p.place()).toList());
    assertEquals(10, counts.longestRun());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void a_take_in_pieces_of_any_size_gets_the_same_verdicts(long seed) {
    List<JudgedPhrase> whole = saidLive(DEMO.played());

    Random chance = new Random(seed);
    Coach coach = new Coach(setting());
    List<PlayEvent> events = Heard.recording(DEMO.played()).events();
    double clock = 0;
    int next = 0;
    while (next < events.size()) {
      clock += chance.nextDouble() * 0.2;
      List<PlayEvent> piece = new ArrayList<>();
      while (next < events.size() && events.get(next).seconds() <= clock) {
        piece.add(events.get(next++));
      }
      coach.hear(new Heard(piece, clock));
    }
    coach.rest();

    List<JudgedPhrase> pieces = coach.judgedTake().phrases();
    assertEquals(whole.size(), pieces.size());
    for (int i = 0; i < whole.size(); i++) {
      assertEquals(whole.get(i).notes(), pieces.get(i).notes(), "notes of phrase " + i);
      assertEquals(whole.get(i).verdict(), pieces.get(i).verdict(), "verdict on phrase " + i);
      assertEquals(whole.get(i).harmony(), pieces.get(i).harmony(), "roles in phrase " + i);
    }
  }

  @Test
  void what_comes_later_never_changes_a_verdict_that_was_given() {
    List<PlayedNote> played = DEMO.played();
    List<JudgedPhrase> whole = saidLive(played);
    JudgedPhrase seventh = whole.get(6);
    List<PlayedNote> start =
        played.stream().filter(n -> n.onsetSeconds() < seventh.startSeconds()).toList();

    List<JudgedPhrase> early = saidLive(start);

    assertEquals(
        whole.subList(0, 6).stream().map(JudgedPhrase::verdict).toList(),
        early.stream().map(JudgedPhrase::verdict).toList());
  }

  @Test
  void the_player_may_take_a_new_idea() {
    Coach coach = new Coach(setting());
    List<PlayedNote> played = DEMO.played();
    double middle = played.get(played.size() / 2).onsetSeconds();
    List<PlayEvent> events = Heard.recording(played).events();
    coach.hear(
        new Heard(events.stream().filter(e -> e.seconds() < middle).toList(), middle - 0.001));
    coach.newIdea();
    coach.hear(
        new Heard(
            events.stream().filter(e -> e.seconds() >= middle).toList(),
            events.get(events.size() - 1).seconds()));
    coach.rest();

    long stated = coach.judgedTake().phrases().stream().filter(JudgedPhrase::statesTheIdea).count();
    assertEquals(2, stated);
  }

  @Test
  void silence_is_a_take_without_an_idea() {
    JudgedTake take = Coach.judge(setting(), List.of(), phrase -> {});

    assertTrue(take.idea().isEmpty());
    assertEquals(0, take.counts().phrases());
  }

  @Test
  void who_comes_in_while_it_is_counted_in_is_heard_over_the_first_chord() {
    double bar = setting().beats().secondsAt(8);
    List<PlayedNote> early =
        playing("C5/0.5 A4/0.5 G4 A4").stream()
            .map(
                n ->
                    new PlayedNote(
                        n.onsetSeconds() - bar, n.durationSeconds(), n.pitch(), 0, 0.7, 1))
            .toList();

    List<JudgedPhrase> said = saidLive(early);

    assertEquals(1, said.size());
    assertEquals(setting().changes().at(0).harmony(), said.get(0).chords().get(0).harmony());
  }

  @Test
  void the_idea_itself_is_always_literal() {
    JudgedPhrase first = Coach.judge(setting(), DEMO.played(), phrase -> {}).phrases().get(0);

    assertTrue(first.statesTheIdea());
    assertEquals(Treatment.LITERAL, first.verdict().treatment());
    assertEquals(Family.RESTATED, first.verdict().family());
  }
}
