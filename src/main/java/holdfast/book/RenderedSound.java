package holdfast.book;

import holdfast.backing.BackingAudio;
import holdfast.backing.BackingEvent;
import holdfast.backing.Performance;
import holdfast.backing.sound.SoundBank;
import holdfast.backing.sound.StreamSynth;
import holdfast.listening.PlayedNote;
import holdfast.listening.audio.EarTape;
import holdfast.listening.audio.SoundFile;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.report.Listening;
import holdfast.report.PhraseSounds;
import holdfast.report.SoundBeside;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A take whose notes are kept and not its sound, played again by the synthesizer with its band. */
public final class RenderedSound implements Listening, AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(RenderedSound.class);

  /** Longer takes are not played again for their report, in seconds: they take too much memory. */
  private static final double LONGEST_SECONDS = 15 * 60;

  private static final int LOUDEST = 127;

  private final JudgedTake take;
  private final Performance performance;
  private final Optional<EarTape> tape;
  private final Listening sounds;

  private RenderedSound(
      JudgedTake take,
      Performance performance,
      Optional<EarTape> tape,
      Optional<Listening> sounds) {
    this.take = take;
    this.performance = performance;
    this.tape = tape;
    this.sounds =
        sounds
            .or(() -> tape.map(sound -> new PhraseSounds(sound, zeroSeconds())))
            .orElse(Listening.NOTHING);
  }

  /** Where in the sound the performance's second 0 is. */
  private double zeroSeconds() {
    return -performance.tempoMap().secondsAt(performance.firstBeat());
  }

  /** The sound itself, where this Java could make it. */
  Optional<EarTape> tape() {
    return tape;
  }

  /**
   * The same, heard in the page as far as there is room, and from a file beside it for the rest.
   *
   * @param silentPage how long the page is without sound, in characters
   */
  RenderedSound within(long silentPage, String file) {
    return new RenderedSound(
        take,
        performance,
        tape,
        tape.map(
            sound ->
                new PhraseSounds(sound, zeroSeconds(), silentPage)
                    .orElse(new SoundBeside(file, zeroSeconds()))));
  }

  /** Plays a take again, as fast as the machine can; silent where this Java cannot. */
  public static RenderedSound of(JudgedTake take, Performance backing) {
    Performance whole = asLongAs(take, backing).withPlayedLine(solo(take));
    return new RenderedSound(take, whole, rendered(take, whole), Optional.empty());
  }

  /** What sounds beside the player, from the count-in to the end of the take. */
  static Optional<EarTape> band(JudgedTake take, Performance backing) {
    return rendered(take, asLongAs(take, backing));
  }

  private static Optional<EarTape> rendered(JudgedTake take, Performance whole) {
    if (take.phrases().isEmpty() || whole.seconds() > LONGEST_SECONDS) {
      return Optional.empty();
    }
    int channels = StreamSynth.FORMAT.getChannels();
    try (InputStream stereo = BackingAudio.stream(whole, SoundBank.builtIn())) {
      return Optional.of(SoundFile.tape(stereo, BackingAudio.rate(), channels));
    } catch (UserMistake | IOException e) {
      LOG.warn("the report stays silent: {}", e.getMessage());
      return Optional.empty();
    }
  }

  private static List<BackingEvent> solo(JudgedTake take) {
    List<BackingEvent> solo = new ArrayList<>();
    for (JudgedPhrase phrase : take.phrases()) {
      for (int i = 0; i < phrase.notes().size(); i++) {
        PlayedNote played = phrase.played().get(i);
        int velocity = (int) Math.max(1, Math.round(LOUDEST * played.loudness()));
        solo.add(BackingEvent.ofLine(phrase.notes().get(i), velocity));
      }
    }
    return solo;
  }

  private static Performance asLongAs(JudgedTake take, Performance backing) {
    double end =
        take.phrases().stream()
            .flatMap(phrase -> phrase.notes().stream())
            .mapToDouble(Note::endBeats)
            .max()
            .orElse(0);
    double round =
        (double) backing.arrangement().bars().size() * backing.arrangement().metre().beats();
    int rounds = (int) Math.max(1, Math.ceil(end / round - 1e-6));
    return new Performance(
        backing.arrangement(), OptionalInt.of(rounds), backing.countInBars(), backing.muted());
  }

  @Override
  public Optional<String> address(double fromSeconds, double toSeconds) {
    // The synthesizer keeps one tempo; the take may not have.
    double from = performance.tempoMap().secondsAt(take.setting().beats().beatAt(fromSeconds));
    double to = performance.tempoMap().secondsAt(take.setting().beats().beatAt(toSeconds));
    return sounds.address(from, to);
  }

  @Override
  public void close() {
    tape.ifPresent(EarTape::close);
  }
}
