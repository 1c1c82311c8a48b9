package holdfast.book.overview;

import holdfast.mistake.UserMistake;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;

/**
 * Which takes this program judges, where several machines share the work.
 *
 * @param number of this share, counted from 1
 * @param of how many there are
 */
public record Share(int number, int of) {

  /** All takes. */
  public static final Share ALL = new Share(1, 1);

  private static final int MOST = 10_000;

  /** Checks the numbers. */
  public Share {
    if (of < 1 || of > MOST || number < 1 || number > of) {
      throw new UserMistake("--part takes a number and of how many, as 3/16");
    }
  }

  /**
   * Reads {@code 3/16}.
   *
   * @throws UserMistake where it is none
   */
  public static Share parse(String text) {
    if (!text.matches("[0-9]{1,5}/[0-9]{1,5}")) {
      throw new UserMistake("--part takes a number and of how many, as 3/16, not \"" + text + "\"");
    }
    String[] parts = text.split("/", -1);
    return new Share(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
  }

  /** Whether this file is in it; every file is in one share, the same on all machines. */
  boolean holds(String file) {
    CRC32 sum = new CRC32();
    sum.update(file.getBytes(StandardCharsets.UTF_8));
    return sum.getValue() % of == number - 1;
  }

  String ending() {
    return of == 1 ? "" : "-" + number + "-of-" + of;
  }
}
