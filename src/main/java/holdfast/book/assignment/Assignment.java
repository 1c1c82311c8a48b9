package holdfast.book.assignment;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.backing.Arrangement;
import holdfast.backing.Feel;
import holdfast.backing.Performance;
import holdfast.chart.Chart;
import holdfast.chart.ChartText;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.Way;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.zip.ZipFile;

/**
 * A task that a teacher gives: play over this chart, at this tempo, so many times round.
 *
 * @param number tells this task from others; letters and digits
 * @param chart the tune
 * @param feel of the backing
 * @param beatsPerMinute how fast
 * @param choruses how many times round, 1 to {@value #MOST_CHORUSES}
 * @param idea the idea to carry; without one the student brings an idea
 * @param way the way of practising, where one is asked for
 * @param words what the teacher says to it; may be empty
 */
public record Assignment(
    String number,
    Chart chart,
    Feel feel,
    double beatsPerMinute,
    int choruses,
    Optional<List<Note>> idea,
    Optional<Way> way,
    String words) {

  /** How the name of such a file ends. */
  public static final String ENDING = ".carry";

  /** More times round are no task for a lesson. */
  public static final int MOST_CHORUSES = 99;

  /** Goes up when a file says what an older program would not understand. */
  private static final int VERSION = 1;

  static final String TASK = "assignment.json";
  private static final String CHART = "chart.txt";

  /** Bytes; a few sentences, and a long form. */
  private static final int MOST_BYTES = 1 << 18;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** Checks what can be checked. */
  public Assignment {
    idea = idea.map(List::copyOf);
    words = words.strip();
    if (!number.matches("[\\p{L}\\p{N}-]{1,64}")) {
      throw new UserMistake("an assignment's number is made of letters and digits");
    }
    if (choruses < 1 || choruses > MOST_CHORUSES) {
      throw new UserMistake("an assignment goes 1 to " + MOST_CHORUSES + " times round");
    }
    if (!(beatsPerMinute >= Arrangement.SLOWEST && beatsPerMinute <= Arrangement.FASTEST)) {
      throw new UserMistake(
          String.format(
              Locale.ROOT,
              "an assignment's tempo is %.0f to %.0f beats a minute",
              Arrangement.SLOWEST,
              Arrangement.FASTEST));
    }
  }

  /** Whether a file is one by its name, or by what it holds where somebody renamed it. */
  public static boolean isOne(Path file) {
    if (file.toString().endsWith(ENDING)) {
      return true;
    }
    if (!Files.isRegularFile(file)) {
      return false;
    }
    try (ZipFile zip = new ZipFile(file.toFile())) {
      return zip.getEntry(TASK) != null;
    } catch (IOException notAZip) {
      return false;
    }
  }

  /** What sounds. */
  public Performance performance() {
    Arrangement arrangement =
        Arrangement.of(chart, feel, beatsPerMinute, Optional.empty(), Optional.empty());
    return new Performance(
        arrangement, OptionalInt.of(choruses), arrangement.usualCountIn(), Set.of());
  }

  /**
   * Packs it into a file.
   *
   * @throws UserMistake where it cannot be written
   */
  public void write(Path file) {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    parts.put(TASK, json().getBytes(StandardCharsets.UTF_8));
    parts.put(CHART, ChartText.print(chart).getBytes(StandardCharsets.UTF_8));
    OpenZip.write(file, parts, Map.of());
  }

  /** Whether it is the coach who brings the idea: none is given, and the way has it so. */
  public boolean coachBringsIdea() {
    return idea.isEmpty() && way.filter(Way::coachBringsIdea).isPresent();
  }

  private String json() {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("version", VERSION);
    root.put("number", number);
    root.put("feel", feel.word());
    root.put("tempo", beatsPerMinute);
    root.put("choruses", choruses);
    idea.map(IdeaNotation::print).ifPresent(notes -> root.put("idea", notes));
    way.ifPresent(asked -> root.put("way", asked.word()));
    root.put("words", words);
    return root.toPrettyString() + "\n";
  }

  /**
   * Opens a file that a teacher packed.
   *
   * @throws UserMistake where it is none, or damaged
   */
  public static Assignment read(Path file) {
    Map<String, byte[]> parts =
        new OpenZip("assignment", ENDING, Map.of(TASK, MOST_BYTES, CHART, MOST_BYTES)).read(file);
    if (!parts.keySet().equals(Set.of(TASK, CHART))) {
      throw new UserMistake(
          file + " is no whole assignment; ask your teacher to pack it once more");
    }
    try {
      JsonNode root = MAPPER.readTree(parts.get(TASK));
      if (root.path("version").asInt(VERSION) > VERSION) {
        throw new NewerFile(
            file
                + " was packed by a newer Holdfast; get that one, or ask your teacher to pack it with"
                + " the older one");
      }
      return new Assignment(
          root.path("number").asText(),
          ChartText.parse(new String(parts.get(CHART), StandardCharsets.UTF_8), file.toString()),
          word(root, "feel").map(Assignment::feel).orElse(Feel.PLAIN),
          root.path("tempo").asDouble(Double.NaN),
          root.path("choruses").asInt(),
          word(root, "idea").map(IdeaNotation::parse),
          word(root, "way").map(Assignment::way),
          root.path("words").asText());
    } catch (JsonProcessingException e) {
      throw new UserMistake(
          file + " is damaged (" + TASK + " is no JSON); ask your teacher to pack it once more", e);
    } catch (IOException e) {
      throw new UserMistake(file + " cannot be read; ask your teacher to pack it once more", e);
    } catch (NewerFile newer) {
      throw newer;
    } catch (UserMistake | IllegalArgumentException e) {
      throw new UserMistake(
          file + ": " + e.getMessage() + "; ask your teacher to pack it once more", e);
    }
  }

  private static Optional<String> word(JsonNode root, String name) {
    return Optional.ofNullable(root.path(name).textValue());
  }

  private static Feel feel(String word) {
    return Feel.read(word).orElseThrow(() -> new UserMistake("there is no feel \"" + word + "\""));
  }

  private static Way way(String word) {
    return Way.read(word)
        .orElseThrow(() -> new UserMistake("there is no way of practising \"" + word + "\""));
  }

  /** Told as it is: packing the same once more would not help. */
  private static final class NewerFile extends UserMistake {
    private static final long serialVersionUID = 1L;

    NewerFile(String sentence) {
      super(sentence);
    }
  }
}
