package holdfast.command;

import com.fasterxml.jackson.databind.JsonNode;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import holdfast.phrase.Phrase;
import holdfast.phrase.PhraseCutter;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Says, line by line, where the phrases of a played line begin and when that was known. */
@Command(
    name = "phrases",
    mixinStandardHelpOptions = true,
    description = {
      "Says where the phrases of a played line begin, as it would have said while listening.",
      "Reads one JSON object a line from standard input and answers each with one line, in order."
    },
    footerHeading = "%nA question:%n",
    footer = {
      "  {\"notes\": [[onsetSeconds, durationSeconds, midiPitch], …], \"bpm\": 60,",
      "   \"idea\": [[onsetBeats, durationBeats, midiPitch], …]}",
      "  (bpm, beats a minute, may be left out where there is no idea; the idea, if",
      "  known, has 2 to 64 notes, and the phrases are expected to carry it)",
      "",
      "Its answer:",
      "  {\"phrases\": [0, 5, …], \"decided\": [0.0, 4.31, …]}",
      "  phrases: the index of the first note of each phrase, counted from 0",
      "  decided: the second at which it was known that a phrase begins there: for",
      "           the first its first onset, for the others at most 0.35 s after the",
      "           note before has ended, or the onset of the note itself where there",
      "           was no rest (later only while a rest of the idea's is waited out)",
      "",
      "A line that cannot be answered gets {\"error\": …} in its place; the exit",
      "code is then 2."
    })
final class PhrasesCommand implements Callable<Integer> {

  /** Where no tempo is given: it only sets the first guess of how fast the notes come. */
  private static final double USUAL_BPM = 120;

  private static final double SLOWEST_BPM = 1;
  private static final double FASTEST_BPM = 1000;

  @Override
  public Integer call() throws IOException {
    return JsonLines.answer(
        new InputStreamReader(System.in, StandardCharsets.UTF_8),
        new OutputStreamWriter(System.out, StandardCharsets.UTF_8),
        PhrasesCommand::answer);
  }

  static Map<String, Object> answer(JsonNode line) {
    List<PlayedNote> notes = JsonNotes.seconds(line, "notes");
    Optional<Double> bpm = JsonNotes.number(line, "bpm");
    Optional<List<Note>> idea =
        line.hasNonNull("idea") ? Optional.of(JsonNotes.beats(line, "idea")) : Optional.empty();
    if (idea.isPresent() && bpm.isEmpty()) {
      throw new IllegalArgumentException(
          "an \"idea\" is in beats; add \"bpm\", the beats a minute of the take");
    }
    double tempo = bpm.orElse(USUAL_BPM);
    if (!(tempo >= SLOWEST_BPM && tempo <= FASTEST_BPM)) {
      throw new IllegalArgumentException("\"bpm\" must be 1 to 1000, not " + tempo);
    }
    return answer(PhraseCutter.cut(notes, TempoMap.steady(tempo), idea));
  }

  private static Map<String, Object> answer(List<Phrase> phrases) {
    List<Integer> firsts = new ArrayList<>();
    List<Double> decided = new ArrayList<>();
    double known = phrases.get(0).startSeconds();
    for (Phrase phrase : phrases) {
      firsts.add(phrase.firstNote());
      decided.add(known);
      known = phrase.decidedSeconds();
    }
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("phrases", firsts);
    answer.put("decided", decided);
    return answer;
  }
}
