package holdfast.listening.alignment;

import holdfast.backing.Performance;
import holdfast.motif.Player;
import holdfast.session.Coach;
import holdfast.session.DemoTake;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/**
 * A made-up take in a file, with what is true of it.
 *
 * @param file the recording
 * @param barOneSeconds where bar 1 is in it
 * @param phrases how many phrases the same notes make, judged without any sound
 * @param carried how many of them carry the idea
 */
public record MadeRecording(Path file, double barOneSeconds, int phrases, int carried) {

  /** A take to be made. */
  public record Plan(Mixture.Wish wish) {

    /** With the backing at this level, in decibels under full scale. */
    public Plan backing(double db) {
      return new Plan(wish.backing(db));
    }

    /** On a recorder whose seconds last this many times as long. */
    public Plan clock(double times) {
      return new Plan(wish.clock(times));
    }

    /** Lasting so many seconds, to the backing's end at most. */
    public Plan lasting(double seconds) {
      Performance one = Mixture.performance(wish.chart(), 1, 1);
      int choruses = (int) Math.ceil(seconds / one.seconds());
      return new Plan(wish.choruses(choruses).lasting(seconds));
    }

    /** Makes it. */
    public MadeRecording write(Path folder) throws IOException {
      Mixture mixture = Mixture.of(wish);
      byte[] bytes = new byte[2 * mixture.samples().length];
      for (int i = 0; i < mixture.samples().length; i++) {
        short value = (short) Math.max(-32767, Math.min(32767, 32767 * mixture.samples()[i]));
        bytes[2 * i] = (byte) value;
        bytes[2 * i + 1] = (byte) (value >> 8);
      }
      Path file = folder.resolve("take.wav");
      AudioFormat format = new AudioFormat(Mixture.RATE, 16, 1, true, false);
      AudioSystem.write(
          new AudioInputStream(new ByteArrayInputStream(bytes), format, mixture.samples().length),
          AudioFileFormat.Type.WAVE,
          file.toFile());
      Performance performance = Mixture.performance(wish.chart(), wish.choruses(), 1);
      Setting setting =
          Setting.of(
              performance.arrangement(), performance.tempoMap(), Player.VOICE, Optional.empty());
      double end = wish.seconds() - mixture.barOneSeconds();
      JudgedTake judged =
          Coach.judge(
              setting,
              DemoTake.over(performance.arrangement()).played(performance.tempoMap()).stream()
                  .filter(note -> note.onsetSeconds() < end)
                  .toList(),
              phrase -> {});
      return new MadeRecording(
          file, mixture.barOneSeconds(), judged.phrases().size(), judged.counts().carried());
    }
  }

  /** The voice well over the backing, in a room, for a minute. */
  public static Plan usual(String chart) {
    return new Plan(Mixture.Wish.usual(chart, 11));
  }
}
