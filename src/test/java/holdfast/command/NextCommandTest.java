package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import holdfast.book.UserFolder;
import holdfast.report.CarriedJson;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NextCommandTest {

  private static final String IDEA = "C5/0.5 A4/0.5 G4 A4/0.5 F4/1.5";

  @TempDir Path folder;

  @AfterEach
  void home() {
    System.clearProperty(UserFolder.PROPERTY);
  }

  private static String answer(String... args) {
    Terminal terminal = next(args);
    assertEquals(0, terminal.exitCode(), terminal.err());
    return terminal.out();
  }

  private static Terminal next(String... args) {
    return Terminal.run(Stream.concat(Stream.of("next"), Stream.of(args)).toArray(String[]::new));
  }

  private static void refuses(String sentence, String... args) {
    Terminal terminal = next(args);
    assertEquals(2, terminal.exitCode(), terminal.out());
    assertEquals("holdfast: " + sentence, terminal.err().strip());
  }

  @Test
  void each_chord_has_its_notes_and_a_reason() {
    List<String> lines = answer("Paper Boats", "--idea", IDEA).lines().toList();
    assertEquals("Paper Boats, F", lines.get(0));
    assertEquals("bar 1   Fmaj7   C5 A4 G4 A4 F4", lines.get(2));
    assertTrue(lines.contains("bar 6   D♭maj7  C5 A♭4 G4 A♭4 F4"));
    assertTrue(
        lines.contains(
            "        Every A falls a half step to A♭, the fifth of D♭maj7; C, G and F stay."));
    assertTrue(lines.stream().allMatch(line -> line.length() <= 80));
  }

  @Test
  void the_json_keeps_to_its_schema_and_tells_the_options() throws IOException {
    String json =
        answer(
            "slow-ferry",
            "--idea",
            IDEA,
            "--json",
            "--key",
            "Dm",
            "--tempo",
            "72",
            "--range",
            "C4..C5",
            "--choice",
            "2");
    assertEquals(List.of(), errors(json));
    JsonNode tree = new ObjectMapper().readTree(json);
    assertEquals("Dm", tree.get("key").textValue());
    assertEquals(72, tree.get("tempo").doubleValue());
    for (JsonNode saying : tree.get("sayings")) {
      JsonNode choices = saying.get("choices");
      assertEquals(choices.size(), saying.get("taken").intValue());
      for (JsonNode choice : choices) {
        for (JsonNode note : choice.get("notes")) {
          int pitch = note.get("pitch").intValue();
          assertTrue(pitch >= 60 && pitch <= 72, saying.toString());
        }
      }
    }
    assertFalse(errors("{\"chart\": \"Paper Boats\"}").isEmpty());
  }

  private static List<Error> errors(String json) throws IOException {
    try (InputStream schema = CarriedJson.class.getResourceAsStream("carried.schema.json")) {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(schema)
          .validate(json, InputFormat.JSON);
    }
  }

  @Test
  void the_idea_of_the_last_take_is_carried_on() throws IOException {
    System.setProperty(UserFolder.PROPERTY, folder.toString());
    take("2026-11-01_10-00-00_b", "[{\"onset\": 0, \"duration\": 1, \"pitch\": 40}]");
    take(
        "2026-11-02_10-00-00_a",
        "[{\"onset\": 8.02, \"duration\": 0.9, \"pitch\": 72},"
            + " {\"onset\": 8.97, \"duration\": 1.9, \"pitch\": 69}]");
    Files.createDirectories(folder.resolve("takes").resolve("2026-11-03_broken-off"));
    String[] lines = answer("Paper Boats", "--last").split("\n", -1);
    assertEquals("bar 1   Fmaj7   C5 A4", lines[2].stripTrailing());
  }

  private void take(String name, String notes) throws IOException {
    Path take = Files.createDirectories(folder.resolve("takes").resolve(name));
    Files.writeString(
        take.resolve("judgement.json"),
        "{\"idea\": {\"notes\": " + notes + ", \"chord\": \"F6\"}}");
  }

  /**
   * The same idea and the same chart, two players: one took the idea along as a whole, the other
   * bent it. Each is offered their own way first.
   */
  @Test
  void after_three_statements_the_players_own_way_comes_first() throws IOException {
    System.setProperty(UserFolder.PROPERTY, folder.toString());
    Path chart = folder.resolve("two.txt");
    Files.writeString(chart, "title: Two\nkey: C\n\n| Dm7 | Fm7 |\n");
    player("62 65 69 67 65", "65 68 72 70 68", "67 70 74 72 70", "Fm7", "Gm7");
    String moving = answer(chart.toString(), "--last");
    player("62 65 69 67 65", "62 66 69 67 66", "62 64 69 67 64", "Dmaj7", "C6");
    String bending = answer(chart.toString(), "--last");
    assertTrue(secondBar(moving).contains("F4 A♭4 C5 B♭4 A♭4"), moving);
    assertTrue(secondBar(bending).contains("E♭4 F4 A♭4 G4 F4"), bending);
  }

  private static String secondBar(String text) {
    return text.substring(text.indexOf("bar 2")).lines().findFirst().orElseThrow();
  }

  private void player(String idea, String second, String third, String over, String then)
      throws IOException {
    Path take = Files.createDirectories(folder.resolve("takes").resolve("2026-11-02_10-00-00_a"));
    Files.writeString(
        take.resolve("judgement.json"),
        "{\"idea\": {\"notes\": "
            + notes(idea)
            + ", \"chord\": \"Dm7\"}, \"phrases\": ["
            + phrase(idea, "Dm7")
            + ", "
            + phrase(second, over)
            + ", "
            + phrase(third, then)
            + "]}");
  }

  private static String phrase(String pitches, String chord) {
    return "{\"family\": \"restated\", \"chords\": [\""
        + chord
        + "\"], \"notes\": "
        + notes(pitches)
        + "}";
  }

  private static String notes(String pitches) {
    StringBuilder json = new StringBuilder("[");
    double[] onsets = {0, 0.5, 1, 2, 2.5};
    String[] each = pitches.split(" ", -1);
    for (int i = 0; i < each.length; i++) {
      json.append(i == 0 ? "" : ", ")
          .append("{\"onset\": ")
          .append(onsets[i])
          .append(", \"duration\": ")
          .append(i + 1 < each.length ? onsets[i + 1] - onsets[i] : 1.5)
          .append(", \"pitch\": ")
          .append(each[i])
          .append("}");
    }
    return json.append("]").toString();
  }

  @Test
  void a_take_without_an_idea_or_none_at_all_is_told() throws IOException {
    System.setProperty(UserFolder.PROPERTY, folder.toString());
    Path takes = folder.resolve("takes");
    refuses(
        "there is no take in " + takes + " yet; play one, or give --idea", "Paper Boats", "--last");
    Path file = Files.createDirectories(takes.resolve("a")).resolve("judgement.json");
    Files.writeString(file, "{\"idea\": null}");
    refuses(
        file + ": the last take has no idea; play another, or give --idea",
        "Paper Boats",
        "--last");
    Files.writeString(file, "{\"idea\": \n");
    refuses(file + " is broken (line 2); give --idea", "Paper Boats", "--last");
    Files.writeString(file, "{\"idea\": {\"notes\": [{\"onset\": 0}]}}");
    refuses(
        file
            + ", idea: a note's duration must be more than 0 beats, not NaN; judge the take again,"
            + " or give --idea",
        "Paper Boats",
        "--last");
  }

  /** The MIDI file is read by the JDK's own reader of Standard MIDI Files. */
  @Test
  void a_midi_file_holds_the_line_the_chords_as_markers_and_the_backing() throws Exception {
    Path file = folder.resolve("line.mid");
    String said = answer("Paper Boats", "--idea", IDEA, "--to", file.toString());
    assertEquals("Wrote " + file + ": your idea through Paper Boats.", said.strip());
    Sequence sequence = MidiSystem.getSequence(file.toFile());
    List<String> texts = new ArrayList<>();
    List<Integer> pitches = new ArrayList<>();
    for (Track track : sequence.getTracks()) {
      boolean isLine = false;
      for (int i = 0; i < track.size(); i++) {
        MidiMessage message = track.get(i).getMessage();
        if (message instanceof MetaMessage meta && meta.getType() <= 7) {
          String text = new String(meta.getData(), StandardCharsets.UTF_8);
          texts.add(text);
          isLine |= text.equals("Line");
        } else if (isLine
            && message instanceof ShortMessage note
            && note.getCommand() == ShortMessage.NOTE_ON
            && note.getData2() > 0) {
          pitches.add(note.getData1());
        }
      }
    }
    assertTrue(texts.containsAll(List.of("Fmaj7", "Dbmaj7", "Gm7", "Chords", "Bass", "Line")));
    assertEquals(7 * 5, pitches.size());
    assertEquals(List.of(72, 69, 67, 69, 65), pitches.subList(0, 5));
  }

  @Test
  void an_idea_may_come_from_a_midi_file() throws Exception {
    Sequence sequence = new Sequence(Sequence.PPQ, 480);
    Track track = sequence.createTrack();
    int[] pitches = {72, 69, 67};
    for (int i = 0; i < pitches.length; i++) {
      track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_ON, 0, pitches[i], 80), 480L * i));
      track.add(
          new MidiEvent(new ShortMessage(ShortMessage.NOTE_OFF, 0, pitches[i], 0), 480L * i + 450));
    }
    Path file = folder.resolve("idea.mid");
    MidiSystem.write(sequence, 1, file.toFile());
    String said = answer("Paper Boats", "--idea", file.toString());
    assertEquals("bar 1   Fmaj7   C5 A4 G4", said.lines().toList().get(2));
  }

  @Test
  void the_help_fits_a_terminal() {
    assertTrue(answer("--help").lines().allMatch(line -> line.length() <= 80));
    assertTrue(answer("--help").contains("before a bar line | is a pick-up\n"));
  }

  @Test
  void a_score_and_a_sound_file_are_written_beside_the_json() throws IOException {
    Path score = folder.resolve("line.musicxml");
    assertEquals(
        List.of(),
        errors(answer("Paper Boats", "--idea", IDEA, "--json", "--to", score.toString())));
    String xml = Files.readString(score);
    assertTrue(xml.contains("<words>literal</words>"));
    assertTrue(xml.contains("<kind text=\"maj7\">major-seventh</kind>"));
    Path sound = folder.resolve("line.wav");
    answer("Paper Boats", "--idea", IDEA, "--tempo", "240", "--to", sound.toString());
    // Eight bars of four beats at 240 a minute are 8 seconds of 44100 frames of 4 bytes.
    assertTrue(Files.size(sound) > 44_100 * 4 * 8);
  }

  @Test
  void a_file_of_an_unknown_kind_is_refused() {
    refuses(
        "line.pdf must end in .mid, .musicxml or .wav, so that we know what to write",
        "Paper Boats",
        "--idea",
        IDEA,
        "--to",
        "line.pdf");
  }

  @Test
  void what_cannot_be_done_is_told_in_one_sentence_with_its_mend() {
    refuses("--choice takes 1 or 2, not 3", "Paper Boats", "--idea", IDEA, "--choice", "3");
    refuses(
        "--range takes two pitches as C4..A5, not \"C4\"",
        "Paper Boats",
        "--idea",
        IDEA,
        "--range",
        "C4");
    refuses(
        "--range needs an octave or more, the lower pitch first, as C4..C5, not \"C4..E4\"",
        "Paper Boats",
        "--idea",
        IDEA,
        "--range",
        "C4..E4");
    refuses(
        "“Paper Boats”: the idea finds no room over its chords; make it shorter",
        "Paper Boats",
        "--idea",
        "C4/99 D4");
    refuses("an idea has 2 to 32 notes, and this one has 1", "Paper Boats", "--idea", "C4");
    assertEquals(2, next("Paper Boats").exitCode());
    assertEquals(2, next("Paper Boats", "--last", "--idea", IDEA).exitCode());
    assertEquals(2, next("No Such Tune", "--idea", IDEA).exitCode());
  }
}
