package holdfast.book.assignment;

import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * A ZIP file from somewhere, read with care. Names are looked up and never used as paths, so
 * nothing can be written elsewhere; bytes are counted as they are unpacked, so a small file cannot
 * fill the memory.
 *
 * @param kind what it should be, as in a sentence: {@code assignment}
 * @param ending how the names of such files end
 * @param mostBytes the entries that are read, and how many bytes each may have unpacked
 */
record OpenZip(String kind, String ending, Map<String, Integer> mostBytes) {

  /** A file of ours has about ten entries. */
  private static final int MOST_ENTRIES = 64;

  /** Entries that are not read are skipped, but not for ever; in bytes. */
  private static final long MOST_SKIPPED = 2L << 30;

  /** Copies. */
  OpenZip {
    mostBytes = Map.copyOf(mostBytes);
  }

  /**
   * Reads the entries that are known, and passes the others by.
   *
   * @throws UserMistake where the file is missing, is no ZIP file, or holds more than it may
   */
  Map<String, byte[]> read(Path file) {
    Map<String, byte[]> read = new HashMap<>();
    try (InputStream in = Files.newInputStream(file);
        ZipInputStream zip = new ZipInputStream(in)) {
      int entries = 0;
      long skipped = 0;
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        if (++entries > MOST_ENTRIES) {
          throw new UserMistake(file + " holds too many files for one of ours; ask for it anew");
        }
        Integer most = mostBytes.get(entry.getName());
        if (most == null) {
          skipped += skip(zip, MOST_SKIPPED - skipped, file);
        } else {
          byte[] bytes = zip.readNBytes(most + 1);
          if (bytes.length > most) {
            throw tooLong(file, entry.getName());
          }
          read.putIfAbsent(entry.getName(), bytes);
        }
      }
    } catch (NoSuchFileException e) {
      throw new UserMistake(file + " is not there; check its name and folder", e);
    } catch (EOFException e) {
      throw new UserMistake(file + " is cut off; ask for it to be sent again", e);
    } catch (ZipException | IllegalArgumentException e) {
      throw new UserMistake(
          file + " is damaged (" + e.getMessage() + "); ask for it to be sent again", e);
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be read (" + e.getMessage() + "); ask for it to be sent again", e);
    }
    if (read.isEmpty()) {
      throw new UserMistake(
          file + " is no " + kind + " of ours; ask for the " + ending + " file to be sent again");
    }
    return read;
  }

  private static long skip(InputStream in, long most, Path file) throws IOException {
    byte[] block = new byte[1 << 13];
    long skipped = 0;
    for (int read = in.read(block); read >= 0; read = in.read(block)) {
      skipped += read;
      if (skipped > most) {
        throw tooLong(file, "one that is not ours");
      }
    }
    return skipped;
  }

  private static UserMistake tooLong(Path file, String entry) {
    return new UserMistake(
        file + ": its part " + entry + " is longer than such a part can be; ask for it anew");
  }

  /** Writes a ZIP file of parts, whole or not at all; a part is a text or a file that is there. */
  static void write(Path file, Map<String, byte[]> texts, Map<String, Path> files) {
    WholeFile.write(
        file,
        fresh -> {
          try (OutputStream out = Files.newOutputStream(fresh);
              ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> text : texts.entrySet()) {
              zip.putNextEntry(new ZipEntry(text.getKey()));
              zip.write(text.getValue());
              zip.closeEntry();
            }
            for (Map.Entry<String, Path> part : files.entrySet()) {
              zip.putNextEntry(new ZipEntry(part.getKey()));
              Files.copy(part.getValue(), zip);
              zip.closeEntry();
            }
          }
        });
  }
}
