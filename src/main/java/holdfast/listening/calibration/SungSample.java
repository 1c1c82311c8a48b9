package holdfast.listening.calibration;

import holdfast.listening.PlayedNote;
import holdfast.listening.pitch.FileEar;
import holdfast.listening.pitch.Levels;
import java.util.List;
import java.util.Optional;

/**
 * What a little singing or playing tells: the range, the tuning, and whether the microphone is set
 * well.
 *
 * @param lowest lowest pitch that was really held, MIDI
 * @param highest highest pitch that was really held, MIDI
 * @param tuningCents over A = 440 Hz
 * @param levels of the voice and of the room
 * @param clipped samples that stood at full scale
 */
public record SungSample(int lowest, int highest, double tuningCents, Levels levels, long clipped) {

  /** Shorter notes are slips of the ear as often as of the voice, in seconds. */
  private static final double HELD_SECONDS = 0.25;

  /** Less sure notes do not count. */
  private static final double SURE = 0.4;

  /** Louder than this, as {@link Levels} counts, leaves no room for a forte. */
  private static final double TOO_HOT_DB = -15;

  private static final double TOO_QUIET_DB = -50;

  /** A voice less than this over the room cannot be told from it with certainty. */
  private static final double TOO_NEAR_THE_ROOM_DB = 15;

  /** More samples than this at full scale are heard as a crackle. */
  private static final int CLIPPED = 20;

  /**
   * Listens to a recording of it.
   *
   * @param ear samples at the ear's rate
   * @param backgroundDb the room alone
   * @param clipped samples at full scale while it was recorded
   * @return empty where nothing was sung
   */
  public static Optional<SungSample> of(float[] ear, double backgroundDb, long clipped) {
    Profile anyone = Profile.ANYONE;
    FileEar.Hearing heard =
        FileEar.hear(ear, anyone.lowestHz(), anyone.highestHz(), (seconds, hz, sung) -> {});
    List<PlayedNote> held =
        heard.notes().stream()
            .filter(n -> n.durationSeconds() >= HELD_SECONDS && n.confidence() >= SURE)
            .toList();
    if (held.isEmpty()) {
      return Optional.empty();
    }
    int lowest = held.stream().mapToInt(PlayedNote::pitch).min().orElseThrow();
    int highest = held.stream().mapToInt(PlayedNote::pitch).max().orElseThrow();
    double voice = Levels.of(ear, ear.length).voiceDb();
    return Optional.of(
        new SungSample(
            lowest, highest, heard.tuningCents(), new Levels(voice, backgroundDb), clipped));
  }

  /** What should be done about the microphone, or that nothing need be. */
  public String advice() {
    if (clipped > CLIPPED) {
      return "The microphone was overloaded (the sound was cut off at its loudest): turn it down or"
          + " step back, then calibrate again.";
    }
    if (levels.voiceDb() > TOO_HOT_DB) {
      return "That was nearly too loud for the microphone: turn it down a little or step back.";
    }
    if (levels.voiceDb() < TOO_QUIET_DB) {
      return "That was very soft: turn the microphone up or come nearer.";
    }
    if (levels.voiceDb() - levels.backgroundDb() < TOO_NEAR_THE_ROOM_DB) {
      return "The room is nearly as loud as you: close the window, turn fans off, or come nearer.";
    }
    return "The level is good.";
  }
}
