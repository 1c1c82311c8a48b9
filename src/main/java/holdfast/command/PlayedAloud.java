package holdfast.command;

import holdfast.backing.BackingPlayer;
import holdfast.backing.BeatNotice;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.SoundPlayer;
import holdfast.backing.sound.SoundChoice;
import java.io.PrintWriter;
import java.util.function.Consumer;

/** Plays a performance to its end, or until somebody stops the program. */
final class PlayedAloud {

  /** How often we look whether the music is over. */
  private static final long LOOK_MILLIS = 50;

  /** The last chord may ring before the device is closed. */
  private static final long RING_MILLIS = 1_000;

  private PlayedAloud() {}

  /**
   * Plays.
   *
   * @param onBeat is told of every beat as it sounds
   */
  static void play(
      Performance performance, SoundChoice choice, PrintWriter out, Consumer<BeatNotice> onBeat)
      throws InterruptedException {
    out.println(SoundChoice.HEARING);
    try (BackingPlayer player = SoundPlayer.open(choice)) {
      player.trouble().ifPresent(out::println);
      out.println("Stop with Ctrl-C.");
      out.flush();
      try (Playback playback = player.start(performance)) {
        playback.onBeat(onBeat);
        while (playback.isRunning()) {
          Thread.sleep(LOOK_MILLIS);
        }
        Thread.sleep(RING_MILLIS);
      }
    }
  }
}
