package holdfast.theory;

/** Which names a country gives to the notes. */
public enum LetterNames {
  /** A to G. */
  ENGLISH,
  /** H is B natural, B is B flat; only where the user has said so. */
  GERMAN
}
