package holdfast.session;

import holdfast.listening.Heard;
import holdfast.time.TempoMap;
import java.util.Optional;

/** Whoever writes a running take down, so that nothing that was played can be lost. */
public interface Keeper {

  /** Everything that was heard, the moment it was and before anything is made of it. */
  void hear(Heard heard);

  /** A phrase has ended: what is written so far should be on the disk. */
  void phraseEnded(double heardUpToSeconds);

  /** Something happened that is no note. */
  void mark(double seconds, String text);

  /** The tempo has changed: which beat falls on which second from now on. */
  default void tempo(TempoMap beats) {}

  /** What is wrong with the keeping, in one sentence; empty while all is well. */
  Optional<String> trouble();

  /** Keeps nothing, as for a take of the demo student in a test. */
  Keeper NOBODY =
      new Keeper() {
        @Override
        public void hear(Heard heard) {}

        @Override
        public void phraseEnded(double heardUpToSeconds) {}

        @Override
        public void mark(double seconds, String text) {}

        @Override
        public Optional<String> trouble() {
          return Optional.empty();
        }
      };
}
