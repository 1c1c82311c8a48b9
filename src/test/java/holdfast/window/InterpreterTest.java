package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.chart.Chart;
import holdfast.chart.ChartException;
import holdfast.chart.ChartLibrary;
import holdfast.chart.ChartText;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.practice.Plan;
import holdfast.practice.Step;
import holdfast.practice.Way;
import holdfast.practice.invent.Starter;
import holdfast.report.JudgementText;
import holdfast.report.TakeSentences;
import holdfast.report.TreatmentWords;
import holdfast.session.Coach;
import holdfast.session.DemoStudent;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The German is our own; what is checked is that none is missing, and that names are kept. */
class InterpreterTest {

  private static final Interpreter GERMAN = new Interpreter(Language.GERMAN, NoteNaming.GERMAN);

  @Test
  void whatever_is_said_of_a_take_is_said_in_german() {
    Set<String> unknown = new TreeSet<>();
    Random random = new Random(20261125);
    for (int round = 0; round < 60; round++) {
      List<String> charts = ChartLibrary.names();
      Chart chart = ChartLibrary.open(charts.get(round % charts.size()));
      said(take(chart, random, round)).stream()
          .filter(sentence -> GERMAN.known(sentence).isEmpty())
          .forEach(unknown::add);
    }
    assertEquals(Set.of(), unknown);
  }

  private static List<String> said(JudgedTake take) {
    List<String> said = new ArrayList<>(TakeSentences.of(take));
    said.addAll(TakeSentences.inHindsight(take));
    for (JudgedPhrase phrase : take.phrases()) {
      new JudgementText(take.setting()).why(phrase).forEach(line -> said.add(line.strip()));
      said.add(TreatmentWords.of(phrase.verdict()));
    }
    for (Step step : Plan.after(take, take.setting().chart().title()).steps()) {
      said.add(step.what());
      said.add(step.why());
      said.add(step.way().explanation());
    }
    return said;
  }

  /** An idea, and in each bar something that was done to it, or something else. */
  private static JudgedTake take(Chart chart, Random random, int seed) {
    List<Note> idea = IdeaNotation.parse("E4/0.5 G4/0.5 A4 F4/0.5 D4");
    int bars = 2 * chart.form().bars().size();
    double beats = chart.form().metre().beats();
    List<Note> line = new ArrayList<>();
    for (int bar = 0; bar < bars && random.nextInt(20) > 0; bar++) {
      for (Note note : bar == 0 ? idea : changed(idea, random)) {
        double onset = bar * beats + note.onsetBeats();
        if (line.isEmpty() || onset >= line.get(line.size() - 1).onsetBeats() + 0.1) {
          line.add(new Note(onset, note.durationBeats(), note.pitch()));
        }
      }
    }
    Setting setting = Setting.of(chart, TempoMap.steady(80), Player.KEYBOARD, Optional.empty());
    return Coach.judge(setting, new DemoStudent(seed).play(line, setting.beats()), phrase -> {});
  }

  private static List<Note> changed(List<Note> idea, Random random) {
    int move = random.nextInt(25) - 12;
    int one = random.nextInt(idea.size());
    List<Note> notes = new ArrayList<>();
    switch (random.nextInt(13)) {
      case 0 -> notes.addAll(idea);
      case 1 -> idea.forEach(n -> notes.add(at(n, n.onsetBeats(), n.pitch() + move)));
      case 2 -> idea.forEach(n -> notes.add(at(n, n.onsetBeats(), n.pitch() + move % 3)));
      case 3 -> idea.forEach(n -> notes.add(at(n, n.onsetBeats(), 55 + random.nextInt(20))));
      case 4 -> idea.forEach(n -> notes.add(at(n, n.onsetBeats(), 130 - n.pitch())));
      case 5 -> {
        List<Note> back = new ArrayList<>(idea);
        Collections.reverse(back);
        for (int i = 0; i < idea.size(); i++) {
          notes.add(at(idea.get(i), idea.get(i).onsetBeats(), back.get(i).pitch()));
        }
      }
      case 6 -> idea.forEach(n -> notes.add(at(n, n.onsetBeats() / 2, n.pitch())));
      case 7 -> idea.subList(0, 3).forEach(notes::add);
      case 8 -> {
        notes.addAll(idea);
        notes.add(new Note(3.5, 0.4, 60 + random.nextInt(12)));
      }
      case 9 -> {
        for (int i = 0; i < 7; i++) {
          notes.add(new Note(0.4 * i, 0.35, 60 + i * (random.nextInt(4) == 0 ? 3 : 2)));
        }
      }
      case 10 -> idea.forEach(n -> notes.add(at(n, n.onsetBeats() + 0.5, n.pitch())));
      case 11 -> {
        for (int i = 0; i < idea.size(); i++) {
          Note n = idea.get(i);
          notes.add(at(n, n.onsetBeats(), n.pitch() + (i == one ? move % 4 : 0)));
        }
      }
      default -> {
        for (Note n : idea) {
          notes.add(new Note(n.onsetBeats(), 0.2, n.pitch()));
          notes.add(new Note(n.onsetBeats() + 0.25, 0.15, n.pitch() + 1));
        }
      }
    }
    return notes;
  }

