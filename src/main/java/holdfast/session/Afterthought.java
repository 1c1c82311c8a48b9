package holdfast.session;

/**
 * Something that only the whole take could tell, and that differs from what was said while it ran.
 *
 * @param kind what it is
 * @param phrase the phrase it is about, counted as they are told now
 */
public record Afterthought(Kind kind, JudgedPhrase phrase) {

  /** What hindsight may find. */
  public enum Kind {
    /** Phrases that were told one by one were one, broken by a hesitation. */
    MERGED,
    /** What was told as one phrase was several that joined without a rest; this is the first. */
    SPLIT,
    /** From here on another idea was carried. */
    NEW_IDEA,
    /** It is heard another way, now that the player's habits are known. */
    HEARD_ANEW,
    /** The idea comes back here after it was let go. */
    TAKEN_BACK,
    /** It answers the phrase before it: the same beginning, and an ending that comes to rest. */
    ANSWER
  }
}
