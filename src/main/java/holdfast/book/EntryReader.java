package holdfast.book;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.disk.JsonPlace;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.WrittenIdea;
import holdfast.time.Metre;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Reads the folder of a take into a line of the book. */
final class EntryReader {

  private static final ObjectMapper MAPPER = new ObjectMapper(new JsonFactory());

  private EntryReader() {}

  /**
   * Reads one folder.
   *
   * @throws UserMistake where a file of it is missing or broken; the sentence names it
   */
  static Entry read(TakeFolder folder) {
    TakeSettings settings = folder.settings();
    Judgement judged = judgement(folder.judgement());
    return new Entry(
        folder.name(),
        settings.started(),
        settings.student(),
        settings.title(),
        settings.tempo().openingTempo(),
        settings.way(),
        judged.idea,
        judged.phrases,
        judged.carried,
        judged.longestRun,
        judged.restated,
        judged.fit,
        judged.driftCents,
        judged.families.toString(),
        judged.lostBars,
        folder.felt().map(SelfEstimate::feeling),
        judged.overruled,
        folder.notes().orElse(""),
        folder
            .invented()
            .map(
                session ->
                    new Entry.Fluency(session.different(), session.said(), session.minutes())));
  }

  /** What a line needs of a judgement; the rest is skipped unread. */
  private static final class Judgement {
    private Metre metre = Metre.COMMON;
    private String idea = "";
    private int phrases;
    private int carried;
    private int longestRun;
    private int restated;
    private OptionalDouble fit = OptionalDouble.empty();
    private OptionalDouble driftCents = OptionalDouble.empty();
    private int overruled;
    private final StringBuilder families = new StringBuilder();
    private final List<Integer> lostBars = new ArrayList<>();
  }

  private static Judgement judgement(Path file) {
    Judgement judged = new Judgement();
    try (JsonParser json = MAPPER.createParser(file.toFile())) {
      if (json.nextToken() != JsonToken.START_OBJECT) {
        throw broken(file, 1, null);
      }
      while (json.nextToken() == JsonToken.FIELD_NAME) {
        String field = json.currentName();
        json.nextToken();
        switch (field) {
          case "metre" -> judged.metre = metre(json.getText());
          case "idea" -> judged.idea = idea(json.readValueAsTree(), judged.metre);
          case "phrases" -> phrases(json, judged);
          case "intonation" ->
              judged.driftCents = number(json.<JsonNode>readValueAsTree().path("driftCents"));
          case "summary" -> summary(json.readValueAsTree(), judged);
          default -> json.skipChildren();
        }
      }
    } catch (JsonProcessingException e) {
      throw broken(file, JsonPlace.line(e), e);
    } catch (IllegalArgumentException e) {
      throw broken(file, 1, e);
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be read (" + e.getMessage() + "); bring it back from an export", e);
    }
    return judged;
  }

  private static UserMistake broken(Path file, int line, Exception cause) {
    return new UserMistake(
        file + ", line " + line + ": this is no judgement of a take; bring back its old text",
        cause);
  }

  /** In the rhythm in which it would be written, so that an idea played twice is one idea. */
  private static String idea(JsonNode idea, Metre metre) {
    List<Note> notes = new ArrayList<>();
    for (JsonNode note : idea.path("notes")) {
      notes.add(
          new Note(
              note.path("onset").asDouble(Double.NaN),
              note.path("duration").asDouble(Double.NaN),
              note.path("pitch").asInt(-1)));
    }
    return notes.isEmpty() ? "" : IdeaNotation.print(WrittenIdea.ofPlayed(notes, metre));
  }

  private static void phrases(JsonParser json, Judgement judged) throws IOException {
    while (json.nextToken() == JsonToken.START_OBJECT) {
      char family = '?';
      boolean states = false;
      while (json.nextToken() == JsonToken.FIELD_NAME) {
        String field = json.currentName();
        json.nextToken();
        switch (field) {
          case "family" -> family = letter(json.getText());
          case "statesTheIdea" -> states = true;
          case "overruled" -> {
            judged.overruled++;
            json.skipChildren();
          }
          default -> json.skipChildren();
        }
      }
      if (!states) {
        judged.families.append(family);
      }
    }
  }

  private static Metre metre(String text) {
    String[] parts = text.split("/", 2);
    return new Metre(Integer.parseInt(parts[0]), Integer.parseInt(parts[parts.length - 1]));
  }

  private static char letter(String family) {
    return family == null || family.isEmpty() ? '?' : family.charAt(0);
  }

  private static OptionalDouble number(JsonNode node) {
    return node.isNumber() ? OptionalDouble.of(node.doubleValue()) : OptionalDouble.empty();
  }

  private static void summary(JsonNode summary, Judgement judged) {
    judged.phrases = summary.path("phrases").asInt();
    judged.carried = summary.path("carried").asInt();
    judged.restated = summary.path("restated").asInt();
    judged.fit = number(summary.path("fit").path("score"));
    judged.longestRun = summary.path("longestRun").asInt();
    summary.path("lost").forEach(lost -> judged.lostBars.add(lost.path("bar").asInt()));
  }
}
