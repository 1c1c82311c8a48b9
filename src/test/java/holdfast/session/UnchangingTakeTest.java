package holdfast.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.Arrangement;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.chart.Transposition;
import holdfast.harmony.Fit;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.motif.Family;
import holdfast.motif.Player;
import holdfast.motif.Treatment;
import holdfast.theory.NoteName;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.statistics.Statistics;

/**
 * What must not change a verdict, over whole takes: somebody carries an idea over one of our
 * charts, at the keys or singing, with slips, notes left out, and phrases of something else among
 * them.
 */
class UnchangingTakeTest {

  /** Some ten phrases. */
  private static final int MOST_NOTES = 48;

  /** What people are told of a phrase. */
  private record Told(int notes, Treatment treatment, Family family, String fit) {

    static Told of(JudgedPhrase phrase) {
      return new Told(
          phrase.notes().size(),
          phrase.verdict().treatment(),
          phrase.verdict().family(),
          phrase.harmony().fit().map(Fit::word).map(word -> word.text()).orElse("no chord"));
    }
  }

  /** Live, phrase by phrase, and when the take was over. */
  private record Heard(List<JudgedPhrase> live, JudgedTake after) {

    List<Told> toldLive() {
      return live.stream().map(Told::of).toList();
    }

    /** How many notes each phrase has, live and when the take was over. */
    List<Integer> cuts() {
      return Stream.concat(live.stream(), after.phrases().stream())
          .map(phrase -> phrase.notes().size())
          .toList();
    }

    List<Told> toldAfter() {
      return after.phrases().stream().map(Told::of).toList();
    }

    List<Afterthought.Kind> afterthoughts() {
      return after.afterthoughts().stream().map(Afterthought::kind).toList();
    }
  }

  /** A take: where, by whom, at which tempo, and what was heard of it. */
  private record Take(Chart chart, double tempo, Player player, List<PlayedNote> played) {

    static Take of(long seed) {
      Random chance = new Random(seed);
      List<String> names = ChartLibrary.names();
      Chart chart = ChartLibrary.open(names.get(chance.nextInt(names.size())));
      Arrangement arrangement = Arrangement.of(chart);
      List<Note> line = CarriedLine.over(arrangement, seed);
      List<Note> meant = line.subList(0, Math.min(MOST_NOTES, line.size()));
      Player player = chance.nextBoolean() ? Player.KEYBOARD : Player.VOICE;
      List<PlayedNote> played =
          new DemoStudent(seed).play(meant, TempoMap.steady(arrangement.tempo()));
      return new Take(chart, arrangement.tempo(), player, heard(played, player, chance));
    }

    /** Slips and stray ideas; a singer's cents and lost notes. The idea itself is left whole. */
    private static List<PlayedNote> heard(List<PlayedNote> played, Player player, Random chance) {
      List<PlayedNote> heard = new ArrayList<>();
      double away = 0;
      for (int i = 0; i < played.size(); i++) {
        PlayedNote n = played.get(i);
        boolean sung = player == Player.VOICE;
        if (i % 12 == 0) {
          away = chance.nextInt(4) == 0 ? 1 : 0;
        }
        boolean later = i > 7;
        if (later && sung && chance.nextDouble() < 0.03) {
          continue;
        }
        int slip = later && chance.nextDouble() < 0.04 ? chance.nextInt(5) - 2 : 0;
        int other = later && away > 0 ? chance.nextInt(9) - 4 : 0;
        double cents = sung ? Math.max(-49, Math.min(49, 15 * chance.nextGaussian())) : 0;
        heard.add(
            new PlayedNote(
                n.onsetSeconds(),
                n.durationSeconds(),
                n.pitch() + slip + other,
                cents,
                n.loudness(),
                1));
      }
      return heard;
    }

    Heard judged() {
      TempoMap beats = TempoMap.steady(tempo);
      List<JudgedPhrase> live = new ArrayList<>();
      Setting setting = Setting.of(chart, beats, player, Optional.empty());
      JudgedTake after = Coach.judge(setting, played, live::add);
      assertTrue(live.size() > 3, "a take of " + live.size() + " phrases shows nothing");
      return new Heard(live, after);
    }

    Take up(int semitones) {
      int tonic = chart.key().orElseThrow().tonic().pitchClass();
      NoteName other = NoteName.plain((tonic + semitones) % 12, true);
      return new Take(
          Transposition.to(chart, other),
          tempo,
          player,
          played.stream()
              .map(
                  n ->
                      new PlayedNote(
                          n.onsetSeconds(),
                          n.durationSeconds(),
                          n.pitch() + semitones,
                          n.cents(),
                          n.loudness(),
                          n.confidence()))
              .toList());
    }

