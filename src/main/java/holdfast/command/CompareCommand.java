package holdfast.command;

import com.fasterxml.jackson.databind.JsonNode;
import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Motif;
import holdfast.motif.MotifJudge;
import holdfast.motif.Player;
import holdfast.motif.Priors;
import holdfast.motif.Treatment;
import holdfast.motif.Verdict;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Says, line by line, what became of an idea in a phrase. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    description = {
      "Says what became of an idea in a phrase: the same again, moved, skewed, varied, or new.",
      "Reads one JSON object a line from standard input and answers each with one line, in order."
    },
    footerHeading = "%nA question:%n",
    footer = {
      "  {\"idea\": [[onsetBeats, durationBeats, midiPitch], …], \"phrase\": [[…], …],",
      "   \"ideaChord\": \"Dm7\", \"phraseChord\": \"G7\", \"key\": \"C\",",
      "   \"player\": \"keyboard\", \"beatsPerBar\": 4}",
      "  (all but idea and phrase may be left out; player is keyboard or voice)",
      "",
      "Its answer:",
      "  {\"treatment\": \"sequence\", \"family\": \"restated\", \"restates\": 0.998, …}",
      "  restates is the probability that a listener hears the idea in the phrase, confidence the",
      "  probability of the treatment; similarity and evidence compare the two note by note."
    })
final class CompareCommand implements Callable<Integer> {

  /** Chords and keys that are remembered; more than any collection of tunes has. */
  private static final int MOST_REMEMBERED = 4096;

  private final MotifJudge judge = new MotifJudge();
  private final Map<String, Harmony> chords = new HashMap<>();
  private final Map<String, Key> keys = new HashMap<>();
  private final Map<List<Optional<?>>, Changes> places = new HashMap<>();

  @Override
  public Integer call() throws IOException {
    return JsonLines.answer(
        new InputStreamReader(System.in, StandardCharsets.UTF_8),
        new OutputStreamWriter(System.out, StandardCharsets.UTF_8),
        this::answer);
  }

  Map<String, Object> answer(JsonNode line) {
    List<Note> idea = JsonNotes.beats(line, "idea");
    List<Note> phrase = JsonNotes.beats(line, "phrase");
    Optional<Harmony> ideaChord = JsonNotes.word(line, "ideaChord").map(this::chord);
    Optional<Harmony> phraseChord = JsonNotes.word(line, "phraseChord").map(this::chord);
    Optional<Key> key = JsonNotes.word(line, "key").map(this::key);
    Context context =
        new Context(
            phraseChord.map(chord -> place(chord, key)),
            key,
            player(line),
            beatsPerBar(line),
            Priors.START);
    return answer(judge.compare(new Motif(idea, ideaChord), phrase, context));
  }

  private static Map<String, Object> answer(Verdict verdict) {
    Map<String, Object> evidence = new LinkedHashMap<>();
    evidence.put("rhythm", rounded(verdict.evidence().rhythm()));
    evidence.put("contour", rounded(verdict.evidence().contour()));
    evidence.put("intervals", rounded(verdict.evidence().intervals()));
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("treatment", verdict.treatment().word());
    answer.put("family", verdict.family().word());
    answer.put("restates", verdict.restates());
    answer.put("similarity", rounded(verdict.similarity()));
    answer.put("evidence", evidence);
    answer.put("transposition", verdict.transposition());
    answer.put("scaleSteps", verdict.scaleSteps());
    answer.put("shiftBeats", rounded(verdict.shiftBeats()));
    answer.put("timeScale", rounded(verdict.timeScale()));
    answer.put("confidence", rounded(verdict.confidence()));
    if (!verdict.detail().isEmpty()) {
      answer.put("detail", verdict.detail());
    }
    if (verdict.treatment() == Treatment.NEW) {
      answer.put("material", verdict.material().words());
    }
    return answer;
  }

  /** A millionth is more than anybody can tell, and keeps lines short. */
  private static double rounded(double value) {
    return Math.rint(value * 1e6) / 1e6;
  }

  private Harmony chord(String symbol) {
    forget(chords);
    return chords.computeIfAbsent(symbol, Harmony::parse);
  }

  private Key key(String name) {
    forget(keys);
    return keys.computeIfAbsent(name, Key::parse);
  }

  private Changes place(Harmony chord, Optional<Key> key) {
    forget(places);
    return places.computeIfAbsent(
        List.of(Optional.of(chord), key), place -> Changes.vamp(chord, key));
  }

  private static void forget(Map<?, ?> remembered) {
    if (remembered.size() >= MOST_REMEMBERED) {
      remembered.clear();
    }
  }

  private static Player player(JsonNode line) {
    String word = JsonNotes.word(line, "player").orElse("");
    return switch (word) {
      case "" -> Player.UNKNOWN;
      case "keyboard" -> Player.KEYBOARD;
      case "voice" -> Player.VOICE;
      default ->
          throw new IllegalArgumentException(
              "\"player\" must be \"keyboard\" or \"voice\", not \"" + word + "\"");
    };
  }

  private static double beatsPerBar(JsonNode line) {
    double beats = JsonNotes.number(line, "beatsPerBar").orElse(4.0);
    if (!(beats > 0) || beats > 64) {
      throw new IllegalArgumentException("\"beatsPerBar\" must be more than 0, at most 64");
    }
    return beats;
  }
}
