package holdfast.practice.invent;

import holdfast.session.Audience;

/** Whoever is shown an inventing session, on the session's thread. */
public interface InventingAudience extends Audience {

  /** An idea has ended, and this is said about it. */
  void invented(Invention idea);

  /** Something to start from, for a player who is stuck. */
  void starter(Starter starter);
}
