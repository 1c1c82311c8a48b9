package holdfast.session;

import holdfast.backing.Arrangement;
import holdfast.backing.BackingPlayer;
import holdfast.backing.BarPlace;
import holdfast.backing.BarRange;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.chart.Bar;
import holdfast.chart.Changes;
import holdfast.chart.Chart;
import holdfast.chart.Form;
import holdfast.harmony.TurnsAhead;
import holdfast.listening.Capture;
import holdfast.listening.Heard;
import holdfast.listening.NoteSource;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.theory.Harmony;
import holdfast.time.TakeClock;
import holdfast.time.TempoMap;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A take as it is played: the backing sounds, the ear is open, the coach speaks. Knows neither
 * which instrument is listened to nor where it is shown.
 *
 * <p>Seconds of the take are seconds of the music as it is heard: second 0 is beat 0. So what was
 * played meets the chart at once, however the sound device's clock runs.
 */
public final class LiveTake {

  /** How long to wait for notes before looking at the clock again. */
  private static final Duration TICK = Duration.ofMillis(5);

  /** Twenty-five glances a second are more than anyone takes. */
  private static final long MOMENT_EVERY_NANOS = 40_000_000L;

  /** After the last bar a last note may still ring; then it is over. */
  private static final long TAIL_NANOS = 700_000_000L;

  /** How a log says that the next phrase is a new idea. */
  public static final String NEW_IDEA_MARK = "new idea";

  /** Beats a minute that a wish for slower or faster changes. */
  private static final double TEMPO_STEP = 4;

  /** Bars before and behind the present one that a loop takes in. */
  private static final int LOOP_REACH = 1;

  private final Chart chart;
  private final Player player;
  private final Optional<Motif> givenIdea;
  private final Audience audience;
  private final Keeper keeper;
  private final Partner partner;
  private final Map<Integer, String> turns;

  private long nextMomentNanos = System.nanoTime();
  private Optional<String> toldTrouble = Optional.empty();
  private Optional<String> bandTrouble = Optional.empty();
  private double heardSeconds;
  private Optional<Double> lastBeat = Optional.empty();
  private Optional<Double> wantedTempo = Optional.empty();
  private boolean looping;
  private boolean listening = true;

  /**
   * A take to be played.
   *
   * @param chart the tune
   * @param player how exactly this player's notes can be taken
   * @param givenIdea the idea that the teacher gave, if any
   * @param audience whoever it is shown to
   * @param keeper told everything that is heard at once, before anything is made of it
   */
  public LiveTake(
      Chart chart, Player player, Optional<Motif> givenIdea, Audience audience, Keeper keeper) {
    this(chart, player, givenIdea, audience, keeper, Partner.NOBODY);
  }

  /**
   * A take to be played with a partner.
   *
   * @param partner who plays with the student
   */
  public LiveTake(
      Chart chart,
      Player player,
      Optional<Motif> givenIdea,
      Audience audience,
      Keeper keeper,
      Partner partner) {
    this.partner = partner;
    this.turns = TurnsAhead.reasons(chart.form().changes(), chart.sounding().key());
    this.chart = chart;
    this.player = player;
    this.givenIdea = givenIdea;
    this.audience = audience;
    this.keeper = keeper;
  }

  /**
   * The life of a live take: play, hear, judge, count.
   *
   * @throws InterruptedException when it is broken off from outside; what was heard is recorded
   */
  public JudgedTake play(BackingPlayer band, Performance performance, NoteSource source)
      throws InterruptedException {
    lastBeat = performance.lastBeat();
    // What was so before the take began has been told by whoever opened the sound.
    bandTrouble = band.trouble();
    Coach.rehearse(
        Setting.of(performance.arrangement(), performance.tempoMap(), player, givenIdea));
    try (Playback playback = band.start(performance);
        Capture ear = source.open(clockOf(playback))) {
      Coach coach = new Coach(setting(playback));
      TempoMap tempo = playback.tempoMap();
      partner.begin(playback);
      audience.begins(playback);
      while (playback.isRunning()) {
        hear(ear, coach);
        if (!playback.tempoMap().equals(tempo)) {
          tempo = playback.tempoMap();
          coach.goOnWith(setting(playback));
          keeper.tempo(tempo);
        }
        partner.look(playback.clock().beatAt(System.nanoTime()));
        if (System.nanoTime() >= nextMomentNanos) {
          nextMomentNanos = System.nanoTime() + MOMENT_EVERY_NANOS;
          audience.moment(moment(playback, coach, ear));
          tellOfTheSound(band.trouble());
        }
        for (Optional<Audience.Wish> wish = audience.wish();
            wish.isPresent();
            wish = audience.wish()) {
          grant(wish.get(), playback, coach);
        }
      }
      listenToTheTail(ear, coach);
      Heard open = ear.rest();
      if (!open.events().isEmpty()) {
        take(open, ear, coach);
      }
      coach.rest().forEach(this::tell);
      if (ear.lost() > 0) {
        audience.notice(
            ear.lost() + " notes came faster than they could be heard and are missing.");
      }
      return coach.inHindsight();
    }
  }

  private void tellOfTheSound(Optional<String> trouble) {
    if (!trouble.equals(bandTrouble)) {
      bandTrouble = trouble;
      audience.notice(trouble.orElse("The sound is back."));
    }
  }

