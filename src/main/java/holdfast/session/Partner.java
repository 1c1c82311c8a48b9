package holdfast.session;

import holdfast.backing.Playback;

/**
 * Whoever plays with the student while a take runs: says a line in between, makes it faster. Called
 * by the session's thread only; must not keep it waiting. What a partner plays is never judged.
 */
public interface Partner {

  /** Nobody: the student plays alone over the backing. */
  Partner NOBODY =
      new Partner() {
        @Override
        public void begin(Playback playback) {}

        @Override
        public void look(double beat) {}

        @Override
        public void hear(JudgedPhrase phrase) {}
      };

  /** The backing has been started. */
  void begin(Playback playback);

  /** The music has come to this beat, as it is heard; told many times a second. */
  void look(double beat);

  /** The student has ended a phrase, and this is said about it. */
  void hear(JudgedPhrase phrase);
}
