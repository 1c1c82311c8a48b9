package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import holdfast.listening.alignment.MadeRecording;
import holdfast.report.JudgementJson;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A recording from elsewhere, from the file to what is said: the truth is what was mixed. */
class JudgeSoundTest {

  @TempDir Path folder;

  private static JsonNode judged(Terminal said) throws Exception {
    assertEquals(0, said.exitCode(), said.err());
    return new ObjectMapper().readTree(said.out());
  }

  @Test
  void a_phones_recording_beside_the_speaker_is_judged_as_the_same_notes_in_midi_would_be()
      throws Exception {
    MadeRecording made = MadeRecording.usual("slow-ferry").clock(1.00006).write(folder);
    Terminal said =
        Terminal.run(
            "judge",
            made.file().toString(),
            "--chart",
            "Slow Ferry",
            "--profile",
            "voice",
            "--json");
    JsonNode judged = judged(said);
    assertEquals(made.barOneSeconds(), judged.at("/placement/barOneSeconds").asDouble(), 0.03);
    assertEquals("sure", judged.at("/placement/sureness").asText());
    assertEquals(made.phrases(), judged.get("phrases").size(), 2);
    double carried = judged.at("/summary/carried").asDouble();
    assertEquals(made.carried(), carried, 2, said.out());
    assertTrue(judged.get("barOne").asText().contains("I heard the backing"));
    try (InputStream schema = JudgementJson.class.getResourceAsStream("judgement.schema.json")) {
      var reader =
          SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(schema);
      assertEquals(List.of(), reader.validate(said.out(), InputFormat.JSON));
    }
  }

  @Test
  void with_headphones_the_line_alone_must_do_and_it_is_said_to_be_less_sure() throws Exception {
    MadeRecording made = MadeRecording.usual("slow-ferry").backing(-200).write(folder);
    Terminal said =
        Terminal.run(
            "judge", made.file().toString(), "--chart", "Slow Ferry", "--profile", "voice");
    assertEquals(0, said.exitCode(), said.err());
    assertTrue(said.out().contains("I could not find the backing"), said.out());
    assertTrue(said.out().contains("--bar-one SECONDS"), said.out());
  }

  @Test
  void where_the_user_says_where_bar_1_is_it_is_there() throws Exception {
    MadeRecording made = MadeRecording.usual("slow-ferry").backing(-200).write(folder);
    Terminal said =
        Terminal.run(
            "judge",
            made.file().toString(),
            "--chart",
            "Slow Ferry",
            "--bar-one",
            "5.25",
            "--json");
    assertEquals(5.25, judged(said).at("/placement/barOneSeconds").asDouble(), 1e-9);
  }

  /** By other people's encoders, see takes/README.txt; WaveFileTest looks at the sound itself. */
  @ParameterizedTest
  @ValueSource(strings = {"mp3", "ogg", "flac", "m4a"})
  void a_phones_own_format_is_taken_as_a_wave_file_is(String format) throws Exception {
    Path file = Path.of(JudgeSoundTest.class.getResource("/takes/a440." + format).toURI());
    JsonNode judged =
        judged(
            Terminal.run(
                "judge", file.toString(), "--chart", "Slow Ferry", "--bar-one", "0", "--json"));
    assertEquals(0, judged.get("phrases").size(), "one held note is no phrase: " + judged);
    assertEquals(0, judged.at("/placement/barOneSeconds").asDouble());
  }

  @Test
  void options_of_the_other_kind_of_take_are_told_apart() {
    Terminal midi = Terminal.run("judge", "take.mid", "--chart", "Slow Ferry", "--bar-one", "5");
    assertEquals(2, midi.exitCode());
    assertEquals(
        "holdfast: --bar-one is for recordings; in a MIDI file write --starts-at BEATS",
        midi.err().strip());
    Terminal missing = Terminal.run("judge", "no-such.wav", "--chart", "Slow Ferry");
    assertEquals(2, missing.exitCode());
    assertEquals("holdfast: there is no file no-such.wav; check the name", missing.err().strip());
  }
}
