package holdfast.command;

import holdfast.backing.sound.OutputLatencies;
import holdfast.backing.sound.SoundBank;
import holdfast.backing.sound.SoundChoice;
import holdfast.book.UserFolder;
import holdfast.mistake.UserMistake;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Where and how loud it is played: the options of every command that makes sound. */
final class SoundOptions {

  /** The file in the user's folder that keeps each device's latency. */
  private static final String LATENCIES = "output-latency.properties";

  @Option(
      names = "--soundfont",
      paramLabel = "FILE",
      description = "Play with the instruments of this SoundFont 2 or DLS file.")
  private Optional<Path> soundFont = Optional.empty();

  @Option(
      names = "--output",
      paramLabel = "NAME",
      description = "Play on the sound device whose name contains this.")
  private Optional<String> output = Optional.empty();

  @Option(
      names = "--volume",
      paramLabel = "PERCENT",
      description = "How loud, 0 to 100 (50 without it).")
  private Optional<Integer> volume = Optional.empty();

  /** The instruments. */
  SoundBank bank() {
    return soundFont.map(SoundBank::read).orElseGet(SoundBank::builtIn);
  }

  /** The output that is asked for, with the latencies that were measured on this machine. */
  SoundChoice choice() {
    return choice(SoundChoice.SAFE_BUFFER_MILLIS);
  }

  /**
   * The same with a buffer of this length.
   *
   * @param bufferMillis how much sound waits in the line
   */
  SoundChoice choice(int bufferMillis) {
    int percent = volume.orElse((int) (100 * SoundChoice.LOW_VOLUME));
    if (percent < 0 || percent > 100) {
      throw new UserMistake("--volume takes 0 to 100, not " + percent);
    }
    return new SoundChoice(
        output, bank(), percent / 100.0, bufferMillis, OutputLatencies.read(latencies()));
  }

  /** The file that keeps each device's latency. */
  static Path latencies() {
    return UserFolder.path().resolve(LATENCIES);
  }
}
