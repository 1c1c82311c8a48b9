package holdfast.chart;

import java.util.List;
import java.util.Optional;

/** How the notes of a bar are beamed with their neighbours. */
public final class Beams {

  /** A note's part in a beam. */
  public enum Part {
    BEGIN("begin"),
    CONTINUE("continue"),
    END("end"),
    /** A short beam of its own, towards the note before. */
    BACKWARD_HOOK("backward hook"),
    /** A short beam of its own, towards the note after. */
    FORWARD_HOOK("forward hook");

    private final String word;

    Part(String word) {
      this.word = word;
    }

    /** As MusicXML calls it. */
    String word() {
      return word;
    }
  }

  private Beams() {}

  /** A note's part in the beam of a level, counted from 1; empty where it has none. */
  public static Optional<Part> of(List<MelodyBar.Written> bar, int index, int level) {
    if (bar.get(index).beams() < level) {
      return Optional.empty();
    }
    boolean before = isBeamed(bar, index - 1, index, level);
    boolean after = isBeamed(bar, index, index + 1, level);
    if (before || after) {
      return Optional.of(before && after ? Part.CONTINUE : before ? Part.END : Part.BEGIN);
    }
    if (level == 1) {
      return Optional.empty();
    }
    if (isBeamed(bar, index - 1, index, 1)) {
      return Optional.of(Part.BACKWARD_HOOK);
    }
    return isBeamed(bar, index, index + 1, 1) ? Optional.of(Part.FORWARD_HOOK) : Optional.empty();
  }

  private static boolean isBeamed(List<MelodyBar.Written> bar, int left, int right, int level) {
    return left >= 0
        && right < bar.size()
        && bar.get(left).group() == bar.get(right).group()
        && bar.get(left).beams() >= level
        && bar.get(right).beams() >= level;
  }
}
