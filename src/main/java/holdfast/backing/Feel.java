package holdfast.backing;

import holdfast.mistake.UserMistake;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** How the backing is played. */
public enum Feel {
  /** One chord a bar, held: the teacher's way, with most room for the learner. The default. */
  PLAIN("plain"),
  /** Held chords struck again softly, a bass in halves, straight. */
  BALLAD("ballad"),
  /** Long and short eighths, as slow swing has them; a bass in two. */
  SWING("swing"),
  /** Straight eighths that cross the beat, in the manner of a bossa. */
  EVEN("even"),
  /** The first chord held from end to end, for finding ideas. */
  DRONE("drone");

  private final String word;

  Feel(String word) {
    this.word = word;
  }

  /** As a chart or an option says it. */
  public String word() {
    return word;
  }

  /**
   * The feel that these words name ({@code swing}, {@code slow swing}, {@code even eighths}); empty
   * where they name another, such as a dance of its own.
   */
  public static Optional<Feel> read(String text) {
    String wanted = text.strip().toLowerCase(Locale.ROOT);
    return switch (wanted) {
      case "slow swing" -> Optional.of(SWING);
      case "even eighths", "straight eighths" -> Optional.of(EVEN);
      default -> Arrays.stream(values()).filter(feel -> feel.word.equals(wanted)).findFirst();
    };
  }

  /**
   * The feel that an option names.
   *
   * @throws UserMistake where it names none of ours
   */
  public static Feel parse(String text) {
    return read(text)
        .orElseThrow(
            () ->
                new UserMistake(
                    "there is no feel \""
                        + text
                        + "\"; choose one of "
                        + Arrays.stream(values())
                            .map(Feel::word)
                            .collect(Collectors.joining(", "))));
  }
}
