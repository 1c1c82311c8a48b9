package holdfast.command;

import com.fasterxml.jackson.databind.JsonNode;
import holdfast.chart.Changes;
import holdfast.harmony.FitJudge;
import holdfast.harmony.JudgedLine;
import holdfast.melody.Note;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.time.Metre;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Says, line by line, what each note does over its chord and how well the whole sits. */
@Command(
    name = "fit",
    mixinStandardHelpOptions = true,
    description = {
      "Says what each note of a line does over its chord, and how well the whole sits.",
      "Reads one JSON object a line from standard input and answers each with one line, in order."
    },
    footerHeading = "%nA question:%n",
    footer = {
      "  {\"notes\": [[onsetBeats, durationBeats, midiPitch], …],",
      "   \"changes\": [[beat, \"Dm7\"], …], \"key\": \"C\", \"beatsPerBar\": 4}",
      "  (key and beatsPerBar may be left out; bar 1 starts on beat 0)",
      "",
      "Its answer:",
      "  {\"roles\": [\"chord tone\", …], \"score\": 0.91, \"word\": \"sits in the chords\"}",
      "  (score and word are null where no chord sounds)"
    })
final class FitCommand implements Callable<Integer> {

  @Override
  public Integer call() throws IOException {
    return JsonLines.answer(
        new InputStreamReader(System.in, StandardCharsets.UTF_8),
        new OutputStreamWriter(System.out, StandardCharsets.UTF_8),
        FitCommand::answer);
  }

  static Map<String, Object> answer(JsonNode line) {
    List<Note> notes = JsonNotes.beats(line, "notes");
    Changes changes = changes(line);
    JudgedLine judged = FitJudge.judge(notes, changes, metre(line));
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("roles", judged.roleTexts());
    answer.put("score", judged.fit().map(fit -> (Object) fit.score()).orElse(null));
    answer.put("word", judged.fit().map(fit -> (Object) fit.word().text()).orElse(null));
    return answer;
  }

  private static Changes changes(JsonNode line) {
    JsonNode array = line.path("changes");
    if (!array.isArray() || array.isEmpty()) {
      throw new IllegalArgumentException(
          "\"changes\" must be a list of chords, as [[0, \"Dm7\"], [4, \"G7\"]]");
    }
    TreeMap<Double, Harmony> startingAt = new TreeMap<>();
    int number = 0;
    for (JsonNode change : array) {
      number++;
      if (!change.isArray()
          || change.size() != 2
          || !change.get(0).isNumber()
          || !change.get(1).isTextual()) {
        throw new IllegalArgumentException(
            "chord " + number + " of \"changes\" must be [beat, \"symbol\"]");
      }
      startingAt.put(change.get(0).doubleValue(), Harmony.parse(change.get(1).textValue()));
    }
    Optional<Key> key = JsonNotes.word(line, "key").map(Key::parse);
    return Changes.through(startingAt, key);
  }

  private static Metre metre(JsonNode line) {
    double beats = JsonNotes.number(line, "beatsPerBar").orElse(4.0);
    if (beats != Math.rint(beats) || beats < 1 || beats > 32) {
      throw new IllegalArgumentException("\"beatsPerBar\" must be a whole number from 1 to 32");
    }
    return new Metre((int) beats, 4);
  }
}
