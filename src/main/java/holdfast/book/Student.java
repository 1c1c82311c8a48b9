package holdfast.book;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.disk.JsonPlace;
import holdfast.mistake.UserMistake;
import java.text.Normalizer;
import java.util.Optional;

/**
 * Somebody who plays. No more is kept of a person than this.
 *
 * @param name a first name or nickname, 1 to {@value #LONGEST_NAME} characters
 * @param instrument in the student's own words
 * @param profile the ear's profile that suits the student, by its name
 */
public record Student(String name, Optional<String> instrument, Optional<String> profile) {

  /** Characters; a first name is shorter in every language that we know of. */
  public static final int LONGEST_NAME = 40;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** Cleans the name. */
  public Student {
    name = cleanName(name);
  }

  /** A student of whom only the name is known. */
  public static Student named(String name) {
    return new Student(name, Optional.empty(), Optional.empty());
  }

  /**
   * A name in the form in which it is kept: composed, without control characters and blanks around.
   *
   * @throws UserMistake where nothing is left of it, or too much
   */
  public static String cleanName(String name) {
    String clean =
        Normalizer.normalize(name, Normalizer.Form.NFC)
            .replaceAll("[\\p{Cntrl}\\p{Cf}\\s]+", " ")
            .strip();
    int length = clean.codePointCount(0, clean.length());
    if (clean.isEmpty() || length > LONGEST_NAME) {
      throw new UserMistake(
          "a student needs a first name or nickname of 1 to "
              + LONGEST_NAME
              + " characters, not \""
              + (length > LONGEST_NAME ? clean.substring(0, 20) + "…" : clean)
              + "\"");
    }
    return clean;
  }

  /** Whether these two names mean the same student; case does not count. */
  public static boolean isSame(String one, String other) {
    return FileNames.folded(one).equals(FileNames.folded(other));
  }

  String json() {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("name", name);
    instrument.ifPresent(text -> root.put("instrument", text));
    profile.ifPresent(text -> root.put("profile", text));
    return root.toPrettyString() + "\n";
  }

  static Student parse(String json, String where) {
    try {
      JsonNode root = MAPPER.readTree(json);
      return new Student(
          root.path("name").asText(),
          Optional.ofNullable(root.path("instrument").textValue()),
          Optional.ofNullable(root.path("profile").textValue()));
    } catch (JsonProcessingException e) {
      throw new UserMistake(
          where + ", line " + JsonPlace.line(e) + ": this is no JSON; mend or delete it", e);
    }
  }
}
