package holdfast.session;

/**
 * How often the coach speaks while a take runs. Verdicts that were held back are told at the end.
 *
 * <p>Players who are told something after every try come to lean on it and do worse when it is gone
 * (the guidance hypothesis: Salmoni, Schmidt and Walter 1984, from memory). So the coach is silent
 * in every other chorus unless it is asked to speak more.
 */
public enum Feedback {
  /** After each phrase. */
  PHRASE,
  /** After each phrase of every other chorus, from the first. */
  CHORUS,
  /** At the end of the take. */
  END;

  /** Whether a phrase that stands there is told at once. */
  public boolean tellsAt(Place place) {
    return switch (this) {
      case PHRASE -> true;
      case CHORUS -> place.chorus() % 2 == 1;
      case END -> false;
    };
  }
}