  private void hear(Capture ear, Coach coach) throws InterruptedException {
    take(ear.await(TICK), ear, coach);
    if (ear.isListening() != listening) {
      listening = ear.isListening();
      audience.notice(
          listening
              ? "The input is back; I am listening again."
              : "The input went away; plug it in again and I go on. Nothing you played is lost.");
    }
  }

  private void take(Heard heard, Capture ear, Coach coach) {
    keeper.hear(heard);
    List<JudgedPhrase> ended = coach.hear(heard);
    ended.forEach(this::tell);
    if (!ended.isEmpty()) {
      keeper.phraseEnded(heard.upToSeconds());
    }
    Optional<String> trouble = keeper.trouble();
    if (!trouble.equals(toldTrouble)) {
      trouble.ifPresent(audience::notice);
      toldTrouble = trouble;
    }
    if (Double.isFinite(heard.upToSeconds())) {
      heardSeconds = heard.upToSeconds();
    }
    ear.news().forEach(audience::notice);
  }

  private void tell(JudgedPhrase phrase) {
    audience.phrase(phrase);
    partner.hear(phrase);
  }

  private void listenToTheTail(Capture ear, Coach coach) throws InterruptedException {
    long until = System.nanoTime() + TAIL_NANOS;
    while (System.nanoTime() < until) {
      hear(ear, coach);
    }
  }

  private void grant(Audience.Wish wish, Playback playback, Coach coach) {
    switch (wish) {
      case STOP -> playback.stop();
      case NEW_IDEA -> {
        coach.newIdea();
        keeper.mark(heardSeconds, NEW_IDEA_MARK);
        audience.notice("Play your new idea; I take the next phrase for it.");
      }
      case LOOP_HERE -> {
        loopOrGoOn(playback);
        coach.goOnWith(setting(playback));
      }
      case SLOWER -> turnTempo(playback, -TEMPO_STEP);
      case FASTER -> turnTempo(playback, TEMPO_STEP);
    }
  }

  private void turnTempo(Playback playback, double by) {
    List<TempoMap.Point> points = playback.tempoMap().points();
    double now = wantedTempo.orElse(points.get(points.size() - 1).beatsPerMinute());
    double next = Math.max(Arrangement.SLOWEST, Math.min(Arrangement.FASTEST, now + by));
    wantedTempo = Optional.of(next);
    playback.setTempo(next);
    audience.notice("From the next bar on " + Math.round(next) + " beats a minute.");
  }

  private void loopOrGoOn(Playback playback) {
    if (looping) {
      playback.goOn();
      audience.notice("We go on after this round.");
    } else {
      int bar = Math.max(1, placeNow(playback).bar());
      int last = chart.form().bars().size();
      BarRange around =
          new BarRange(Math.max(1, bar - LOOP_REACH), Math.min(last, bar + LOOP_REACH));
      playback.loop(around);
      audience.notice("We go round bars " + around.first() + " to " + around.last() + ".");
    }
    looping = !looping;
  }

  /** Second 0 of the take is beat 0 of the music, as it is heard. */
  static TakeClock clockOf(Playback playback) {
    return nanoTime -> playback.tempoMap().secondsAt(playback.clock().beatAt(nanoTime));
  }

  private Setting setting(Playback playback) {
    return new Setting(
        chart,
        chart.form(),
        playback.changes(),
        playback.tempoMap(),
        player,
        givenIdea,
        beat -> place(playback.placeAt(beat)));
  }

  private static Place place(BarPlace place) {
    return new Place(place.chorus(), Math.max(1, place.bar()));
  }

  private static BarPlace placeNow(Playback playback) {
    return playback.placeAt(playback.clock().beatAt(System.nanoTime()));
  }

  private Moment moment(Playback playback, Coach coach, Capture ear) {
    double beat = playback.clock().beatAt(System.nanoTime());
    Form form = chart.form();
    BarPlace place = playback.placeAt(beat);
    Changes changes = playback.changes();
    double inBar = beat < 0 ? beat : beat - playback.barStart(beat);
    int beatsInBar = form.metre().beats();
    Optional<Double> next = changes.nextChange(Math.max(0, beat));
    Harmony sounding = changes.at(Math.max(0, beat)).harmony();
    return new Moment(
        beat < 0 && place.bar() > 0 ? 0 : place.chorus(),
        Math.max(1, place.bar()),
        form.bars().size(),
        1 + Math.floorMod((int) Math.floor(inBar), beatsInBar),
        beatsInBar,
        sounding.display(),
        next.map(b -> changes.at(b).harmony().display()).orElse(sounding.display()),
        coach.isHearing() || ear.sounding().isPresent(),
        ear.isListening(),
        warning(playback, beat, form));
  }

  /** One bar ahead of a turn that nobody expects, a word about it. */
  private Optional<String> warning(Playback playback, double beat, Form form) {
    if (beat < -form.metre().beats()) {
      return Optional.empty();
    }
    double nextBar = Math.max(0, beat + form.metre().beats());
    if (!looping && nextBar >= lastBeat.orElse(Double.POSITIVE_INFINITY)) {
      return Optional.empty();
    }
    BarPlace coming = playback.placeAt(nextBar);
    List<Bar> bars = form.bars();
    if (coming.bar() < 1 || !bars.get(coming.bar() - 1).unexpected()) {
      return Optional.empty();
    }
    Bar bar = bars.get(coming.bar() - 1);
    String reason = turns.containsKey(bar.number()) ? ", " + turns.get(bar.number()) : "";
    return Optional.of(
        "next bar " + bar.number() + ": " + bar.chords().get(0).harmony().display() + reason);
  }
}
