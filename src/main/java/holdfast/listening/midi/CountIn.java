package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Clicks that count the band in: one or two bars of steady strokes before the melody, that stop
 * when the music starts or give way to other drums. Of two bars, the first may be counted in halves
 * (1 . 2 . 1 2 3 4), and six or twelve eighths in threes; common practice, no source.
 *
 * @param beats how many beats the count-in lasts
 * @param barOneSeconds when the beat after it falls
 * @param beatsPerMinute the clicks' own tempo
 */
record CountIn(int beats, double barOneSeconds, double beatsPerMinute) {

  /** Strokes so close together are one. */
  private static final double TOGETHER_SECONDS = 0.03;

  /** How far a stroke may be from its beat, as a part of a beat. */
  private static final double STEADY = 0.1;

  /** How far the clicks' tempo may be from the tempo that the file names, as a part of it. */
  private static final double NEAR_TEMPO = 0.15;

  /**
   * On which beats of a count-in somebody clicks.
   *
   * @param clicks beats from its start, at least two
   * @param beats how many it lasts
   */
  private record Counting(List<Integer> clicks, int beats) {
    static Counting every(int step, int beats) {
      return new Counting(
          IntStream.range(0, beats / step).map(i -> i * step).boxed().toList(), beats);
    }

    int lastClick() {
      return clicks.get(clicks.size() - 1);
    }
  }

  /** The count-in of this take, if it has one. */
  static Optional<CountIn> in(RecordedTake take, List<PlayedNote> line, Metre metre) {
    List<PlayedNote> all =
        take.parts().stream()
            .filter(part -> part.isPercussion() || PartPortrait.isClick(part.name()))
            .flatMap(part -> part.notes().stream())
            .sorted(Comparator.comparingDouble(PlayedNote::onsetSeconds))
            .toList();
    List<PlayedNote> strokes = eachOnce(all);
    if (line.isEmpty()) {
      return Optional.empty();
    }
    return countings(metre).stream()
        .filter(counting -> counting.clicks().size() >= 2)
        .flatMap(counting -> matching(strokes, counting).stream())
        .filter(found -> found.isBefore(line.get(0), metre))
        .filter(found -> !take.tempoIsWritten() || found.agreesWith(take, metre))
        .findFirst();
  }

  private static List<PlayedNote> eachOnce(List<PlayedNote> strokes) {
    List<PlayedNote> once = new ArrayList<>();
    for (PlayedNote stroke : strokes) {
      if (once.isEmpty()
          || stroke.onsetSeconds() - once.get(once.size() - 1).onsetSeconds() > TOGETHER_SECONDS) {
        once.add(stroke);
      }
    }
    return once;
  }

  /** Longer ones first, since the shorter ones are their beginnings. */
  private static List<Counting> countings(Metre metre) {
    int bar = metre.beats();
    List<Counting> countings = new ArrayList<>();
    countings.add(Counting.every(1, 2 * bar));
    if (bar % 2 == 0 && bar > 2) {
      List<Integer> halvesFirst =
          Stream.concat(
                  Counting.every(2, bar).clicks().stream(),
                  Counting.every(1, bar).clicks().stream().map(beat -> bar + beat))
              .toList();
      countings.add(new Counting(halvesFirst, 2 * bar));
    }
    countings.add(Counting.every(1, bar));
    if (bar % 3 == 0 && metre.unit() >= 8) {
      countings.add(Counting.every(3, 2 * bar));
      countings.add(Counting.every(3, bar));
    }
    return countings;
  }

  /** The melody starts after it, but for a pick-up of less than a bar. */
  private boolean isBefore(PlayedNote first, Metre metre) {
    double bar = metre.beats() * 60 / beatsPerMinute;
    return first.onsetSeconds() > barOneSeconds - bar;
  }

  private boolean agreesWith(RecordedTake take, Metre metre) {
    double beat = 60 / beatsPerMinute;
    double quarters =
        take.tempo().beatAt(barOneSeconds) - take.tempo().beatAt(barOneSeconds - beat);
    return Math.abs(quarters / metre.quartersPerBeat() - 1) < NEAR_TEMPO;
  }

  private static Optional<CountIn> matching(List<PlayedNote> strokes, Counting counting) {
    int count = counting.clicks().size();
    if (strokes.size() < count) {
      return Optional.empty();
    }
    List<PlayedNote> clicks = strokes.subList(0, count);
    Optional<PlayedNote> after = strokes.stream().skip(count).findFirst();
    double first = clicks.get(0).onsetSeconds();
    double last = clicks.get(clicks.size() - 1).onsetSeconds();
    double beat = (last - first) / counting.lastClick();
    for (int i = 0; i < clicks.size(); i++) {
      double due = first + counting.clicks().get(i) * beat;
      if (Math.abs(clicks.get(i).onsetSeconds() - due) > STEADY * beat) {
        return Optional.empty();
      }
    }
    double barOne = first + counting.beats() * beat;
    double ongoing = barOne + (barOne - last) / 2;
    boolean ends =
        after.isEmpty()
            || after.get().onsetSeconds() > ongoing
            || clicks.stream().noneMatch(click -> click.pitch() == after.get().pitch());
    return ends ? Optional.of(new CountIn(counting.beats(), barOne, 60 / beat)) : Optional.empty();
  }
}
