package holdfast.report;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;

/**
 * The fonts of a collection ({@code .ttc}), each as a font of its own, which a PDF can take in.
 * OpenType 1.9, "Font Collections": a head {@code ttcf}, then for each font a table directory whose
 * offsets count from the beginning of the file, so that fonts can share their tables.
 */
final class FontCollection {

  private static final int HEAD = 0x74746366;

  /** No collection has more fonts, and no font more tables. */
  private static final int MOST = 256;

  private static final int DIRECTORY = 12;
  private static final int RECORD = 16;

  private FontCollection() {}

  /**
   * Where the directories of the fonts are.
   *
   * @throws IOException where the file is no collection, or cut off
   */
  static List<Long> directories(RandomAccessFile file) throws IOException {
    file.seek(0);
    if (file.readInt() != HEAD) {
      throw new IOException("no collection of fonts");
    }
    file.readInt();
    int count = file.readInt();
    if (count < 0 || count > MOST) {
      throw new IOException(count + " fonts in one file");
    }
    List<Long> directories = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      directories.add(file.readInt() & 0xFFFFFFFFL);
    }
    return directories;
  }

  /** The font of a directory with its tables and nothing else. */
  static byte[] font(RandomAccessFile file, long directory) throws IOException {
    file.seek(directory);
    int version = file.readInt();
    int tables = file.readUnsignedShort();
    if (tables > MOST) {
      throw new IOException(tables + " tables in one font");
    }
    byte[] search = new byte[6];
    file.readFully(search);
    int[] records = new int[4 * tables];
    for (int i = 0; i < records.length; i++) {
      records[i] = file.readInt();
    }
    long size = DIRECTORY + (long) RECORD * tables;
    for (int table = 0; table < tables; table++) {
      long from = records[4 * table + 2] & 0xFFFFFFFFL;
      long length = records[4 * table + 3] & 0xFFFFFFFFL;
      if (from + length > file.length()) {
        throw new IOException("a table goes on behind the end of the file");
      }
      size += aligned(length);
    }
    if (size > Integer.MAX_VALUE - 8) {
      throw new IOException("a font of " + size + " bytes");
    }
    ByteBuffer font = ByteBuffer.allocate((int) size);
    font.putInt(version).putShort((short) tables).put(search);
    int at = DIRECTORY + RECORD * tables;
    for (int table = 0; table < tables; table++) {
      int length = records[4 * table + 3];
      font.putInt(records[4 * table]).putInt(records[4 * table + 1]).putInt(at).putInt(length);
      file.seek(records[4 * table + 2] & 0xFFFFFFFFL);
      file.readFully(font.array(), at, length);
      at += aligned(length);
    }
    return font.array();
  }

  /** Tables begin at multiples of four. */
  private static int aligned(long length) {
    return Math.toIntExact((length + 3) / 4 * 4);
  }
}
