package holdfast.backing;

import holdfast.chart.Bar;
import holdfast.chart.Changes;
import holdfast.chart.Chart;
import holdfast.chart.ChordSpan;
import holdfast.chart.Form;
import holdfast.mistake.UserMistake;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A chart turned into what the backing plays, bar by bar as it is asked for: nothing is worked out
 * ahead but the voicings of one chorus. Pure: the same bar of the same chorus is always the same.
 */
public final class Arrangement {

  /** The slowest tempo that is asked for, in beats a minute. */
  public static final double SLOWEST = 30;

  /** The fastest. */
  public static final double FASTEST = 240;

  /** Above this many felt beats a minute one bar is too short to find the tempo in. */
  private static final double TWO_BAR_COUNT_TEMPO = 120;

  /** Phrases of tunes are four bars long more often than not; the bass leads into the next. */
  private static final int PHRASE_BARS = 4;

  private final Chart chart;
  private final Form form;
  private final Feel feel;
  private final double tempo;
  private final BarRange bars;
  private final Pulse pulse;
  private final Layout layout;

  private Arrangement(
      Chart chart, Form form, Feel feel, double tempo, BarRange bars, Layout layout) {
    this.chart = chart;
    this.form = form;
    this.feel = feel;
    this.tempo = tempo;
    this.bars = bars;
    this.pulse = Pulse.of(form.metre());
    this.layout = layout;
  }

  /** The chart as it stands: its own tempo and feel, all bars, nobody to keep out of the way of. */
  public static Arrangement of(Chart chart) {
    return of(
        chart,
        Feel.read(chart.feel()).orElse(Feel.PLAIN),
        chart.tempo(),
        Optional.empty(),
        Optional.empty());
  }

  /**
   * A chart in the way that is asked for.
   *
   * @param tempo beats a minute
   * @param some the bars of the form that go round; empty for all
   * @param singer the range that no chord's highest note may lie in
   * @throws UserMistake where the form has no such bars
   */
  public static Arrangement of(
      Chart chart, Feel feel, double tempo, Optional<BarRange> some, Optional<PitchRange> singer) {
    if (!(tempo > 0) || !Double.isFinite(tempo)) {
      throw new IllegalArgumentException("a tempo is more than 0 beats a minute, not " + tempo);
    }
    Form form = chart.form();
    int last = form.bars().size();
    BarRange bars = some.orElse(new BarRange(1, last));
    if (bars.last() > last) {
      throw new UserMistake(
          "“" + chart.title() + "” has bars 1 to " + last + ", and no bar " + bars.last());
    }
    return new Arrangement(
        chart, form, feel, tempo, bars, new Layout(form, bars, new VoicingChoices(singer)));
  }

  /** The same arrangement at another tempo; what swings, swings by the new one. */
  public Arrangement at(double beatsPerMinute) {
    return new Arrangement(chart, form, feel, beatsPerMinute, bars, layout);
  }

  /** The same chords in the same places, played in another feel. */
  public Arrangement as(Feel other) {
    return new Arrangement(chart, form, other, tempo, bars, layout);
  }

  /** The chart. */
  public Chart chart() {
    return chart;
  }

  /** One chorus as it is played, in concert pitch. */
  public Form form() {
    return form;
  }

  /** The metre throughout. */
  public Metre metre() {
    return form.metre();
  }

  /** Beats a minute. */
  public double tempo() {
    return tempo;
  }

  /** How it is played. */
  public Feel feel() {
    return feel;
  }

  /** The bars that go round. */
  public BarRange bars() {
    return bars;
  }

  /** Whether the pick-up of the form leads in: it does where the form is played from its start. */
  public boolean hasPickup() {
    return form.pickup().isPresent() && bars.first() == 1 && feel != Feel.DRONE;
  }

  /** How many beats sound before beat 0 as a pick-up. */
  public double pickupBeats() {
    return hasPickup() ? form.pickupBeats() : 0;
  }

  /** The way through the form, so many rounds; empty for without end. */
  public Route route(OptionalInt rounds) {
    return new Route(bars, hasPickup(), rounds, Optional.empty());
  }

  /**
   * What sounds when, round after round, from the first beat of the first bar that is played; under
   * a drone its one chord.
   */
  public Changes changes() {
    Optional<Key> key = chart.sounding().key();
    if (feel == Feel.DRONE) {
      return Changes.vamp(droned(), key);
    }
    double start = form.beatOfBar(bars.first());
    List<ChordSpan> spans = new ArrayList<>();
    if (hasPickup()) {
      form.pickup().ifPresent(bar -> spans.addAll(bar.chords()));
    }
    for (Bar bar : form.bars().subList(bars.first() - 1, bars.last())) {
      bar.chords().forEach(span -> spans.add(span.later(-start)));
    }
    return new Changes(spans, (double) bars.size() * metre().beats(), key);
  }

