package holdfast.practice.invent;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.disk.JsonPlace;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.WrittenIdea;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.time.Metre;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What is kept of an inventing session, as an open JSON file beside its take: {@value #FILE}.
 *
 * @param chords over which it was invented, as chord symbols
 * @param minutes how long it lasted
 * @param said how many ideas were played
 * @param ideas the really different ones by the numbers that were told, in beats from their own bar
 *     lines
 */
public record Invented(
    List<String> chords, double minutes, int said, SortedMap<Integer, List<Note>> ideas) {

  /** The file's name. */
  public static final String FILE = "invented.json";

  /** Stands in a take's settings where other takes have their way of practising. */
  public static final String WAY = "invent";

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final double TENTHS = 10;
  private static final double SECONDS = 60;

  /** Copies. */
  public Invented {
    chords = List.copyOf(chords);
    ideas = Collections.unmodifiableSortedMap(new TreeMap<>(ideas));
  }

  /** How many really different ideas there were. */
  public int different() {
    return ideas.size();
  }

  /** A session as JSON text, with the take that it was played in. */
  public static String json(Inventing session, List<String> chords, JudgedTake take) {
    List<JudgedPhrase> phrases = take.phrases();
    double minutes =
        phrases.isEmpty() ? 0 : phrases.get(phrases.size() - 1).decidedSeconds() / SECONDS;
    return json(session, chords, minutes, take.setting().metre());
  }

  private static String json(Inventing session, List<String> chords, double minutes, Metre metre) {
    ObjectNode root = JSON.createObjectNode();
    ArrayNode over = root.putArray("chords");
    chords.forEach(over::add);
    root.put("minutes", Math.rint(minutes * TENTHS) / TENTHS);
    root.put("said", session.ideas().size());
    root.put("different", session.different().size());
    ArrayNode ideas = root.putArray("ideas");
    for (Invention idea : session.ideas()) {
      ObjectNode node = ideas.addObject();
      node.put("number", idea.number());
      node.put("notes", IdeaNotation.print(WrittenIdea.ofPlayed(idea.notes(), metre)));
      idea.sameAs().ifPresentOrElse(same -> node.put("sameAs", same), () -> node.putNull("sameAs"));
      idea.clothes().ifPresent(c -> node.put("clothes", c.words()));
      ArrayNode differences = node.putArray("differences");
      Difference.inOrder(idea.differences()).map(Difference::words).forEach(differences::add);
    }
    return root.toPrettyString() + "\n";
  }

  /**
   * Reads such a file.
   *
   * @throws UserMistake where it is none
   */
  public static Invented read(Path file) {
    try {
      JsonNode root = JSON.readTree(Files.readString(file));
      List<String> chords = new ArrayList<>();
      root.path("chords").forEach(chord -> chords.add(chord.asText()));
      SortedMap<Integer, List<Note>> ideas = new TreeMap<>();
      for (JsonNode idea : root.path("ideas")) {
        if (idea.path("sameAs").isNull()) {
          ideas.put(idea.path("number").asInt(), IdeaNotation.parse(idea.path("notes").asText()));
        }
      }
      return new Invented(
          chords, root.path("minutes").asDouble(), root.path("said").asInt(), ideas);
    } catch (JsonProcessingException e) {
      throw new UserMistake(file + " is broken (line " + JsonPlace.line(e) + "); invent again", e);
    } catch (IOException | IllegalArgumentException e) {
      throw new UserMistake(file + ": " + e.getMessage() + "; invent again", e);
    }
  }
}
