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
    Performance whole = withSolo(take, backing);
    if (take.phrases().isEmpty() || whole.seconds() > LONGEST_SECONDS) {
      return new RenderedSound(take, whole, Optional.empty(), Optional.empty());
    }
    try {
      int channels = StreamSynth.FORMAT.getChannels();
      try (InputStream stereo = BackingAudio.stream(whole, SoundBank.builtIn())) {
        return new RenderedSound(
            take,
            whole,
            Optional.of(SoundFile.tape(stereo, BackingAudio.rate(), channels)),
            Optional.empty());
      }
    } catch (UserMistake | IOException e) {
      LOG.warn("the report stays silent: {}", e.getMessage());
      return new RenderedSound(take, whole, Optional.empty(), Optional.empty());
    }
  }

  private static Performance withSolo(JudgedTake take, Performance backing) {
    List<BackingEvent> solo = new ArrayList<>();
    double end = 0;
    for (JudgedPhrase phrase : take.phrases()) {
      for (int i = 0; i < phrase.notes().size(); i++) {
        Note note = phrase.notes().get(i);
        PlayedNote played = phrase.played().get(i);
        int velocity = (int) Math.max(1, Math.round(LOUDEST * played.loudness()));
        solo.add(BackingEvent.ofLine(note, velocity));
        end = Math.max(end, note.endBeats());
      }
    }
    double round =
        (double) backing.arrangement().bars().size() * backing.arrangement().metre().beats();
    int rounds = (int) Math.max(1, Math.ceil(end / round - 1e-6));
    return new Performance(
            backing.arrangement(), OptionalInt.of(rounds), backing.countInBars(), backing.muted())
        .withPlayedLine(solo);
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
