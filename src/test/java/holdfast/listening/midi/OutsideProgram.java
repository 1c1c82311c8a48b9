package holdfast.listening.midi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Programs of others that tests are held against; where one is missing its tests are skipped. */
public final class OutsideProgram {

  private OutsideProgram() {}

  /** Runs {@code abc2midi} (Debian package abcmidi) on a tune in ABC notation. */
  public static Path abc2midi(Path folder, String tune) throws IOException, InterruptedException {
    Path abc = folder.resolve("tune.abc");
    Path midi = folder.resolve("tune.mid");
    Files.writeString(abc, tune);
    run("abcmidi", folder, "abc2midi", abc.toString(), "-o", midi.toString());
    return midi;
  }

  /** What {@code midi2abc} (Debian package abcmidi) reads in a MIDI file, as a tune in ABC. */
  public static String midi2abc(Path folder, Path midi) throws IOException, InterruptedException {
    Path abc = folder.resolve("read.abc");
    run("abcmidi", folder, "midi2abc", midi.toString(), "-o", abc.toString());
    return Files.readString(abc, StandardCharsets.ISO_8859_1);
  }

  /** What {@code midicsv} (Debian package midicsv) reads in a MIDI file, a record a line. */
  public static List<String> midicsv(Path folder, Path midi)
      throws IOException, InterruptedException {
    Path csv = folder.resolve("out.csv");
    run("midicsv", folder, "midicsv", midi.toString(), csv.toString());
    return Files.readAllLines(csv, StandardCharsets.ISO_8859_1);
  }

  private static void run(String debianPackage, Path folder, String... command)
      throws IOException, InterruptedException {
    boolean isThere =
        Stream.of(System.getenv("PATH").split(File.pathSeparator, -1))
            .anyMatch(path -> Files.isExecutable(Path.of(path, command[0])));
    assumeTrue(
        isThere, () -> command[0] + " is not installed (Debian package " + debianPackage + ")");
    Path output = folder.resolve("program.txt");
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    assertEquals(0, process.waitFor(), () -> command[0] + " failed, see " + output);
  }
}
