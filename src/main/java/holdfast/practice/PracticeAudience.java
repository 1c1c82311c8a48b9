package holdfast.practice;

import holdfast.session.Audience;

/**
 * Whoever is shown a practice take: a terminal, a window, a test. As with every {@link Audience},
 * the session's thread calls and must not be kept waiting.
 */
public interface PracticeAudience extends Audience {

  /** A passage begins: it is the coach's turn or the student's. */
  void passage(Passage passage);

  /** The coach is about to say this; it sounds in a moment. */
  void coachSays(CoachLine line);

  /** A passage of the student's is over, and this came of it. */
  void outcome(Outcome outcome);
}
