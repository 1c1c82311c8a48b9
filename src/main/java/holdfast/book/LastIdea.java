package holdfast.book;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import holdfast.carry.Statement;
import holdfast.disk.JsonPlace;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.motif.Family;
import holdfast.theory.Harmony;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The idea of the newest take that the user's folder keeps, in the beats of that take. */
public final class LastIdea {

  private LastIdea() {}

  /**
   * The idea and the chord that it was played over.
   *
   * @param takes the folder that holds a folder for each take, named so that they sort by time
   * @throws UserMistake where there is no take, or none with an idea
   */
  public static Statement read(Path takes) {
    Path file =
        newest(takes)
            .orElseThrow(
                () ->
                    new UserMistake(
                        "there is no take in " + takes + " yet; play one, or give --idea"));
    JsonNode idea = tree(file).path("idea");
    if (!idea.isObject()) {
      throw new UserMistake(file + ": the last take has no idea; play another, or give --idea");
    }
    return statement(file, idea, idea.path("chord"));
  }

  /**
   * How the player said the idea in that take, in order: every phrase that carried it with as many
   * notes as it has. None where there is no such take.
   *
   * @throws UserMistake where the take's file is broken
   */
  public static List<Statement> statements(Path takes) {
    Optional<Path> file = newest(takes);
    if (file.isEmpty()) {
      return List.of();
    }
    JsonNode judgement = tree(file.get());
    int size = judgement.path("idea").path("notes").size();
    List<Statement> said = new ArrayList<>();
    for (JsonNode phrase : judgement.path("phrases")) {
      boolean carries = !phrase.path("family").asText("").equals(Family.NEW.word());
      if (carries && size > 0 && phrase.path("notes").size() == size) {
        said.add(statement(file.get(), phrase, phrase.path("chords").path(0)));
      }
    }
    return List.copyOf(said);
  }

  private static Statement statement(Path file, JsonNode said, JsonNode chord) {
    try {
      List<Note> notes = new ArrayList<>();
      for (JsonNode note : said.path("notes")) {
        notes.add(
            new Note(
                note.path("onset").asDouble(Double.NaN),
                note.path("duration").asDouble(Double.NaN),
                note.path("pitch").asInt(-1)));
      }
      Optional<Harmony> over =
          chord.isTextual() ? Optional.of(Harmony.parse(chord.textValue())) : Optional.empty();
      return new Statement(notes, over);
    } catch (IllegalArgumentException e) {
      throw new UserMistake(
          file + ", idea: " + e.getMessage() + "; judge the take again, or give --idea", e);
    }
  }

  private static Optional<Path> newest(Path takes) {
    if (!Files.isDirectory(takes)) {
      return Optional.empty();
    }
    try (Stream<Path> folders = Files.list(takes)) {
      return folders
          .sorted(Comparator.comparing((Path f) -> f.getFileName().toString()).reversed())
          .map(folder -> folder.resolve(TakeFolder.JUDGEMENT))
          .filter(Files::isRegularFile)
          .findFirst();
    } catch (IOException e) {
      throw new UserMistake(takes + " cannot be read (" + e.getMessage() + "); give --idea", e);
    }
  }

  private static JsonNode tree(Path file) {
    try {
      return new ObjectMapper().readTree(file.toFile());
    } catch (JsonProcessingException e) {
      throw new UserMistake(file + " is broken (line " + JsonPlace.line(e) + "); give --idea", e);
    } catch (IOException e) {
      throw new UserMistake(file + " cannot be read (" + e.getMessage() + "); give --idea", e);
    }
  }
}
