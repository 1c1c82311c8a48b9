package holdfast.backing;

import holdfast.chart.Bar;
import holdfast.chart.ChordSpan;
import holdfast.chart.Form;
import holdfast.theory.ChordSymbol;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How each chord of a form lies under the hands and in the bass, once it is worked out. */
final class Layout {

  /** Each span of a form starts on a beat of its own; whole spans are slow to tell apart. */
  private final Map<Double, Laid> laid = new HashMap<>();

  /** A chord, its notes above, and its note in the bass. */
  record Laid(ChordSymbol chord, Voicing voicing, int bass) {}

  /**
   * Lays out a form.
   *
   * @param bars the bars that go round
   */
  Layout(Form form, BarRange bars, VoicingChoices choices) {
    // All bars first, so that whatever is jumped to lies somewhere; then those that go round.
    layRound(form.bars(), choices);
    if (bars.size() < form.bars().size()) {
      layRound(form.bars().subList(bars.first() - 1, bars.last()), choices);
    }
    form.pickup().ifPresent(pickup -> layPickup(pickup, form.bars().get(0), choices));
  }

  /** How this chord of the form lies; empty where there is none to play. */
  Optional<Laid> at(ChordSpan span) {
    return Optional.ofNullable(laid.get(span.startBeat()));
  }

  private void layRound(List<Bar> bars, VoicingChoices choices) {
    List<ChordSpan> spans =
        bars.stream()
            .flatMap(bar -> bar.chords().stream())
            .filter(span -> span.harmony().hasChord())
            .toList();
    List<ChordSymbol> chords = spans.stream().map(s -> s.harmony().chord().orElseThrow()).toList();
    List<Voicing> voicings = VoiceLeading.smoothest(chords.stream().map(choices::of).toList());
    List<Voicing> basses = VoiceLeading.smoothest(chords.stream().map(BassLine::choices).toList());
    for (int i = 0; i < spans.size(); i++) {
      laid.put(
          spans.get(i).startBeat(),
          new Laid(chords.get(i), voicings.get(i), basses.get(i).lowest()));
    }
  }

  private void layPickup(Bar pickup, Bar first, VoicingChoices choices) {
    Optional<Laid> next = at(first.chords().get(0));
    for (ChordSpan span : pickup.chords()) {
      span.harmony()
          .chord()
          .ifPresent(chord -> laid.put(span.startBeat(), leadingTo(next, chord, choices)));
    }
  }

  private static Laid leadingTo(Optional<Laid> next, ChordSymbol chord, VoicingChoices choices) {
    List<ShapedVoicing> ways = choices.of(chord);
    List<ShapedVoicing> low = BassLine.choices(chord);
    if (next.isEmpty()) {
      return new Laid(chord, ways.get(0).voicing(), low.get(0).voicing().lowest());
    }
    Voicing bass = new Voicing(List.of(next.get().bass()));
    return new Laid(
        chord,
        VoiceLeading.leadingTo(ways, next.get().voicing()),
        VoiceLeading.leadingTo(low, bass).lowest());
  }
}
