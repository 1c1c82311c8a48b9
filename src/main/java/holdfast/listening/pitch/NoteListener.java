package holdfast.listening.pitch;

/** Is told the notes that a voice sings: each begins once, then ends or is taken back once. */
public interface NoteListener {

  /**
   * A note has begun; told as early as the ear dares.
   *
   * @param onsetSeconds when it began
   * @param cents its pitch so far, in cents (A4 = 6900)
   * @param levelDb its level so far, in decibels under full scale
   */
  void began(double onsetSeconds, double cents, double levelDb);

  /**
   * The note that began last has ended; now all of it is known.
   *
   * @param onsetSeconds when it began
   * @param endSeconds when it ended
   * @param cents where it settled, in cents (A4 = 6900)
   * @param levelDb its level, in decibels under full scale
   * @param confidence how sure the ear is of it, 0 to 1
   */
  void ended(
      double onsetSeconds, double endSeconds, double cents, double levelDb, double confidence);

  /** The note that began last was none after all: too short, or part of its neighbour. */
  void takenBack();
}
