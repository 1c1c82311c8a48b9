package holdfast.listening.midi;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * Reads a take from a Standard MIDI File of format 0 or 1, also wrapped in RIFF.
 *
 * <p>The reader is our own: the JDK's believes the lengths that a file claims (28 bytes made it
 * allocate 268 MB) and cannot say where a file is broken. Ours costs no more than the file is long.
 *
 * <p>A file that is cut off is refused, since nobody can know what the missing part held, with one
 * exception: where the cut falls between two events of the last track and no note is sounding, all
 * that is missing is the end mark, and the file is plainly usable. {@link #readWhatIsThere} keeps
 * the whole notes of any cut file. A header that counts its tracks wrongly, a missing end-of-track,
 * text that is no text, a tempo of 0 and trailing rubbish are mended and remarked on.
 */
public final class MidiTakeFile {

  /**
   * The longest file that is read, in bytes. An hour of dense playing with every controller moving
   * is about 10 MB; what is longer is not a take.
   */
  static final int LONGEST_FILE = 16 << 20;

  private MidiTakeFile() {}

  /**
   * Reads a take.
   *
   * @throws MidiFileException where the file cannot be used, in one sentence
   */
  public static RecordedTake read(Path file) {
    return read(file.toString(), bytes(file));
  }

  /** Reads a take of which a part may be missing, and keeps the notes that are whole. */
  public static RecordedTake readWhatIsThere(Path file) {
    return new TakeReading(file.toString(), bytes(file), true).take();
  }

  /**
   * Reads a take that is already in memory.
   *
   * @param source its name for people
   */
  public static RecordedTake read(String source, byte[] bytes) {
    return new TakeReading(source, bytes, false).take();
  }

  private static byte[] bytes(Path file) {
    String name = file.toString();
    if (Files.isDirectory(file)) {
      throw MidiFileException.of(name, "is a folder", "give the MIDI file of one take");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LONGEST_FILE + 1);
      if (bytes.length > LONGEST_FILE) {
        throw MidiFileException.of(
            name,
            "is longer than " + (LONGEST_FILE >> 20) + " MB, which no take is",
            "give the MIDI file of one take");
      }
      return bytes;
    } catch (NoSuchFileException e) {
      throw MidiFileException.of(name, "is not there", "check its name and folder", e);
    } catch (AccessDeniedException e) {
      throw MidiFileException.of(
          name, "may not be read by you", "change its permissions or copy it", e);
    } catch (IOException e) {
      throw MidiFileException.of(
          name,
          "cannot be read (" + e.getMessage() + ")",
          "copy it to this machine and try again",
          e);
    }
  }
}