  private static Note at(Note note, double onset, int pitch) {
    return new Note(onset, note.durationBeats(), pitch);
  }

  @Test
  void ways_and_starters_are_explained_in_german() {
    for (Way way : Way.values()) {
      assertTrue(GERMAN.known(way.title()).isPresent(), way.title());
      assertTrue(GERMAN.known(way.explanation()).isPresent(), way.explanation());
    }
    Chart chart = ChartLibrary.open("lantern-turn");
    for (long seed = 0; seed < 50; seed++) {
      for (Starter starter : Starter.shuffled(chart.changes(), seed)) {
        assertTrue(GERMAN.known(starter.sentence()).isPresent(), starter.sentence());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "practice/OutcomeWords",
        "practice/Likeness",
        "practice/Climb",
        "practice/Duet",
        "practice/Steadfast",
        "practice/HardBars",
        "practice/Plan",
        "practice/invent/Starter",
        "practice/invent/Invention",
        "practice/invent/Clothes",
        "practice/invent/Difference",
        "session/LiveTake",
        "backing/sound/SoundBank",
        "listening/calibration/SungSample",
        "listening/calibration/TapCheck",
        "listening/calibration/Loop",
        "listening/microphone/Complaints",
        "motif/Why",
        "motif/NoteSentences",
        "motif/Material",
        "harmony/RoleSentence",
        "report/TakeSentences",
        "report/TreatmentWords",
        "report/ExpectationWords",
        "chart/HeadReader",
        "chart/RowReader",
        "chart/ChartReader",
        "chart/BarTokens",
        "chart/PlayingOrder",
        "chart/PlayedOut",
        "window/Devices"
      })
  void every_piece_of_a_sentence_stands_in_the_book(String file) throws IOException {
    String book =
        Files.readString(Path.of("src/main/resources/holdfast/window/coach_de.txt"))
            .replaceAll("[{<]\\d(?::[a-z]+)?[}>]", "\u0000");
    String source =
        Files.readString(Path.of("src/main/java/holdfast/" + file + ".java"))
            .replaceAll("(?m)^\\s*(//|/?\\*).*$", "")
            .replaceAll("throw new (Illegal|Assertion)[^;]*;", "")
            .replaceAll("case \"[^\"]*\"", "")
            .replaceAll("\"\\s*\\+\\s*\"", "");
    Set<String> missing = new TreeSet<>();
    Matcher literal = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"").matcher(source);
    while (literal.find()) {
      for (String piece : literal.group(1).replace("\\\"", "\"").split("%s|%d|^: ", -1)) {
        boolean isSaid = piece.matches(".*\\p{L}{2,} .*\\p{L}{2,}.*") && !piece.contains("\\\\");
        if (isSaid && !book.contains(piece)) {
          missing.add(piece);
        }
      }
    }
    assertEquals(Set.of(), missing);
  }

  @Test
  void a_mistake_in_a_chart_is_told_in_german_with_what_was_written() {
    try {
      ChartText.parse("title: Brook\n\n| C | F7q | G |\n", "brook");
    } catch (ChartException e) {
      assertEquals(
          "Takt 2: „F7q“ ist kein Akkordsymbol, das ich kenne; die nächsten, die ich kenne, sind"
              + e.mend().substring("the nearest that I know are".length())
              + ".",
          GERMAN.say(e.wrong() + "; " + e.mend() + "."));
      return;
    }
    throw new AssertionError("F7q is no chord");
  }

  @Test
  void notes_and_chords_are_named_as_they_are_named_here() {
    assertEquals(
        "H ist die Terz von G7 und gehört dazu.", GERMAN.say("B is the third of G7: it belongs."));
    assertEquals(
        "B ist der Basston von C7/B und gehört dazu.",
        GERMAN.say("B♭ is the bass of C7/B♭: it belongs."));
    assertEquals(
        "Si is the third of Sol7: it belongs.",
        new Interpreter(Language.ENGLISH, NoteNaming.SOLFEGE)
            .say("B is the third of G7: it belongs."));
    assertEquals(
        "In Takt 5 im 1. Durchgang (Cmaj7 Bm7) hast du sie losgelassen; dort kam ein Lauf.",
        GERMAN.say(
            "You let it go in bar 5 of chorus 1 (Cmaj7 B♭m7), where you played a scale run."));
  }

  @Test
  void what_is_not_in_the_book_is_said_as_it_came() {
    assertEquals("Nobody wrote this.", GERMAN.say("Nobody wrote this."));
  }
}
