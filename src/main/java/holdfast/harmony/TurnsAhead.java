package holdfast.harmony;

import holdfast.chart.ChordSpan;
import holdfast.theory.ChordPalette;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Key;
import holdfast.theory.Mode;
import holdfast.theory.PitchClassSet;
import holdfast.theory.TonalPitchSpace;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Which chords of a form will a listener not predict, and why? A chord is unexpected when it has
 * notes outside the key and the change to it is rare; when the home chord turns from minor to major
 * or back; and only the first time that the form makes this move.
 */
public final class TurnsAhead {

  /**
   * From this score up a chord with notes outside the key is unexpected: surprisal in bits and four
   * for every outside note, as the trade tables rank the bars of ten charts. Between the last bar
   * that they leave unmarked (7.6) and the first that they mark (9.1).
   */
  private static final double UNEXPECTED = 8.3;

  private static final double OUTSIDE_NOTE = 4;

  /**
   * A form that begins or ends on a chord makes it as likely as so many notes outside make it not.
   */
  private static final double HOME_BEGINS = 2;

  private static final double HOME_ENDS = 3;

  private TurnsAhead() {}

  /**
   * Every chord of the form that is new, with its surprise, in order.
   *
   * @param changes one chorus, as it comes again; bars without a chord are passed over
   * @param written the key of the tune; where none is written, the one that fits its chords best
   */
  public static List<Turn> of(List<ChordSpan> changes, Optional<Key> written) {
    List<ChordSpan> spans =
        changes.stream().filter(s -> s.harmony().hasChord() && s.startBeat() >= 0).toList();
    List<ChordSymbol> chords = spans.stream().map(s -> s.harmony().chord().orElseThrow()).toList();
    if (chords.isEmpty()) {
      return List.of();
    }
    List<PitchClassSet> notes = chords.stream().map(TurnsAhead::notes).toList();
    Key key = written.orElseGet(() -> likeliestKey(chords, notes));
    KeyOfTheMoment.Place home = home(key, chords);
    List<KeyOfTheMoment.Place> moments = KeyOfTheMoment.along(notes, home);
    List<Turn> turns = new ArrayList<>();
    Set<List<Object>> heard = new HashSet<>();
    for (int i = 0; i < spans.size(); i++) {
      ChordSymbol before = chords.get(i == 0 ? chords.size() - 1 : i - 1);
      ChordSymbol chord = chords.get(i);
      double bits = ChordChanges.COUNTED.surprisalBits(before, chord);
      if (i > 0 && bits == 0) {
        continue;
      }
      KeyOfTheMoment.Place moment = i == 0 ? home : moments.get(i - 1);
      int outside = Math.min(home.outside(notes.get(i)), moment.outside(notes.get(i)));
      boolean firstTime = heard.add(move(before, chord));
      boolean rare = outside > 0 && bits + OUTSIDE_NOTE * outside >= UNEXPECTED;
      boolean unexpected = firstTime && (rare || turnsHome(key, chord));
      Optional<ChordSymbol> next = next(chords, i);
      turns.add(
          new Turn(
              spans.get(i).bar(),
              spans.get(i).startBeat(),
              spans.get(i).harmony(),
              bits,
              outside,
              distance(home, chord),
              unexpected,
              unexpected ? TurnReason.of(key, before, chord, next, home) : ""));
    }
    return turns;
  }

  /** For each bar in which an unexpected chord starts, counted from 1, why the first one is. */
  public static SortedMap<Integer, String> reasons(List<ChordSpan> changes, Optional<Key> key) {
    SortedMap<Integer, String> reasons = new TreeMap<>();
    of(changes, key).stream()
        .filter(Turn::unexpected)
        .forEach(turn -> reasons.putIfAbsent(turn.bar(), turn.reason()));
    return reasons;
  }

  /** The bars of the form in which an unexpected chord starts, counted from 1. */
  public static Set<Integer> unexpectedBars(List<ChordSpan> changes, Optional<Key> key) {
    Set<Integer> bars = new TreeSet<>();
    of(changes, key).stream().filter(Turn::unexpected).forEach(turn -> bars.add(turn.bar()));
    return bars;
  }

