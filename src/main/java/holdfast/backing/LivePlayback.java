package holdfast.backing;

import holdfast.backing.sound.SoundOut;
import holdfast.chart.Changes;
import holdfast.time.BeatClock;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sends an arrangement to a sound output, a bar at a time, each note some 150 ms before it is made.
 *
 * <p>One thread sleeps from one absolute deadline to the next: a note to send, a bar to plan, a
 * beat to tell of. Notes wait in beats, not in time, so that a change of tempo moves what is still
 * to come. When the thread is held up for longer than the notes are sent ahead, drums that are past
 * are left out and chords that still have time to sound come in late; beats stay where they are.
 */
final class LivePlayback implements Playback {

  private static final Logger LOG = LoggerFactory.getLogger(LivePlayback.class);

  /**
   * A bar is planned so long before its first note must be sent; later changes wait for the next.
   */
  private static final long PLAN_AHEAD_MICROS = 100_000;

  /** Sleeps no longer than this, in case the clocks drift apart while it sleeps. */
  private static final long LONGEST_SLEEP_NANOS = 250_000_000;

  /**
   * Seats are taken when all that was sent before has sounded, and a moment before the first note.
   */
  private static final long SEATING_MICROS = SoundOut.SEND_AHEAD_MICROS + 50_000;

  private static final long FIRST_NOTE_MICROS = SEATING_MICROS + 50_000;

  private final SoundOut out;
  private final BandSender band;
  private final WayTaken way;
  private final double firstBeat;
  private final long originMicros;
  private final Thread scheduler;
  private final List<Consumer<BeatNotice>> listeners = new CopyOnWriteArrayList<>();
  private final Queue<BackingEvent> said = new ConcurrentLinkedQueue<>();
  private final CountDownLatch over = new CountDownLatch(1);

  private volatile Arrangement arrangement;
  private int nextNotice;
  private boolean allPlanned;
  private volatile double endBeat = Double.POSITIVE_INFINITY;
  private volatile TempoMap tempoMap;
  private volatile double wantedTempo;
  private volatile boolean stopped;

  LivePlayback(SoundOut out, Performance performance, long earliest) {
    this.out = out;
    this.arrangement = performance.arrangement();
    this.way = new WayTaken(arrangement, performance.route());
    this.firstBeat = performance.firstBeat();
    this.nextNotice = (int) Math.ceil(firstBeat);
    this.tempoMap = performance.tempoMap();
    this.wantedTempo = arrangement.tempo();
    this.band = new BandSender(out, arrangement.feel(), performance.muted(), this::micros);
    band.seat(out.madeMicros() + SEATING_MICROS);
    long first = out.madeMicros() + FIRST_NOTE_MICROS;
    if (earliest != Long.MIN_VALUE) {
      first = Math.max(first, out.microsHeard(earliest));
    }
    this.originMicros = first - Math.round(tempoMap.secondsAt(firstBeat) * 1e6);
    performance.countIn().forEach(band::cue);
    performance.line().forEach(band::cue);
    planned(way.last());
    this.scheduler = new Thread(this::run, "holdfast-backing");
    scheduler.setDaemon(true);
  }

  void start() {
    scheduler.start();
  }

  private void run() {
    try {
      while (!stopped) {
        long now = System.nanoTime();
        planDue(now);
        cueWhatIsSaid();
        band.sendDue(now);
        tellDue(now);
        if (allPlanned && band.nextBeat().isEmpty() && now >= heardAt(endBeat)) {
          break;
        }
        sleepUntil(Math.min(nextDeadline(), now + LONGEST_SLEEP_NANOS));
      }
    } finally {
      if (stopped) {
        band.silence();
      }
      over.countDown();
    }
  }

  private void sleepUntil(long deadline) {
    long left = deadline - System.nanoTime();
    if (left > 0 && !stopped) {
      // Waking early does no harm: the loop looks at its deadlines again.
      LockSupport.parkNanos(this, left);
    }
  }

  private long nextDeadline() {
    long deadline = heardAt(nextNotice);
    OptionalDouble nextNote = band.nextBeat();
    if (nextNote.isPresent()) {
      deadline = Math.min(deadline, out.nanoTimeToSend(micros(nextNote.getAsDouble())));
    }
    if (!allPlanned) {
      deadline = Math.min(deadline, planningDue());
    } else if (nextNote.isEmpty()) {
      deadline = Math.min(deadline, heardAt(endBeat));
    }
    return deadline;
  }

  // Planning: bar by bar, as late as can be.

  private double plannedUntil() {
    Map.Entry<Double, BarPlace> last = way.last();
    return last.getKey() + arrangement.lengthOf(last.getValue());
  }

  private long planningDue() {
    return out.nanoTimeToSend(micros(plannedUntil()) - PLAN_AHEAD_MICROS);
  }