    Take slower(double times) {
      return new Take(
          chart,
          tempo / times,
          player,
          played.stream()
              .map(
                  n ->
                      new PlayedNote(
                          n.onsetSeconds() * times,
                          n.durationSeconds() * times,
                          n.pitch(),
                          n.cents(),
                          n.loudness(),
                          n.confidence()))
              .toList());
    }

    Take as(List<PlayedNote> others) {
      return new Take(chart, tempo, player, others);
    }
  }

  private static void same(Heard one, Heard other) {
    assertEquals(one.toldLive(), other.toldLive());
    assertEquals(one.toldAfter(), other.toldAfter());
    assertEquals(one.afterthoughts(), other.afterthoughts());
  }

  @Property(tries = 20, seed = "20261125")
  void transposing_chart_and_take_together_changes_no_verdict(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 1, max = 11) int up) {
    Take take = Take.of(seed);
    same(take.judged(), take.up(up).judged());
  }

  /**
   * A breath is a breath in seconds, so that a hole in a phrase may cut it at a slower tempo. Up to
   * there all verdicts are the same, and in most takes all of them.
   */
  @Property(tries = 20, seed = "20261125")
  void another_tempo_changes_no_verdict(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @DoubleRange(min = 0.75, max = 1.5) double times) {
    Take take = Take.of(seed);
    Heard one = take.judged();
    Heard other = take.slower(times).judged();
    boolean cutAlike = one.cuts().equals(other.cuts());
    Statistics.label("cut alike")
        .collect(cutAlike)
        .coverage(takes -> takes.check(true).percentage(share -> share >= 75));
    if (cutAlike) {
      same(one, other);
    } else {
      int alike = 0;
      while (alike < one.live().size() && one.cuts().get(alike).equals(other.cuts().get(alike))) {
        alike++;
      }
      assertEquals(one.toldLive().subList(0, alike), other.toldLive().subList(0, alike));
    }
  }

  @Property(tries = 20, seed = "20261125")
  void louder_and_softer_changes_no_verdict(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Take take = Take.of(seed);
    Random chance = new Random(seed);
    List<PlayedNote> others =
        take.played().stream()
            .map(
                n ->
                    new PlayedNote(
                        n.onsetSeconds(),
                        n.durationSeconds(),
                        n.pitch(),
                        n.cents(),
                        0.05 + 0.95 * chance.nextDouble(),
                        n.confidence()))
            .toList();
    Heard one = take.judged();
    Heard other = take.as(others).judged();
    same(one, other);
    assertEquals(
        one.live().stream().map(JudgedPhrase::verdict).toList(),
        other.live().stream().map(JudgedPhrase::verdict).toList());
  }

  @Property(tries = 20, seed = "20261125")
  void a_phrase_more_at_the_end_changes_no_verdict_that_was_given(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Take take = Take.of(seed);
    Heard before = take.judged();
    Random chance = new Random(seed);
    List<PlayedNote> longer = new ArrayList<>(take.played());
    double start = longer.get(longer.size() - 1).endSeconds() + 1.5 + chance.nextDouble();
    for (int i = 0; i < 5; i++) {
      longer.add(new PlayedNote(start + 0.4 * i, 0.35, 58 + chance.nextInt(16), 0, 0.6, 1));
    }
    Heard after = take.as(longer).judged();
    int said = before.live().size();
    assertTrue(after.live().size() > said);
    for (int p = 0; p < said; p++) {
      assertEquals(before.live().get(p).verdict(), after.live().get(p).verdict(), "phrase " + p);
      assertEquals(before.live().get(p).harmony(), after.live().get(p).harmony(), "phrase " + p);
      assertEquals(before.live().get(p).why(), after.live().get(p).why(), "phrase " + p);
    }
  }

  @Property(tries = 20, seed = "20261125")
  void the_idea_itself_is_always_literal(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    Heard heard = Take.of(seed).judged();
    for (JudgedPhrase stated : List.of(heard.live().get(0), heard.after().phrases().get(0))) {
      assertTrue(stated.statesTheIdea());
      assertEquals(Treatment.LITERAL, stated.verdict().treatment());
      assertEquals(Family.RESTATED, stated.verdict().family());
    }
  }
}
