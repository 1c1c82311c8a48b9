package holdfast.melody;

import holdfast.mistake.UserMistake;

/**
 * An idea was written in a way that {@link IdeaNotation} cannot read; the message says the mend.
 */
public final class IdeaNotationException extends UserMistake {

  private static final long serialVersionUID = 1L;

  private final int place;

  IdeaNotationException(int place, String problem, String mend) {
    super("idea, place " + place + ": " + problem + "; " + mend);
    this.place = place;
  }

  /** Which word of the idea is meant, counted from 1; bar lines and rests count as words. */
  public int place() {
    return place;
  }
}
