package holdfast.phrase;

import java.util.List;

/**
 * What hindsight makes of the phrases.
 *
 * @param phrases as they should have been cut; one that stayed as it was is the very same value
 * @param changes where that differs from what was said live, in order
 */
public record Revision(List<Phrase> phrases, List<Regrouping> changes) {

  /** Copies. */
  public Revision {
    phrases = List.copyOf(phrases);
    changes = List.copyOf(changes);
  }

  /**
   * A stretch of the take where the live phrases and the revised ones differ; they begin and end
   * together.
   *
   * @param firstLive index of the first live phrase of the stretch
   * @param live how many live phrases it holds, at least 1
   * @param firstRevised index of the first revised phrase of the stretch
   * @param revised how many revised phrases it holds, at least 1
   */
  public record Regrouping(int firstLive, int live, int firstRevised, int revised) {

    /** Phrases that turned out to be one, as when the player hesitated in mid-idea. */
    public boolean isMerge() {
      return revised == 1;
    }

    /** A phrase that turned out to be several, as when restatements joined. */
    public boolean isSplit() {
      return live == 1;
    }
  }
}
