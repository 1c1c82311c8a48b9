package holdfast.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import holdfast.mistake.UserMistake;
import holdfast.motif.Family;
import holdfast.motif.Player;
import holdfast.motif.Treatment;
import holdfast.session.Coach;
import holdfast.session.DemoTake;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Overruling;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class OverrulingTest {

  private static final DemoTake DEMO = DemoTake.shipped();

  private static final JudgedTake TAKE =
      Coach.judge(
          Setting.of(
              DEMO.chart(), TempoMap.steady(DEMO.tempo()), Player.KEYBOARD, Optional.empty()),
          DEMO.played(),
          phrase -> {});

  /** The demo take has new material in its sixth phrase; it was written so. */
  private static final JudgedPhrase NEW =
      TAKE.phrases().stream().filter(p -> !p.carries()).findFirst().orElseThrow();

  @Test
  void a_teachers_word_counts_in_every_count() {
    Overruling ruling = Overruling.of(NEW, Treatment.INVERTED, Optional.of("listen to the bass"));
    JudgedTake told = TAKE.overruledBy(List.of(ruling));

    assertEquals(TAKE.counts().varied() + 1, told.counts().varied());
    assertEquals(TAKE.counts().fresh() - 1, told.counts().fresh());
    assertEquals(TAKE.counts().lost().size() - 1, told.counts().lost().size());
    int chorus = NEW.place().chorus() - 1;
    assertEquals(
        TAKE.counts().choruses().get(chorus).carried() + 1,
        told.counts().choruses().get(chorus).carried());
    assertTrue(told.counts().longestRun() > TAKE.counts().longestRun());
  }

  @Test
  void what_was_heard_is_kept_beside_the_teachers_word_and_comes_back_without_it() {
    JudgedTake told = TAKE.overruledBy(List.of(Overruling.of(NEW, Family.RESTATED, none())));
    JudgedPhrase phrase = told.phrases().get(NEW.index());

    assertEquals(Family.RESTATED, phrase.verdict().family());
    assertEquals(NEW.verdict(), phrase.heard());
    Overruling back = Overruling.of(phrase, Family.NEW, none());
    assertEquals(TAKE.counts().carried(), told.overruledBy(List.of(back)).counts().carried());
  }

  @Test
  void of_two_words_about_a_phrase_the_last_counts() {
    JudgedTake told =
        TAKE.overruledBy(
            List.of(
                Overruling.of(NEW, Family.RESTATED, none()),
                Overruling.of(NEW, Treatment.FRAGMENT, none())));
    assertEquals(Treatment.FRAGMENT, told.phrases().get(NEW.index()).verdict().treatment());
  }

  @Test
  void the_idea_itself_cannot_be_overruled() {
    Overruling ruling = Overruling.of(TAKE.phrases().get(0), Family.NEW, none());
    assertEquals(TAKE, TAKE.overruledBy(List.of(ruling)));
  }

  @Test
  void page_terminal_and_json_all_say_that_the_teacher_said_so() throws IOException {
    Overruling ruling =
        Overruling.of(NEW, Treatment.INVERTED, Optional.of("upside down, <b>listen</b>"));
    JudgedTake told = TAKE.overruledBy(List.of(ruling));
    String page = ReportPage.of(told, Occasion.UNKNOWN);
    assertTrue(page.contains("Your teacher hears this phrase as varied (inverted)."));
    assertTrue(page.contains("upside down, &lt;b&gt;listen"));
    JudgementText text = new JudgementText(told.setting());
    assertTrue(text.phrase(told.phrases().get(NEW.index())).endsWith("your teacher"));
    String json = JudgementJson.of(told);
    assertTrue(json.contains("\"heardFamily\" : \"new\""), json);
    try (InputStream schema = JudgementJson.class.getResourceAsStream("judgement.schema.json")) {
      assertEquals(
          List.of(),
          SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
              .getSchema(schema)
              .validate(json, InputFormat.JSON));
    }
  }

  @Test
  void what_is_written_down_reads_back() {
    List<Overruling> rulings =
        List.of(
            Overruling.of(NEW, Family.RESTATED, none()),
            Overruling.of(NEW, Treatment.RHYTHM_KEPT, Optional.of("“quotes” \"and\" 小雪")));
    List<Overruling> read = OverrulingJson.read(OverrulingJson.of(rulings), "x.json");
    for (int i = 0; i < rulings.size(); i++) {
      assertEquals(rulings.get(i).phrase(), read.get(i).phrase());
      assertEquals(rulings.get(i).startSeconds(), read.get(i).startSeconds(), 0.0006);
      assertEquals(rulings.get(i).treatment(), read.get(i).treatment());
      assertEquals(rulings.get(i).words(), read.get(i).words());
    }
    assertEquals(
        TAKE.overruledBy(rulings).counts().carried(), TAKE.overruledBy(read).counts().carried());
  }

  @Test
  void a_broken_file_is_told_with_its_name_and_place() {
    UserMistake mistake =
        assertThrows(
            UserMistake.class,
            () ->
                OverrulingJson.read(
                    "{\"overrulings\":[{\"phrase\":2,\"startSeconds\":1,\"family\":\"good\"}]}",
                    "overrulings.json"));
    assertEquals(
        "overrulings.json, overruling 1: a family is restated, varied or new, not good; mend it,"
            + " or delete the file and overrule again",
        mistake.getMessage());
    assertThrows(UserMistake.class, () -> OverrulingJson.read("{", "overrulings.json"));
  }

  @Test
  void a_treatment_of_another_family_is_refused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Overruling(2, 1, Family.NEW, Optional.of(Treatment.LITERAL), none()));
  }

  @Test
  void values_of_a_take_for_its_progress_are_its_counts() {
    Progress.Take values = Progress.Take.of(java.time.LocalDate.of(2026, 11, 25), TAKE);
    assertEquals(TAKE.counts().carried(), values.carried());
    assertEquals(
        (double) TAKE.counts().carried() / TAKE.counts().phrases(), values.carriedShare(), 1e-9);
    assertFalse(values.driftCents().isPresent(), "a keyboard does not drift");
  }

  private static <T> Optional<T> none() {
    return Optional.empty();
  }
}
