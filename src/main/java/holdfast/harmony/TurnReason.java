package holdfast.harmony;

import holdfast.theory.ChordPalette;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.util.List;
import java.util.Optional;

/** Says in a phrase why a chord is unexpected. */
final class TurnReason {

  private static final int FOURTH = 5;
  private static final int HALF_STEP_DOWN = 11;

  private TurnReason() {}

  static String of(
      Key key,
      ChordSymbol before,
      ChordSymbol chord,
      Optional<ChordSymbol> next,
      KeyOfTheMoment.Place home) {
    int tonic = key.tonic().pitchClass();
    int degree = Math.floorMod(chord.root().pitchClass() - tonic, 12);
    PitchClassSet notes = ChordPalette.of(chord).chordTones();
    boolean minorKey = key.mode().hasMinorThird();
    int onwards = next.map(n -> up(chord, n)).orElse(0);
    if (degree == 0) {
      return "home turns " + (minorKey ? "major" : "minor");
    }
    if (chord.kind().has(3, -1) && chord.kind().has(5, -1)) {
      return "leaves the key: a diminished chord that slips in before "
          + next.map(ChordSymbol::display).orElse("the next");
    }
    if (isDominant(chord) && onwards == HALF_STEP_DOWN) {
      return "leaves the key: slides into "
          + next.orElseThrow().display()
          + " from a half step above";
    }
    if (isDominant(chord) && onwards == FOURTH) {
      return "leaves the key: leans towards " + next.orElseThrow().display();
    }
    if (!minorKey && notes.minus(KeyOfTheMoment.of(tonic, true).notes()).isEmpty()) {
      return "leaves the key: borrowed from the minor";
    }
    if (minorKey && notes.minus(KeyOfTheMoment.of(tonic, false).notes()).isEmpty()) {
      return "leaves the key: borrowed from the major";
    }
    if (chord.kind().equals(before.kind()) && notes.minus(home.notes()).size() > 1) {
      return "leaves the key: the same kind of chord, " + distance(up(before, chord));
    }
    if (degree == 1) {
      return "leaves the key: the chord a half step above home";
    }
    List<String> strangers =
        notes.minus(home.notes()).stream()
            .mapToObj(pc -> ToneName.shown(pc, chord, Optional.of(key)))
            .toList();
    return strangers.isEmpty()
        ? "rarely follows " + before.display()
        : "leaves the key: brings " + String.join(" and ", strangers);
  }

  private static boolean isDominant(ChordSymbol chord) {
    return chord.kind().has(3, 0) && chord.kind().has(7, -1);
  }

  private static int up(ChordSymbol from, ChordSymbol to) {
    return Math.floorMod(to.root().pitchClass() - from.root().pitchClass(), 12);
  }

  private static String distance(int up) {
    return switch (up) {
      case 1 -> "a half step higher";
      case 2 -> "a whole step higher";
      case 3 -> "a minor third higher";
      case 4 -> "a major third higher";
      case 5 -> "a fourth higher";
      case 6 -> "a tritone away";
      case 7 -> "a fourth lower";
      case 8 -> "a major third lower";
      case 9 -> "a minor third lower";
      case 10 -> "a whole step lower";
      default -> "a half step lower";
    };
  }
}
