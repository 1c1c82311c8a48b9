package holdfast.bench.listening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import holdfast.backing.Arrangement;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.SoundPlayer;
import holdfast.backing.sound.SoundBank;
import holdfast.backing.sound.SoundChoice;
import holdfast.chart.ChartText;
import holdfast.listening.BusyMachine;
import holdfast.listening.PlayedNote;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import holdfast.listening.audio.SoundFile;
import holdfast.listening.calibration.Profile;
import holdfast.listening.pitch.BleedCanceller;
import holdfast.motif.Player;
import holdfast.motif.Treatment;
import holdfast.practice.WatchedBand;
import holdfast.session.Audience;
import holdfast.session.Coach;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.LiveTake;
import holdfast.session.Moment;
import holdfast.session.Setting;
import holdfast.session.input.Inputs;
import holdfast.session.input.ReadyInput;
import holdfast.session.input.Surroundings;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.TempDir;

/**
 * A child sings an idea through eight bars beside a loudspeaker that plays the backing: through the
 * real devices, live. Needs the loop that {@code .ci/audio-loop} makes, and half a minute.
 */
class SungTakeLoopTest {

  private static final String CHART =
      "title: Harbour Lights Out\nkey: C\ntempo: 80\n\n| C | F | Am | G | C | F | Am | C |\n";

  private static final Performance PERFORMANCE =
      new Performance(
          Arrangement.of(ChartText.parse(CHART, "SungTakeLoopTest")),
          OptionalInt.of(1),
          1,
          Set.of());

  /**
   * A machine that starves the devices of sound measures itself, not us: then once more, and in the
   * end the test says that it could not hear.
   */
  private static final int TRIES = 3;

  private static final double BEAT = 60.0 / 80;

  /** An idea of four notes in the beats of a bar: its onset, its length, its pitch. */
  private static final double[][] IDEA = {
    {0, 0.7, 64}, {0.75, 0.7, 67}, {1.5, 0.7, 69}, {2.25, 0.7, 67}
  };

  /** By how many semitones each bar's phrase lies above the idea; a rest where there is none. */
  private static final int[] BARS = {0, 0, 0, 5, 0, 0};

  /** Sound that moved by more than this had a break: unbroken, it stands still to the sample. */
  private static final double BROKEN_SECONDS = 0.001;

  private static final double BACKING_VOLUME = 0.2;

  /** The child's voice is brought to this many times what the singer of the bench gives. */
  private static final float LOUD = 0.25f;

  /** Everything that is heard of the take, with the moment. */
  private static final class Listener implements Audience {
    final List<JudgedPhrase> phrases = new ArrayList<>();
    final List<Double> toldSeconds = new ArrayList<>();
    final List<String> notices = new ArrayList<>();
    volatile Optional<Playback> playback = Optional.empty();

    @Override
    public void moment(Moment moment) {}

    @Override
    public void phrase(JudgedPhrase phrase) {
      phrases.add(phrase);
      Playback now = playback.orElseThrow();
      toldSeconds.add(now.tempoMap().secondsAt(now.clock().beatAt(System.nanoTime())));
    }

    @Override
    public void notice(String sentence) {
      notices.add(sentence);
    }

    @Override
    public Optional<Wish> wish() {
      return Optional.empty();
    }
  }

  @Test
  void a_sung_take_is_captured_tracked_and_judged_live_while_the_backing_runs(
      @TempDir Path folder, TestReporter reporter) throws Exception {
    assumeTrue(
        System.getenv("HOLDFAST_AUDIO_LOOP") != null,
        "skipped: no audio loop; source .ci/audio-loop and call audio_loop_start");
    Sung sung = sing(folder.resolve("take.wav"));
    for (int again = 1; again < TRIES && !sung.isWhole(); again++) {
      sung = sing(folder.resolve("take" + again + ".wav"));
    }
    BusyMachine.excuse(sung.isWhole(), "the sound broke off each time");
    report(sung.listener(), reporter);
    JudgedTake asMeant =
        Coach.judge(
            Setting.of(
                PERFORMANCE.arrangement(), PERFORMANCE.tempoMap(), Player.VOICE, Optional.empty()),
            meant(),
            phrase -> {});
    assertEquals(List.of(), sung.listener().notices);
    JudgedTake judged = sung.judged();
    assertEquals(treatments(asMeant), treatments(judged), () -> notes(judged));
    assertTrue(judged.phrases().stream().allMatch(JudgedPhrase::carries), () -> notes(judged));
    assertTrue(Files.size(sung.sound()) > 20 * 44_100 * 2, "the sound is kept");
  }