  /** The chord's own notes; of an altered chord those that are sure. */
  private static PitchClassSet notes(ChordSymbol chord) {
    return ChordPalette.of(chord).chordTones();
  }

  /** The key with the fewest notes outside; on its tonic the form begins or, rather, ends. */
  private static Key likeliestKey(List<ChordSymbol> chords, List<PitchClassSet> notes) {
    ChordSymbol last = chords.get(chords.size() - 1);
    Key likeliest = new Key(last.root().simplified(), Mode.MAJOR);
    double least = Double.POSITIVE_INFINITY;
    for (ChordSymbol candidate : chords) {
      boolean minor = candidate.kind().has(3, -1);
      int tonic = candidate.root().pitchClass();
      KeyOfTheMoment.Place place = KeyOfTheMoment.of(tonic, minor);
      double cost = notes.stream().mapToInt(place::outside).sum();
      cost -= candidate.root().equals(chords.get(0).root()) ? HOME_BEGINS : 0;
      cost -= candidate.root().equals(last.root()) ? HOME_ENDS : 0;
      if (cost < least) {
        least = cost;
        likeliest = new Key(candidate.root().simplified(), minor ? Mode.MINOR : Mode.MAJOR);
      }
    }
    return likeliest;
  }

  /** Home, with the lowered third and seventh of the blues where its own chord is a dominant. */
  private static KeyOfTheMoment.Place home(Key key, List<ChordSymbol> chords) {
    int tonic = key.tonic().pitchClass();
    List<ChordSymbol> homeChords =
        chords.stream().filter(c -> c.root().pitchClass() == tonic).toList();
    long dominants =
        homeChords.stream().filter(c -> c.kind().has(7, -1) && c.kind().has(3, 0)).count();
    KeyOfTheMoment.Place plain = KeyOfTheMoment.of(tonic, key.mode().hasMinorThird());
    PitchClassSet notes =
        switch (key.mode()) {
          case MAJOR, MINOR -> plain.notes();
          default -> key.scale();
        };
    boolean isBlues = 2 * dominants > homeChords.size();
    return new KeyOfTheMoment.Place(
        plain.key(), isBlues ? notes.union(PitchClassSet.of(tonic + 3, tonic + 10)) : notes);
  }

  /** Whether the home chord comes with the other third, as a place of rest and not a dominant. */
  private static boolean turnsHome(Key key, ChordSymbol chord) {
    boolean home = chord.root().pitchClass() == key.tonic().pitchClass();
    boolean minor = chord.kind().has(3, -1);
    boolean major = chord.kind().has(3, 0) && !chord.kind().has(7, -1);
    return home && (key.mode().hasMinorThird() ? major : minor && !chord.kind().has(5, -1));
  }

  private static List<Object> move(ChordSymbol from, ChordSymbol to) {
    return List.of(from.root(), from.kind(), to.root(), to.kind());
  }

  /** The chord that the form goes to from here. */
  private static Optional<ChordSymbol> next(List<ChordSymbol> chords, int i) {
    for (int steps = 1; steps < chords.size(); steps++) {
      ChordSymbol there = chords.get((i + steps) % chords.size());
      if (!there.root().equals(chords.get(i).root())
          || !there.kind().equals(chords.get(i).kind())) {
        return Optional.of(there);
      }
    }
    return Optional.empty();
  }

  /** From the chord of home to this one, in the key where it lies nearest. */
  private static int distance(KeyOfTheMoment.Place home, ChordSymbol chord) {
    Key key = home.key();
    ChordSymbol from =
        ChordSymbol.parse(key.tonic().text() + (key.mode().hasMinorThird() ? "m" : ""));
    PitchClassSet notes = notes(chord);
    int nearest = TonalPitchSpace.between(from, key, chord, key).distance();
    for (int tonic = 0; tonic < 12; tonic++) {
      for (boolean minor : new boolean[] {false, true}) {
        KeyOfTheMoment.Place there = KeyOfTheMoment.of(tonic, minor);
        if (there.outside(notes) == 0) {
          TonalPitchSpace way = TonalPitchSpace.between(from, key, chord, there.key());
          nearest = Math.min(nearest, way.distance());
        }
      }
    }
    return nearest;
  }
}
