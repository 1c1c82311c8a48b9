package holdfast.book.assignment;

import holdfast.book.TakeFolder;
import holdfast.book.TakeSettings;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A take in one file, to be sent back: what was played and what was said about it, for any machine.
 * Its report opens in any browser once it is unpacked.
 */
public final class Answer {

  /** How the name of such a file ends. */
  public static final String ENDING = ".carried";

  /** Bytes of a text or a MIDI file; an hour of playing has less. */
  private static final int MOST_BYTES = 32 << 20;

  private static final List<String> PARTS =
      List.of(
          TakeFolder.SETTINGS,
          TakeFolder.HEARD,
          TakeFolder.MIDI,
          TakeFolder.JUDGEMENT,
          TakeFolder.REPORT,
          TakeFolder.FELT,
          TakeFolder.NOTES,
          TakeFolder.OVERRULED);

  private Answer() {}

  /** The file beside its assignment that a student sends back, named after both. */
  public static Path beside(Path task, Optional<String> student) {
    String name = task.getFileName().toString();
    String stem =
        name.endsWith(Assignment.ENDING)
            ? name.substring(0, name.length() - Assignment.ENDING.length())
            : name;
    String who =
        student
            .map(s -> s.replaceAll("[^\\p{L}\\p{M}\\p{N}]+", "-").replaceAll("^-|-$", ""))
            .filter(plain -> !plain.isEmpty())
            .map(plain -> plain + "_")
            .orElse("");
    return task.resolveSibling(who + stem + ENDING);
  }

  /**
   * Packs a take.
   *
   * @param withSound whether the recording goes along, where there is one; it may be a child's
   *     voice, so somebody should have been asked
   */
  public static void pack(TakeFolder take, Path file, boolean withSound) {
    Map<String, Path> files = new LinkedHashMap<>();
    for (String part : PARTS) {
      Path there = take.path().resolve(part);
      if (Files.isRegularFile(there)) {
        files.put(part, there);
      }
    }
    if (withSound && Files.isRegularFile(take.recording())) {
      files.put(TakeFolder.RECORDING, take.recording());
    }
    OpenZip.write(file, Map.of(), files);
  }

  /**
   * Unpacks an answer into a folder of its own; a recording in it is passed by.
   *
   * @param into an empty folder that is there
   * @throws UserMistake where the file is none of ours, or damaged
   */
  public static TakeFolder unpack(Path file, Path into) {
    Map<String, Integer> limits = new LinkedHashMap<>();
    PARTS.forEach(part -> limits.put(part, MOST_BYTES));
    Map<String, byte[]> parts = new OpenZip("answer", ENDING, limits).read(file);
    byte[] settings =
        Optional.ofNullable(parts.get(TakeFolder.SETTINGS))
            .orElseThrow(
                () -> new UserMistake(file + " is no whole answer; ask for it to be sent again"));
    try {
      // Read before anything is written: a folder without it would be no take.
      TakeSettings read =
          TakeSettings.parse(new String(settings, StandardCharsets.UTF_8), file.toString());
      for (Map.Entry<String, byte[]> part : parts.entrySet()) {
        Files.write(into.resolve(part.getKey()), part.getValue());
      }
      TakeFolder folder = new TakeFolder(into);
      if (!folder.isPlayed()) {
        throw new UserMistake(
            file + ": the take of " + read.title() + " is missing; ask for it to be sent again");
      }
      return folder;
    } catch (IOException e) {
      throw new UserMistake(
          into + " cannot be written (" + e.getMessage() + "); make room on the disk", e);
    }
  }
}
