package holdfast.mistake;

/**
 * Something the user gave cannot be used as it is. The message is one sentence in plain words that
 * names the file, the place and the mend; it is shown as it stands, without a stack trace, and the
 * command leaves with exit code 2.
 */
public class UserMistake extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** A mistake told in one sentence. */
  public UserMistake(String sentence) {
    super(sentence);
  }

  /** A mistake told in one sentence, with what uncovered it for the log. */
  public UserMistake(String sentence, Throwable cause) {
    super(sentence, cause);
  }

  /** What the user wrote, in quotation marks, cut short where it is too long for a sentence. */
  public static String quoted(String written) {
    return "\"" + Quoted.shortly(written) + "\"";
  }
}
