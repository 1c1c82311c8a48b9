package holdfast.book.overview;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.Arrangement;
import holdfast.book.MadeTakes;
import holdfast.book.TakeFolder;
import holdfast.book.assignment.Answer;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.listening.alignment.MadeRecording;
import holdfast.listening.calibration.Profile;
import holdfast.motif.Player;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Takes come back by the hundred; each is judged once, and none can stop the others. */
class ClassWorkTest {

  private static final Terms BOATS =
      new Terms(
          Optional.of(ChartLibrary.open("Paper Boats")),
          66,
          Optional.empty(),
          Player.KEYBOARD,
          Profile.ANYONE);

  @TempDir Path temporary;

  private Path folder;
  private Path overview;

  @BeforeEach
  void what_came_back() throws IOException {
    folder = Files.createDirectories(temporary.resolve("class 7b – übung"));
    overview = folder.resolve("overview");
    TakeFolder take = MadeTakes.play(temporary.resolve("home"), "Mira", 0);
    Answer.pack(take, folder.resolve("mira.carried"), false);
    Files.createDirectories(folder.resolve("Ilko"));
    Files.copy(take.path().resolve(TakeFolder.MIDI), folder.resolve("Ilko/week 1.mid"));
    Files.copy(take.path().resolve(TakeFolder.MIDI), folder.resolve("Oda_homework.mid"));
    Files.writeString(folder.resolve("Bas.mid"), "this is no MIDI file");
    Files.writeString(folder.resolve("Bas.carried"), "nor is this an answer");
    Files.writeString(folder.resolve("read me.txt"), "not a take");
  }

  private int run(Share share) throws InterruptedException {
    return new ClassWork(folder, overview, BOATS, share).run(2, step -> {});
  }

  private String page() throws IOException {
    return Files.readString(overview.resolve(ClassPage.PAGE));
  }

  @Test
  void each_take_is_judged_and_bad_files_are_listed_with_a_sentence() throws Exception {
    assertEquals(5, run(Share.ALL));
    assertEquals(3, ClassPage.write(overview).takes());
    ClassResults results = ClassResults.read(overview);
    assertEquals(
        List.of("Ilko", "Mira", "Oda"),
        results.students().stream().map(ClassResults.OfStudent::name).toList());
    int carried = results.students().get(0).newest().outcome().carried();
    assertTrue(carried > 5);
    assertEquals(
        carried,
        results.students().get(1).newest().outcome().carried(),
        "by its answer and by its MIDI file the same take is the same");
    assertEquals(List.of("Bas.carried", "Bas.mid"), List.copyOf(results.troubles().keySet()));
    assertFalse(results.charts().get("Paper Boats").isEmpty());
    for (ClassResults.OfStudent student : results.students()) {
      String report = student.newest().outcome().report();
      assertTrue(page().contains("href=\"" + report + "\""));
      assertTrue(Files.exists(overview.resolve(report)));
    }
    List<String> table = Files.readAllLines(overview.resolve(ClassPage.TABLE));
    assertEquals(4, table.size());
    assertTrue(table.get(1).startsWith("Ilko,Paper Boats,"), table.get(1));
  }

  /** Recorded beside a loudspeaker, from before the count-in; the singer enters when she likes. */
  @Test
  void recordings_are_laid_onto_their_backing_as_one_take_by_itself_is() throws Exception {
    Path recorded = Files.createDirectories(temporary.resolve("recorded"));
    MadeRecording early =
        MadeRecording.usual("slow-ferry").write(Files.createDirectories(recorded.resolve("Ilko")));
    MadeRecording slow =
        MadeRecording.usual("slow-ferry")
            .clock(1.0004)
            .write(Files.createDirectories(recorded.resolve("Oda")));
    Chart chart = ChartLibrary.open("Slow Ferry");
    Terms terms =
        new Terms(
            Optional.of(chart),
            Arrangement.of(chart).tempo(),
            Optional.empty(),
            Player.KEYBOARD,
            Profile.named("voice"));
    assertEquals(2, new ClassWork(recorded, overview, terms, Share.ALL).run(2, step -> {}));
    ClassResults results = ClassResults.read(overview);
    for (int i = 0; i < 2; i++) {
      MadeRecording made = List.of(early, slow).get(i);
      Line.Outcome outcome = results.students().get(i).newest().outcome();
      assertEquals(made.carried(), outcome.carried(), 1);
      String report = Files.readString(overview.resolve(outcome.report()));
      String barOne = String.format(Locale.ROOT, "Bar 1 begins at %.2f s", made.barOneSeconds());
      assertTrue(report.contains(barOne), barOne);
    }
  }

  @Test
  void a_second_run_does_only_what_is_new_or_changed() throws Exception {
    assertEquals(5, run(Share.ALL));
    assertEquals(0, run(Share.ALL));
    Path oda = folder.resolve("Oda_homework.mid");
    Files.setLastModifiedTime(oda, FileTime.fromMillis(1_700_000_000_000L));
    assertEquals(0, run(Share.ALL), "another time and the same bytes");
    Files.copy(oda, folder.resolve("Runa.mid"));
    Files.write(folder.resolve("Bas.mid"), Files.readAllBytes(oda));
    assertEquals(2, run(Share.ALL));
    assertEquals(5, ClassPage.write(overview).takes());
  }