  /** What was heard, phrase by phrase. */
  private static String notes(JudgedTake take) {
    return take.phrases().stream()
        .map(phrase -> phrase.played().toString())
        .collect(Collectors.joining("\n", "heard:\n", "\n"));
  }

  /** One take that was sung. */
  private record Sung(JudgedTake judged, Listener listener, int gaps, Path sound, Clip child) {

    /**
     * Whether the devices brought what was sung without a break: nobody counted a gap, and every
     * phrase of the song stands equally late in the recording.
     */
    boolean isWhole() {
      if (gaps > 0 || !Files.exists(sound)) {
        return false;
      }
      float[] song = OurEar.atEarRate(child.samples());
      IntSummaryStatistics late;
      try (EarSound kept = SoundFile.tape(sound)) {
        float[] heard = kept.samples(0, (int) kept.length());
        late =
            IntStream.range(0, BARS.length)
                .map(bar -> BleedCanceller.delay(heard, only(song, bar)))
                .summaryStatistics();
      }
      return late.getMax() - late.getMin() <= BROKEN_SECONDS * Resampler.EAR_RATE;
    }

    private static float[] only(float[] song, int bar) {
      float[] one = new float[song.length];
      int from = (int) (4 * bar * BEAT * Resampler.EAR_RATE);
      int to = Math.min(song.length, (int) (4 * (bar + 1) * BEAT * Resampler.EAR_RATE));
      System.arraycopy(song, from, one, from, to - from);
      return one;
    }
  }

  private static Sung sing(Path sound) throws Exception {
    Clip child = new Singer(20_261_125, 1.35, 10, -24, 8, 0.4, false).sing("child", line());
    Listener listener = new Listener();
    SoundChoice usual = SoundChoice.usual();
    SoundChoice quiet =
        new SoundChoice(
            usual.device(),
            SoundBank.builtIn(),
            BACKING_VOLUME,
            usual.bufferMillis(),
            usual.latencies());
    CompletableFuture<Playback> started = new CompletableFuture<>();
    CompletableFuture<Void> known =
        started.thenAccept(playback -> listener.playback = Optional.of(playback));
    try (SoundPlayer band = SoundPlayer.open(quiet);
        SingingLoudspeaker mouth = SingingLoudspeaker.sing(child, LOUD, started)) {
      ReadyInput ready =
          Inputs.microphone("")
              .in(Surroundings.of(band, sound.getParent()).with(Profile.named("child-voice")));
      assertEquals(Player.VOICE, ready.player());
      JudgedTake judged =
          new LiveTake(
                  PERFORMANCE.arrangement().chart(),
                  ready.player(),
                  Optional.empty(),
                  listener,
                  Keeper.NOBODY)
              .play(
                  new WatchedBand(band, started::complete),
                  PERFORMANCE,
                  ready.source().keepingSoundIn(sound));
      known.join();
      return new Sung(judged, listener, mouth.gaps() + band.out().gaps(), sound, child);
    }
  }

  /** How long after the end of each phrase its verdict was out, in milliseconds. */
  private static void report(Listener listener, TestReporter reporter) {
    for (int i = 0; i < listener.phrases.size(); i++) {
      List<PlayedNote> played = listener.phrases.get(i).played();
      double end = played.get(played.size() - 1).endSeconds();
      reporter.publishEntry(
          "milliseconds from the end of phrase " + (i + 1) + " to its verdict",
          String.valueOf(Math.round(1000 * (listener.toldSeconds.get(i) - end))));
    }
  }

  private static List<Treatment> treatments(JudgedTake take) {
    return take.phrases().stream().map(p -> p.verdict().treatment()).toList();
  }

  private static List<Line.Sung> line() {
    return meant().stream()
        .map(n -> new Line.Sung(n.onsetSeconds(), n.endSeconds(), n.pitch(), false))
        .toList();
  }

  private static List<PlayedNote> meant() {
    List<PlayedNote> notes = new ArrayList<>();
    for (int bar = 0; bar < BARS.length; bar++) {
      for (double[] note : IDEA) {
        notes.add(
            new PlayedNote(
                (4 * bar + note[0]) * BEAT, note[1] * BEAT, (int) note[2] + BARS[bar], 0, 0.7, 1));
      }
    }
    return notes;
  }
}
