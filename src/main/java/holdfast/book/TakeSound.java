package holdfast.book;

import holdfast.listening.PlayedNote;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.EarTape;
import holdfast.listening.audio.SoundFile;
import holdfast.listening.pitch.FileEar;
import holdfast.motif.Player;
import holdfast.report.PitchTrace;
import holdfast.session.JudgedTake;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The recording of a take, and where in it the take begins: a microphone is opened some moments
 * before the first beat. The place is found by listening to the recording once more; its notes and
 * those that the take holds are the same notes, and most pairs of them are equally far apart.
 */
public final class TakeSound implements AutoCloseable {

  /** Pitches that a recorded voice or instrument may have, in hertz: C2 to C7. */
  private static final double LOWEST_HZ = 65;

  private static final double HIGHEST_HZ = 2100;

  /**
   * Two notes are taken for the same where their onsets differ by as much as most others', to this.
   */
  private static final double SAME_SECONDS = 0.04;

  /** Nobody waits longer between a microphone's first sound and the first beat, in seconds. */
  private static final double LONGEST_LEAD_SECONDS = 60;

  /** So large a part of the take's notes has to be found again. */
  private static final double ENOUGH = 0.3;

  private final EarTape tape;
  private final Optional<Double> zeroSeconds;
  private final PitchTrace trace;
  private final boolean sings;

  private TakeSound(EarTape tape, Optional<Double> zero, PitchTrace trace, boolean sings) {
    this.tape = tape;
    this.zeroSeconds = zero;
    this.trace = trace;
    this.sings = sings;
  }

  /** Listens to the recording of a take. */
  static TakeSound of(Path recording, JudgedTake take) {
    EarTape tape = SoundFile.tape(recording);
    List<PlayedNote> heard = new ArrayList<>();
    PitchTrace heights = listen(tape, heard);
    List<PlayedNote> played = take.phrases().stream().flatMap(p -> p.played().stream()).toList();
    Optional<Double> zero = lead(heard, played);
    return new TakeSound(
        tape, zero, heights.from(-zero.orElse(0.0)), take.setting().player() == Player.VOICE);
  }

  /** How high a voice stands all along a sound, from the sound's beginning on. */
  public static PitchTrace heights(EarSound sound) {
    return listen(sound, new ArrayList<>());
  }

  private static PitchTrace listen(EarSound tape, List<PlayedNote> heard) {
    int values = (int) (tape.length() / (16_000 * PitchTrace.STEP_SECONDS)) + 2;
    float[] heights = new float[values];
    Arrays.fill(heights, Float.NaN);
    heard.addAll(
        FileEar.hear(
                tape,
                LOWEST_HZ,
                HIGHEST_HZ,
                (seconds, hz, sung) -> {
                  int index = (int) Math.round(seconds / PitchTrace.STEP_SECONDS);
                  if (sung && hz > 0 && index >= 0 && index < heights.length) {
                    heights[index] = (float) (69 + 12 * Math.log(hz / 440) / Math.log(2));
                  }
                })
            .notes());
    return PitchTrace.of(0, heights);
  }

  /** How far the same notes lie later in the recording than in the take, for most of them. */
  static Optional<Double> lead(List<PlayedNote> heard, List<PlayedNote> played) {
    double[] apart =
        heard.stream()
            .flatMapToDouble(
                one ->
                    played.stream()
                        .filter(other -> Math.abs(other.pitch() - one.pitch()) <= 1)
                        .mapToDouble(other -> one.onsetSeconds() - other.onsetSeconds())
                        .filter(lead -> Math.abs(lead) <= LONGEST_LEAD_SECONDS))
            .sorted()
            .toArray();
    int most = 0;
    int mostFrom = 0;
    for (int from = 0, to = 0; from < apart.length; from++) {
      while (to < apart.length && apart[to] - apart[from] <= SAME_SECONDS) {
        to++;
      }
      if (to - from > most) {
        most = to - from;
        mostFrom = from;
      }
    }
    return most == 0 || most < ENOUGH * played.size()
        ? Optional.empty()
        : Optional.of(apart[mostFrom + most / 2]);
  }

  /** Where in the recording the take's second 0 is; empty where the take is not found in it. */
  Optional<Double> zeroSeconds() {
    return zeroSeconds;
  }

  EarSound sound() {
    return tape;
  }

  /** How high the voice stood, where one sang and the take was found in the recording. */
  Optional<PitchTrace> trace() {
    return sings && zeroSeconds.isPresent() ? Optional.of(trace) : Optional.empty();
  }

  @Override
  public void close() {
    tape.close();
  }
}