  @Test
  void a_run_that_was_killed_in_the_middle_of_a_line_goes_on() throws Exception {
    run(Share.ALL);
    Path ledger = overview.resolve("results.jsonl");
    byte[] whole = Files.readAllBytes(ledger);
    String text = new String(whole, StandardCharsets.UTF_8);
    int lastLine = text.substring(0, text.length() - 1).lastIndexOf('\n') + 1;
    String cut = text.substring(0, lastLine + 20);
    Files.writeString(ledger, cut, StandardOpenOption.TRUNCATE_EXISTING);
    assertEquals(1, run(Share.ALL), "only the take whose line was cut off");
    assertEquals(3, ClassPage.write(overview).takes());
  }

  @Test
  void shares_of_several_machines_come_to_the_same_as_one() throws Exception {
    int judged = 0;
    for (int share = 1; share <= 3; share++) {
      judged += run(new Share(share, 3));
    }
    assertEquals(5, judged);
    ClassPage.write(overview);
    String shared = page();
    overview = folder.resolve("overview of one");
    // The other overview is in the folder, too, and holds no take.
    assertEquals(5, run(Share.ALL));
    ClassPage.write(overview);
    assertEquals(shared, page());
  }

  @Test
  void names_from_elsewhere_are_text_on_the_page_and_no_formula_in_the_table() throws Exception {
    Path evil = folder.resolve("=1+2<script>alert(1)<");
    Files.createDirectories(evil);
    Files.copy(folder.resolve("Oda_homework.mid"), evil.resolve("a.mid"));
    run(Share.ALL);
    ClassPage.write(overview);
    assertFalse(page().contains("<script"));
    assertTrue(Files.readString(overview.resolve(ClassPage.TABLE)).contains("\n'=1+2<script>"));
  }

  @Test
  void bars_that_were_hard_for_few_are_not_called_hard_for_all() throws Exception {
    Path results = Files.createDirectories(overview).resolve("results.jsonl");
    StringBuilder lines = new StringBuilder();
    for (int i = 0; i < 9; i++) {
      // Bar 3 is let go by everybody, bar 5 by two of nine.
      String lost = i < 2 ? "[3,5]" : "[3]";
      lines.append(
          String.format(
              "{\"file\":\"s%d.mid\",\"student\":\"s%d\",\"chart\":\"Paper Boats\","
                  + "\"phrases\":10,\"carried\":%d,\"families\":\"r\",\"lostBars\":%s}%n",
              i, i, i < 2 ? 2 : 9, lost));
    }
    Files.writeString(results, lines);
    ClassPage.write(overview);
    assertEquals(
        List.of(new ClassResults.HardBar(3, 9, 9)),
        ClassResults.read(overview).charts().get("Paper Boats"));
    assertTrue(page().contains("9 takes of 9 students."));
    assertTrue(page().contains("2 students would be glad of a word; the row says why."));
  }

  @Test
  void a_take_that_came_twice_or_under_another_name_counts_once() throws Exception {
    Path mira = folder.resolve("mira.carried");
    Files.copy(mira, folder.resolve("mira copy.carried"));
    Files.copy(mira, folder.resolve("mira.carried.zip"));
    Files.copy(mira, folder.resolve("mira.midi"));
    assertEquals(8, run(Share.ALL));
    assertEquals(new ClassPage.Counts(3, 2), ClassPage.write(overview));
    assertEquals(1, ClassResults.read(overview).students().get(1).takes().size());
    Files.move(mira, folder.resolve("Ilko/renamed.carried"));
    run(Share.ALL);
    assertEquals(3, ClassPage.write(overview).takes());
  }

  @Test
  void two_students_of_one_name_are_told_apart_by_their_folders() throws Exception {
    TakeFolder other = MadeTakes.play(temporary.resolve("home"), "mira", 1);
    Path second = Files.createDirectories(folder.resolve("Mira B"));
    Answer.pack(other, second.resolve("mira.carried"), false);
    Path week = Files.createDirectories(folder.resolve("week 2"));
    Answer.pack(
        MadeTakes.play(temporary.resolve("home"), "Mira", 8), week.resolve("m.carried"), false);
    run(Share.ALL);
    ClassResults results = ClassResults.read(overview);
    assertEquals(
        List.of("Ilko", "Mira", "Mira B", "Oda"),
        results.students().stream().map(ClassResults.OfStudent::name).toList());
    assertEquals(2, results.students().get(1).takes().size(), "a week is no student");
  }

  @Test
  void what_one_student_let_go_is_not_called_hard_for_all() throws Exception {
    Files.delete(folder.resolve("Oda_homework.mid"));
    run(Share.ALL);
    assertEquals(List.of(), ClassResults.read(overview).charts().get("Paper Boats"));
  }

  @Test
  void other_terms_judge_bare_files_anew_and_no_answer() throws Exception {
    assertEquals(5, run(Share.ALL));
    assertEquals(3, new ClassWork(folder, overview, Terms.NONE, Share.ALL).run(1, step -> {}));
  }
}
