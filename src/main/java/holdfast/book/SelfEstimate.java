package holdfast.book;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.disk.JsonPlace;
import holdfast.mistake.Quoted;
import holdfast.mistake.UserMistake;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * How a take felt to the one who played it, asked before the verdicts are shown: comparing one's
 * own ear with another's is where learning is. No grade.
 *
 * @param feeling in a word
 * @param words in the student's own words; may be empty
 */
public record SelfEstimate(Feeling feeling, String words) {

  /** Characters; a few sentences. */
  private static final int LONGEST = 2000;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** Four words, none of them a mark. */
  public enum Feeling {
    /** The idea kept slipping away. */
    SLIPPERY,
    /** It held here and there. */
    PATCHY,
    /** It mostly held. */
    STEADY,
    /** It went by itself. */
    EASY;

    /** As it is written and typed. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Reads a word.
     *
     * @throws UserMistake where it is none of the four
     */
    public static Feeling read(String word) {
      return Arrays.stream(values())
          .filter(f -> f.word().equals(word.strip().toLowerCase(Locale.ROOT)))
          .findFirst()
          .orElseThrow(
              () ->
                  new UserMistake(
                      "there is no feeling \""
                          + Quoted.shortly(word)
                          + "\"; choose one of "
                          + Arrays.stream(values())
                              .map(Feeling::word)
                              .collect(Collectors.joining(", "))));
    }
  }

  /** Strips, and checks the length. */
  public SelfEstimate {
    words = words.strip();
    if (words.length() > LONGEST) {
      throw new UserMistake("say how it felt in " + LONGEST + " characters or fewer");
    }
  }

  String json() {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("feeling", feeling.word());
    root.put("words", words);
    return root.toPrettyString() + "\n";
  }

  static SelfEstimate parse(String json, String where) {
    try {
      JsonNode root = MAPPER.readTree(json);
      return new SelfEstimate(
          Feeling.read(root.path("feeling").asText()),
          Optional.ofNullable(root.path("words").textValue()).orElse(""));
    } catch (JsonProcessingException e) {
      throw new UserMistake(
          where + ", line " + JsonPlace.line(e) + ": this is no JSON; mend or delete it", e);
    }
  }
}
