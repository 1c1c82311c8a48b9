package holdfast.listening.microphone;

import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.PlayEvent;
import holdfast.listening.pitch.Tuning;
import holdfast.mistake.UserMistake;
import holdfast.time.TakeClock;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Listens to one microphone. When it is unplugged in mid-take, what was heard stays, the note that
 * sounded ends, and the ear goes on by itself as soon as the device is back, in whatever format it
 * then has.
 */
final class MicrophoneCapture implements Capture {

  private static final Logger LOG = LoggerFactory.getLogger(MicrophoneCapture.class);

  /** How long to doze while nothing is there: a fraction of what comes in at once. */
  private static final long DOZE_NANOS = 2_000_000;

  /** A device that gives nothing for so long has gone, whatever it says of itself. */
  private static final long DEAD_NANOS = 2_000_000_000L;

  /** How often to look whether a lost device is back. */
  private static final long LOOK_AGAIN_NANOS = 1_000_000_000L;

  /** No device and no clock is off by more than this. */
  private static final long LONGEST_DELAY_NANOS = 1_000_000_000L;

  private final Microphone microphone;
  private final TakeClock clock;
  private final LongSupplier nanoTime;
  private final Tuning tuning;
  private final Complaints complaints;
  private final Set<String> news = new LinkedHashSet<>();
  private Optional<OpenLine> line = Optional.empty();
  private Optional<LineEar> ear = Optional.empty();
  private Optional<KeptSound> kept = Optional.empty();
  private int files;
  private long lostTold;
  private long lastSampleNanos;
  private long lookAgainNanos;
  private double latestSeconds;

  /**
   * Opens the device.
   *
   * @throws UserMistake when that cannot be
   */
  MicrophoneCapture(Microphone microphone, TakeClock clock) {
    this(microphone, clock, System::nanoTime);
  }

  /**
   * The same by another clock than the machine's, as a test has it to let hours go by.
   *
   * @param nanoTime what time it is; waiting is done by the machine's own clock all the same
   */
  MicrophoneCapture(Microphone microphone, TakeClock clock, LongSupplier nanoTime) {
    this.microphone = microphone;
    this.clock = clock;
    this.nanoTime = nanoTime;
    OptionalDouble known = microphone.expected().tuningCents();
    this.tuning = known.isPresent() ? Tuning.of(known.getAsDouble()) : Tuning.unknown();
    this.complaints = new Complaints(microphone.name());
    // Nothing that sounded before can be heard, whatever the delay.
    this.latestSeconds = clock.secondsAt(nanoTime.getAsLong() - LONGEST_DELAY_NANOS);
    connect();
  }

  private void connect() {
    OpenLine opened = new OpenLine(Microphone.openLine(microphone.name()), nanoTime);
    line = Optional.of(opened);
    ear = Optional.of(new LineEar(opened, microphone, tuning, clock, nanoTime.getAsLong()));
    lastSampleNanos = nanoTime.getAsLong();
    lostTold = 0;
    kept = microphone.soundFile().map(file -> new KeptSound(numbered(file), opened.rate()));
  }

  /** A line that came back may have another rate: every line gets a file of its own. */
  private Path numbered(Path first) {
    files++;
    String name = first.getFileName().toString();
    return files == 1
        ? first
        : first.resolveSibling(name.replaceFirst("(\\.[^.]*)?$", "-" + files + "$1"));
  }

  @Override
  public Heard await(Duration atMost) throws InterruptedException {
    long until = System.nanoTime() + atMost.toNanos();
    List<PlayEvent> events = new ArrayList<>();
    do {
      if (Thread.interrupted()) {
        throw new InterruptedException();
      }
      if (listen() == 0) {
        if (!events.isEmpty()) {
          break;
        }
        lookAfterTheLine(events);
        LockSupport.parkNanos(this, Math.min(DOZE_NANOS, until - System.nanoTime()));
      }
      ear.ifPresent(e -> take(e.tell(), events));
    } while (System.nanoTime() < until);
    return new Heard(events, latestSeconds);
  }

  private int listen() {
    if (ear.isEmpty()) {
      return 0;
    }
    LineEar listening = ear.get();
    OpenLine from = line.orElseThrow();
    int count = listening.listen();
    if (count > 0) {
      lastSampleNanos = nanoTime.getAsLong();
      kept.ifPresent(file -> file.append(listening.fetched(), count));
      kept.flatMap(KeptSound::trouble).ifPresent(this::tellAndLetGo);
      complaints.hear(listening.fetched(), count, from.rate(), from.clipped()).ifPresent(news::add);
      tellOfLost(from);
    }
    return count;
  }

  private void tellOfLost(OpenLine from) {
    long lost = from.ring().lost();
    if (lost > lostTold) {
      news.add(
          String.format(
              Locale.ROOT,
              "This computer was too busy to listen for %.1f seconds; what you sang then is missing.",
              (double) (lost - lostTold) / from.rate()));
      lostTold = lost;
    }
  }

  private void tellAndLetGo(String trouble) {
    news.add(trouble);
    kept = Optional.empty();
  }

  private void take(Heard heard, List<PlayEvent> events) {
    events.addAll(heard.events());
    latestSeconds = Math.max(latestSeconds, heard.upToSeconds());
  }

  private void lookAfterTheLine(List<PlayEvent> events) {
    long now = nanoTime.getAsLong();
    if (line.isPresent()) {
      if (line.get().isOpen() && now - lastSampleNanos < DEAD_NANOS) {
        return;
      }
      LOG.info("the microphone \"{}\" went away", microphone.name());
      ear.ifPresent(e -> take(e.end(), events));
      letGo();
      lookAgainNanos = now + LOOK_AGAIN_NANOS;
    } else if (now >= lookAgainNanos) {
      lookAgainNanos = now + LOOK_AGAIN_NANOS;
      try {
        connect();
        LOG.info("the microphone \"{}\" is back", microphone.name());
      } catch (UserMistake stillAway) {
        LOG.debug("{}", stillAway.getMessage());
      }
    }
    if (line.isEmpty()) {
      // Nothing can come: the rest is measured by the clock.
      latestSeconds = Math.max(latestSeconds, clock.secondsAt(now));
    }
  }

  private void letGo() {
    line.ifPresent(OpenLine::close);
    kept.ifPresent(KeptSound::close);
    kept.flatMap(KeptSound::trouble).ifPresent(news::add);
    line = Optional.empty();
    ear = Optional.empty();
    kept = Optional.empty();
  }

  @Override
  public Heard rest() {
    List<PlayEvent> events = new ArrayList<>();
    while (listen() > 0) {
      ear.ifPresent(e -> take(e.tell(), events));
    }
    ear.ifPresent(e -> take(e.end(), events));
    letGo();
    return new Heard(events, latestSeconds);
  }

  @Override
  public boolean isListening() {
    return line.isPresent();
  }

  @Override
  public OptionalDouble sounding() {
    return ear.map(LineEar::sounding).orElse(OptionalDouble.empty());
  }

  @Override
  public List<String> news() {
    List<String> told = List.copyOf(news);
    news.clear();
    return told;
  }

  /** None: what a microphone loses is sound, and {@link #news} tells of it when it happens. */
  @Override
  public long lost() {
    return 0;
  }

  /** The thread that reads the device, for whoever measures what it costs. */
  Optional<Thread> deviceThread() {
    return line.map(OpenLine::thread);
  }

  @Override
  public void close() {
    letGo();
  }
}