  /** The harmony of one bar, its beats counted from the bar's first; under a drone its chord. */
  public List<ChordSpan> chordsOf(BarPlace place) {
    Bar bar = bar(place);
    if (feel == Feel.DRONE) {
      return List.of(new ChordSpan(0, lengthOf(place), droned(), place.bar()));
    }
    return bar.chords().stream().map(span -> span.later(-bar.startBeat())).toList();
  }

  /** How long a bar is, in beats: as the metre says, a pick-up bar less. */
  public double lengthOf(BarPlace place) {
    Bar bar = bar(place);
    return bar.endBeat() - bar.startBeat();
  }

  private Bar bar(BarPlace place) {
    return place.bar() == 0
        ? form.pickup().orElseThrow(() -> new IllegalArgumentException("there is no pick-up"))
        : form.bars().get(place.bar() - 1);
  }

  private Harmony droned() {
    return droneSpan().orElse(form.bars().get(0).chords().get(0)).harmony();
  }

  /** The first chord that goes round; empty where no bar of them has a chord. */
  private Optional<ChordSpan> droneSpan() {
    return form.bars().subList(bars.first() - 1, bars.last()).stream()
        .flatMap(bar -> bar.chords().stream())
        .filter(span -> span.harmony().hasChord())
        .findFirst();
  }

  /** How many bars to count in where nobody says: one, or two where one would be over too soon. */
  public int usualCountIn() {
    boolean compound = metre().unit() >= 8 && metre().beats() % 3 == 0;
    double felt = compound ? tempo / 3 : tempo;
    return felt > TWO_BAR_COUNT_TEMPO ? 2 : 1;
  }

  /**
   * The count before beat 0, on negative beats. A pick-up plays into its last bar; one longer than
   * half a bar gets a bar more, so that enough is counted before it.
   *
   * @param countBars how many bars, 0 or more
   */
  public List<BackingEvent> countIn(int countBars) {
    boolean longPickup = countBars > 0 && pickupBeats() > metre().beats() / 2.0;
    return TimeKeeping.countIn(pulse, longPickup ? countBars + 1 : countBars);
  }

  /**
   * What is played in one bar, its beats counted from the bar's first.
   *
   * @param here the bar
   * @param next the bar after it, where there is one, for the bass to lead to
   */
  public List<BackingEvent> bar(BarPlace here, Optional<BarPlace> next) {
    List<BackingEvent> events = new ArrayList<>();
    if (feel == Feel.DRONE) {
      droneBar(here, events);
      return events;
    }
    Bar bar = bar(here);
    boolean odd = here.bar() % 2 == 0;
    double offBeat = metre().unit() == 4 && feel == Feel.SWING ? Swing.offBeat(tempo) : 0.5;
    List<ChordSpan> spans = bar.chords();
    for (int i = 0; i < spans.size(); i++) {
      ChordSpan span = spans.get(i);
      Optional<Layout.Laid> chord = layout.at(span);
      if (chord.isEmpty()) {
        continue;
      }
      double start = span.startBeat() - bar.startBeat();
      double beats = span.lengthBeats();
      events.addAll(Comping.chord(feel, chord.get().voicing(), start, beats, offBeat, odd));
      boolean leads = i + 1 == spans.size() && endsPhrase(here);
      events.addAll(
          BassLine.chord(
              feel,
              chord.get().chord(),
              chord.get().bass(),
              start,
              beats,
              pulseWithin(start, beats),
              leads ? firstBass(next) : OptionalInt.empty()));
    }
    if (here.bar() > 0) {
      events.addAll(TimeKeeping.bar(feel, pulse, offBeat, odd));
    }
    return events;
  }

  private boolean endsPhrase(BarPlace here) {
    return here.bar() == bars.last() || here.bar() % PHRASE_BARS == 0;
  }

  private OptionalInt firstBass(Optional<BarPlace> next) {
    return next.flatMap(place -> layout.at(bar(place).chords().get(0)))
        .map(chord -> OptionalInt.of(chord.bass()))
        .orElse(OptionalInt.empty());
  }

  private List<Double> pulseWithin(double start, double beats) {
    return pulse.starts().stream()
        .map(beat -> beat - start)
        .filter(beat -> beat >= 0 && beat < beats)
        .toList();
  }

  /** The drone is struck where a round begins and held to its end. */
  private void droneBar(BarPlace here, List<BackingEvent> events) {
    if (here.bar() != bars.first()) {
      return;
    }
    double beats = (double) bars.size() * metre().beats();
    droneSpan()
        .flatMap(layout::at)
        .ifPresent(
            chord -> {
              events.addAll(Comping.chord(feel, chord.voicing(), 0, beats, 0.5, false));
              events.addAll(
                  BassLine.chord(
                      feel, chord.chord(), chord.bass(), 0, beats, List.of(), OptionalInt.empty()));
            });
  }
}
