package holdfast.session;

import holdfast.backing.Playback;
import java.util.Optional;

/**
 * Whoever a running take is shown to, and takes wishes from: a terminal, a window, a test. Called
 * by the session's thread only; must not keep it waiting.
 */
public interface Audience {

  /** What a player may ask for while a take runs. */
  enum Wish {
    /** End the take. */
    STOP,
    /** What comes next is a new idea. */
    NEW_IDEA,
    /** Go round the bars about here, or go on if that is so already. */
    LOOP_HERE,
    /** From the next bar on a little slower. */
    SLOWER,
    /** From the next bar on a little faster. */
    FASTER
  }

  /**
   * The backing starts: whoever draws every frame asks it for the beat, from any thread.
   *
   * @param playback what is being played
   */
  default void begins(Playback playback) {}

  /** Where we are; told many times a second. */
  void moment(Moment moment);

  /** A phrase has ended, and this is said about it. */
  void phrase(JudgedPhrase phrase);

  /** Something that the player should know, in one sentence. */
  void notice(String sentence);

  /** The player's next wish, if there is one. */
  Optional<Wish> wish();
}
