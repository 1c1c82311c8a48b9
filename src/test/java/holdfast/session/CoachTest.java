package holdfast.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.PlayedNote;
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
    List<JudgedPhrase> whole = Coach.judge(setting(), DEMO.played(), phrase -> {}).phrases();

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
    List<JudgedPhrase> whole = Coach.judge(setting(), played, phrase -> {}).phrases();
    JudgedPhrase seventh = whole.get(6);
    List<PlayedNote> start =
        played.stream().filter(n -> n.onsetSeconds() < seventh.startSeconds()).toList();

    List<JudgedPhrase> early = Coach.judge(setting(), start, phrase -> {}).phrases();

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
  void the_idea_itself_is_always_literal() {
    JudgedPhrase first = Coach.judge(setting(), DEMO.played(), phrase -> {}).phrases().get(0);

    assertTrue(first.statesTheIdea());
    assertEquals(Treatment.LITERAL, first.verdict().treatment());
    assertEquals(Family.RESTATED, first.verdict().family());
  }
}
