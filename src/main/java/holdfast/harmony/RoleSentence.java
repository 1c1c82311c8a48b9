package holdfast.harmony;

import holdfast.theory.ChordPalette;
import holdfast.theory.Key;
import holdfast.theory.ToneClass;
import java.util.Optional;

/** Says what a note does over its chord: short enough for a child, right for a musician. */
final class RoleSentence {

  private RoleSentence() {}

  static String of(HeardNote heard, Optional<Key> key) {
    int pitch = heard.note().pitch();
    String note = ToneName.shown(pitch, heard.harmony(), key);
    if (heard.role() == NoteRole.UNJUDGED) {
      return "No chord sounds under the " + note + ", so there is nothing to judge it by.";
    }
    String chord = heard.harmony().chord().orElseThrow().display();
    String place = ToneName.place(pitch, heard.harmony());
    String goal =
        heard
            .goal()
            .map(g -> ToneName.shown(g.pitch(), heard.harmony(), key))
            .orElse("the next note");
    return switch (heard.role()) {
      case CHORD_TONE -> note + " is the " + place + " of " + chord + ": it belongs.";
      case TENSION -> note + " is the " + place + " over " + chord + ": it colours the chord.";
      case SCALE_TONE ->
          note + " belongs to the scale of " + chord + ", not to the chord, and is soon gone.";
      case PASSING -> note + " passes by step on its way to " + goal + ".";
      case NEIGHBOUR ->
          heard.goal().isPresent()
              ? note + " is a neighbour of " + goal + ", one step away, and goes there."
              : note + " steps aside from the note before and jumps off.";
      case APPROACH -> note + " leads into " + goal + " by a half step.";
      case ENCLOSURE -> note + " helps to close in on " + goal + " from above and below.";
      case APPOGGIATURA -> note + " leans on " + chord + ", then gives way to " + goal + ".";
      case SUSPENSION -> note + " stays from the chord before, then gives way to " + goal + ".";
      case ANTICIPATION ->
          note + " comes early: it is the " + place + " of " + chord + ", the next chord.";
      case BLUE_NOTE -> note + " is a blue note over " + chord + ".";
      case HELD_AGAINST ->
          note + " is held and rubs against " + chord + nearestRest(heard, key) + ".";
      case OUTSIDE ->
          note + " lies outside " + chord + " and leads nowhere by step, but is soon gone.";
      case UNJUDGED -> throw new AssertionError("told above");
    };
  }

  private static String nearestRest(HeardNote heard, Optional<Key> key) {
    ChordPalette palette = ChordPalette.of(heard.harmony(), key, Optional.empty());
    for (int step : new int[] {-1, 1, -2, 2}) {
      int pitch = heard.note().pitch() + step;
      if (palette.toneClass(pitch) == ToneClass.CHORD_TONE) {
        return "; a step to " + ToneName.shown(pitch, heard.harmony(), key) + " would settle it";
      }
    }
    return "";
  }
}
