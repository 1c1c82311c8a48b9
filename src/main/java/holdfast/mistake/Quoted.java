package holdfast.mistake;

/** Words of another hand, cut so that a sentence about them stays a sentence. */
public final class Quoted {

  /** Characters; enough to find the place by. */
  private static final int LONGEST = 60;

  private Quoted() {}

  /** The text, or its beginning and an ellipsis. */
  public static String shortly(String text) {
    return text.codePointCount(0, text.length()) <= LONGEST
        ? text
        : text.substring(0, text.offsetByCodePoints(0, LONGEST)) + "…";
  }
}