  private void planDue(long now) {
    while (!allPlanned && planningDue() <= now) {
      double start = plannedUntil();
      if (way.planNext().isEmpty()) {
        allPlanned = true;
        endBeat = start;
        // Only a line can reach further than the bars that are played.
        band.endAt(start);
        return;
      }
      turnTempoAt(start);
      planned(way.last());
    }
  }

  private void turnTempoAt(double beat) {
    double tempo = wantedTempo;
    if (tempo == arrangement.tempo()) {
      return;
    }
    List<TempoMap.Point> points = new ArrayList<>(tempoMap.points());
    points.add(new TempoMap.Point(beat, tempoMap.secondsAt(beat), tempo));
    tempoMap = new TempoMap(points);
    arrangement = arrangement.at(tempo);
  }

  private void planned(Map.Entry<Double, BarPlace> bar) {
    Optional<BarPlace> next = way.route().after(bar.getValue());
    for (BackingEvent event : arrangement.bar(bar.getValue(), next)) {
      band.cue(event.later(bar.getKey()));
    }
  }

  private void cueWhatIsSaid() {
    for (BackingEvent note = said.poll(); note != null; note = said.poll()) {
      if (note.onsetBeats() < endBeat) {
        band.cue(note);
      }
    }
  }

  // Telling.

  private void tellDue(long now) {
    while (nextNotice < endBeat && heardAt(nextNotice) <= now) {
      BarPlace place = placeAt(nextNotice);
      double into = nextNotice - barStart(nextNotice);
      int beats = arrangement.metre().beats();
      int beatOfBar = 1 + Math.floorMod((int) Math.floor(into), beats);
      BeatNotice notice = new BeatNotice(nextNotice, place, beatOfBar, heardAt(nextNotice));
      listeners.forEach(listener -> tell(listener, notice));
      nextNotice++;
    }
  }

  private static void tell(Consumer<BeatNotice> listener, BeatNotice notice) {
    try {
      listener.accept(notice);
    } catch (RuntimeException e) {
      // Whoever listens badly must not stop the music.
      LOG.error("a listener failed at {}", notice, e);
    }
  }

  // Time.

  private long micros(double beat) {
    return originMicros + Math.round(tempoMap.secondsAt(beat) * 1e6);
  }

  private long heardAt(double beat) {
    return out.nanoTimeHeard(micros(beat));
  }

  @Override
  public BeatClock clock() {
    return new BeatClock() {
      @Override
      public double beatAt(long nanoTime) {
        return tempoMap.beatAt((out.microsHeard(nanoTime) - originMicros) / 1e6);
      }

      @Override
      public long nanoTimeAt(double beat) {
        return heardAt(beat);
      }
    };
  }

  @Override
  public TempoMap tempoMap() {
    return tempoMap;
  }

  @Override
  public boolean isRunning() {
    return over.getCount() > 0;
  }

  @Override
  public void stop() {
    stopped = true;
    LockSupport.unpark(scheduler);
    if (Thread.currentThread() == scheduler) {
      return;
    }
    try {
      if (!over.await(1, TimeUnit.SECONDS)) {
        band.silence();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void loop(BarRange bars) {
    if (arrangement.feel() == Feel.DRONE) {
      return;
    }
    int last = arrangement.form().bars().size();
    if (bars.last() > last) {
      throw new IllegalArgumentException("the form has bars 1 to " + last + ", not " + bars);
    }
    way.bend(way.route().holding(bars));
  }

  @Override
  public void goOn() {
    if (way.route().loop().isPresent()) {
      way.bend(way.route().goingOn());
    }
  }

  @Override
  public void setTempo(double beatsPerMinute) {
    if (!(beatsPerMinute >= Arrangement.SLOWEST && beatsPerMinute <= Arrangement.FASTEST)) {
      throw new IllegalArgumentException(
          "a tempo is 30 to 240 beats a minute, not " + beatsPerMinute);
    }
    wantedTempo = beatsPerMinute;
  }

  @Override
  public void mute(Part part, boolean silent) {
    band.mute(part, silent);
  }

  @Override
  public void say(List<BackingEvent> line) {
    for (BackingEvent note : line) {
      if (note.part() != Part.LINE) {
        throw new IllegalArgumentException("a line is played by LINE, not by " + note.part());
      }
    }
    said.addAll(line);
    LockSupport.unpark(scheduler);
  }

  @Override
  public BarPlace placeAt(double beat) {
    return way.at(beat).getValue();
  }

  @Override
  public double barStart(double beat) {
    return way.at(beat).getKey();
  }

  @Override
  public Optional<Double> lastBeat() {
    double end = endBeat;
    return Double.isFinite(end) ? Optional.of(end) : Optional.empty();
  }

  @Override
  public Changes changes() {
    return way.changes();
  }

  @Override
  public void onBeat(Consumer<BeatNotice> listener) {
    listeners.add(listener);
  }

  @Override
  public Lateness lateness() {
    return band.lateness();
  }
}
