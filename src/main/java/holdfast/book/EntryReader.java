package holdfast.book;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
        judged.families.toString(),
        judged.lostBars,
        folder.felt().map(SelfEstimate::feeling),
        0,
        folder.notes().orElse(""));
  }

  /** What a line needs of a judgement; the rest is skipped unread. */
  private static final class Judgement {
    private String idea = "";
    private int phrases;
    private int carried;
    private int longestRun;
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
          case "idea" -> judged.idea = idea(json.readValueAsTree());
          case "phrases" -> phrases(json, judged.families);
          case "summary" -> summary(json.readValueAsTree(), judged);
          default -> json.skipChildren();
        }
      }
    } catch (JsonProcessingException e) {
      throw broken(file, e.getLocation() == null ? 1 : e.getLocation().getLineNr(), e);
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

  private static String idea(JsonNode idea) {
    List<Note> notes = new ArrayList<>();
    for (JsonNode note : idea.path("notes")) {
      notes.add(
          new Note(
              note.path("onset").asDouble(Double.NaN),
              note.path("duration").asDouble(Double.NaN),
              note.path("pitch").asInt(-1)));
    }
    return notes.isEmpty() ? "" : IdeaNotation.print(notes);
  }

  private static void phrases(JsonParser json, StringBuilder families) throws IOException {
    while (json.nextToken() == JsonToken.START_OBJECT) {
      while (json.nextToken() == JsonToken.FIELD_NAME) {
        boolean isFamily = json.currentName().equals("family");
        json.nextToken();
        if (isFamily) {
          families.append(Optional.ofNullable(json.getText()).orElse("?").charAt(0));
        } else {
          json.skipChildren();
        }
      }
    }
  }

  private static void summary(JsonNode summary, Judgement judged) {
    judged.phrases = summary.path("phrases").asInt();
    judged.carried = summary.path("carried").asInt();
    judged.longestRun = summary.path("longestRun").asInt();
    summary.path("lost").forEach(lost -> judged.lostBars.add(lost.path("bar").asInt()));
  }
}
