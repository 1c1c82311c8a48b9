package holdfast.bench.listening;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Another's ear for comparison: the programs {@code aubiopitch} and {@code aubionotes} (Debian's
 * aubio-tools), as they come, but for a frame each 10 ms.
 */
record Aubio() implements Listener {

  /** Their window; a frame that is told at a time looks back on this many samples. */
  private static final int SIZE = 2048;

  private static final int HOP = 441;

  /** Whether both programs can be run here. */
  static boolean isInstalled() {
    return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(":", -1))
        .anyMatch(
            folder ->
                Files.isExecutable(Path.of(folder, "aubiopitch"))
                    && Files.isExecutable(Path.of(folder, "aubionotes")));
  }

  @Override
  public String name() {
    return "aubio";
  }

  @Override
  public Hearing hear(Clip clip, boolean known) throws IOException {
    Path file = Files.createTempFile("clip", ".wav");
    try {
      Files.write(file, wave(clip.samples()));
      Hearing hearing = new Hearing(clip.hz().length);
      String hop = Integer.toString(HOP);
      String size = Integer.toString(SIZE);
      double late = ((double) SIZE / 2 - HOP) / Clip.RATE;
      for (double[] row :
          rows("aubiopitch", "-i", file.toString(), "-H", hop, "-B", size, "-u", "Hz")) {
        int frame = (int) Math.round((row[0] - late) / Clip.FRAME_SECONDS);
        if (frame >= 0 && frame < hearing.hz.length) {
          hearing.hz[frame] = row[1];
        }
      }
      for (double[] row : rows("aubionotes", "-i", file.toString())) {
        if (row.length == 3) {
          double hz = 440 * Math.pow(2, (row[0] - 69) / 12);
          hearing.notes.add(new TrueNote(row[1], row[2], hz));
        }
      }
      return hearing;
    } finally {
      Files.deleteIfExists(file);
    }
  }

  private static List<double[]> rows(String... command) throws IOException {
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
    List<double[]> rows = new ArrayList<>();
    for (String line : text.lines().toList()) {
      if (!line.isBlank()) {
        rows.add(
            Arrays.stream(line.trim().split("\\s+", -1)).mapToDouble(Double::valueOf).toArray());
      }
    }
    return rows;
  }

  /** A mono WAV file of 16 bits. */
  private static byte[] wave(float[] samples) {
    ByteBuffer out = ByteBuffer.allocate(44 + 2 * samples.length).order(ByteOrder.LITTLE_ENDIAN);
    out.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + 2 * samples.length);
    out.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16);
    out.putShort((short) 1).putShort((short) 1).putInt(Clip.RATE).putInt(2 * Clip.RATE);
    out.putShort((short) 2).putShort((short) 16);
    out.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(2 * samples.length);
    for (float sample : samples) {
      out.putShort((short) Math.round(32767 * Math.max(-1, Math.min(1, sample))));
    }
    return out.array();
  }
}
