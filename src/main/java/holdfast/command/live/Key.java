package holdfast.command.live;

import java.util.Optional;

/** What a key means while a take runs. */
public enum Key {
  /** Space, q or Ctrl-C: end the take. */
  STOP,
  /** i: what comes next is a new idea. */
  NEW_IDEA,
  /** h: hide what is said about each phrase, or show it again. */
  HIDE,
  /** l: go round these bars, or go on. */
  LOOP_HERE;

  private static final int CONTROL_C = 3;

  static Optional<Key> of(int pressed) {
    return switch (pressed) {
      case ' ', 'q', 'Q', CONTROL_C -> Optional.of(STOP);
      case 'i', 'I' -> Optional.of(NEW_IDEA);
      case 'h', 'H' -> Optional.of(HIDE);
      case 'l', 'L' -> Optional.of(LOOP_HERE);
      default -> Optional.empty();
    };
  }

  /** The line that tells the keys. */
  public static String help() {
    return "keys: space stops, i takes a new idea, h hides what I say, l loops these bars";
  }
}
