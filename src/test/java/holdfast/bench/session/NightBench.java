package holdfast.bench.session;

import holdfast.backing.Arrangement;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.SoundPlayer;
import holdfast.book.KeptTake;
import holdfast.book.TakeSettings;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.keyboard.TestCable;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.practice.Hands;
import holdfast.practice.SteppedOut;
import holdfast.practice.WatchedBand;
import holdfast.session.Audience;
import holdfast.session.DemoTake;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.LiveTake;
import holdfast.session.Moment;
import holdfast.session.Setting;
import holdfast.session.Upkeep;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import javax.sound.midi.ShortMessage;

/**
 * A night of playing in minutes: the demo student's two choruses again and again in one live take,
 * through the real session, backing thread, keyboard and log, while an output's clock goes forward
 * as fast as this machine can follow. Tells every half hour of the music what is held on to, how
 * far the notes are heard from their beats and how far ahead of its sound the backing is sent.
 * Argument: how many hours, 8 without it.
 */
public final class NightBench implements Audience, Keeper {

  private static final long STEP_MICROS = 40_000;
  private static final double LOOK_SECONDS = 1800;

  private final Queue<Double> due = new ArrayDeque<>();
  private final KeptTake kept;
  private final Upkeep upkeep;
  private final long start = System.nanoTime();
  private double nextLook = 120;
  private double earliest = Double.POSITIVE_INFINITY;
  private double latest = Double.NEGATIVE_INFINITY;
  private double leastAhead = Double.POSITIVE_INFINITY;
  private int notes;
  private int phrases;

  private NightBench(KeptTake kept, Upkeep upkeep) {
    this.kept = kept;
    this.upkeep = upkeep;
  }

  /** Runs it. */
  public static void main(String[] args) throws Exception {
    run(args.length == 0 ? 8 : Double.parseDouble(args[0]));
  }

  private static void run(double hours) throws Exception {
    DemoTake demo = DemoTake.shipped();
    Arrangement arrangement = Arrangement.of(demo.chart()).at(demo.tempo());
    double lengthBeats = DemoTake.CHORUSES * arrangement.form().lengthBeats();
    int times = (int) Math.max(1, Math.round(hours * 3600 * demo.tempo() / 60 / lengthBeats));
    Performance performance =
        new Performance(arrangement, OptionalInt.of(DemoTake.CHORUSES * times), 1, Set.of());
    TempoMap beats = performance.tempoMap();
    List<Note> night = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      for (Note note : demo.line()) {
        night.add(
            new Note(note.onsetBeats() + i * lengthBeats, note.durationBeats(), note.pitch()));
      }
    }
    TestCable.plugIn();
    Path folder = Files.createTempDirectory("night");
    Setting setting = Setting.of(arrangement, beats, Player.KEYBOARD, Optional.empty());
    TakeSettings settings =
        TakeSettings.of(
            LocalDateTime.parse("2026-11-25T22:00"),
            setting,
            performance,
            "a cable",
            Optional.empty());
    try (KeptTake kept = KeptTake.begin(folder, settings, performance);
        Upkeep upkeep = Upkeep.watch(Duration.ofDays(1))) {
      NightBench bench = new NightBench(kept, upkeep);
      night.forEach(note -> bench.due.add(beats.secondsAt(note.onsetBeats())));
      bench.play(performance, night);
    } finally {
      TestCable.pullOut();
    }
  }

  private void play(Performance performance, List<Note> night)
      throws InterruptedException, IOException {
    SteppedOut out =
        new SteppedOut() {
          @Override
          public void send(ShortMessage message, long positionMicros) {
            leastAhead = Math.min(leastAhead, (positionMicros - madeMicros()) / 1e3);
          }
        };
    AtomicReference<Playback> playback = new AtomicReference<>();
    Hands hands = new Hands(out, STEP_MICROS, playback::get);
    hands.play(night);
    System.out.println(
        "     time   heap MB  threads  files   notes  phrases    early..late ms  sent ahead ms  took");
    try (SoundPlayer player = new SoundPlayer(out)) {
      LiveTake take =
          new LiveTake(
              performance.arrangement().chart(), Player.KEYBOARD, Optional.empty(), this, this);
      JudgedTake judged = take.play(new WatchedBand(player, playback::set), performance, hands);
      tell(out.madeMicros() / 1e6);
      long from = System.nanoTime();
      kept.finish(judged, Optional.empty());
      System.out.println(
          String.format(
              Locale.ROOT,
              "%d of %d notes heard, %d phrases judged in hindsight; the folder took %.1f s",
              notes,
              night.size(),
              judged.phrases().size(),
              (System.nanoTime() - from) * 1e-9));
    }
  }

  private void tell(double seconds) {
    Upkeep.Look look = upkeep.look();
    System.out.println(
        String.format(
            Locale.ROOT,
            "%7.0f s %9.1f %8d %6d %7d %8d %8.1f..%.1f %14.1f %5.0f s",
            seconds,
            look.heapBytes() / 1e6,
            look.threads(),
            look.openFiles(),
            notes,
            phrases,
            earliest,
            latest,
            leastAhead,
            (System.nanoTime() - start) * 1e-9));
    earliest = Double.POSITIVE_INFINITY;
    latest = Double.NEGATIVE_INFINITY;
    leastAhead = Double.POSITIVE_INFINITY;
  }

  @Override
  public void hear(Heard heard) {
    kept.hear(heard);
    for (PlayEvent event : heard.events()) {
      if (event instanceof PlayEvent.NoteOn) {
        double late = 1e3 * (event.seconds() - due.remove());
        earliest = Math.min(earliest, late);
        latest = Math.max(latest, late);
        notes++;
      }
    }
    if (Double.isFinite(heard.upToSeconds()) && heard.upToSeconds() >= nextLook) {
      tell(heard.upToSeconds());
      nextLook += LOOK_SECONDS;
    }
  }

  @Override
  public void phraseEnded(double heardUpToSeconds) {
    kept.phraseEnded(heardUpToSeconds);
  }

  @Override
  public void mark(double seconds, String text) {
    kept.mark(seconds, text);
  }

  @Override
  public Optional<String> trouble() {
    return kept.trouble();
  }

  @Override
  public void moment(Moment moment) {
    // Nobody looks.
  }

  @Override
  public void phrase(JudgedPhrase phrase) {
    phrases++;
  }

  @Override
  public void notice(String sentence) {
    System.out.println(sentence);
  }

  @Override
  public Optional<Wish> wish() {
    return Optional.empty();
  }
}
