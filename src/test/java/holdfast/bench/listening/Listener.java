package holdfast.bench.listening;

import java.io.IOException;

/** Someone who listens to clips: our own ear, or another's for comparison. */
interface Listener {

  /** A short name for the table. */
  String name();

  /**
   * Listens to a clip.
   *
   * @param clip what to hear
   * @param known whether the clip's backing may be used
   * @throws IOException when an outside program cannot be run
   */
  Hearing hear(Clip clip, boolean known) throws IOException;
}
