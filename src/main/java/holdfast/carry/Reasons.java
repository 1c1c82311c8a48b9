package holdfast.carry;

import holdfast.harmony.ChordHere;
import holdfast.harmony.ToneName;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.NoChord;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Says why the idea goes this way: short enough for a child, right for a musician. */
final class Reasons {

  /** With more moves than these a sentence that tells each in full is too long to follow. */
  private static final int MOST_MOVES_IN_FULL = 3;

  private final Question question;
  private final List<Slot> slots;
  private final Carrying.Found found;
  private final Optional<Key> key;
  private final Harmony to;

  private Reasons(Question question, List<Slot> slots, Carrying.Found found) {
    this.question = question;
    this.slots = slots;
    this.found = found;
    this.key = question.changes().key();
    this.to =
        ChordHere.at(question.changes(), question.startBeat())
            .map(ChordHere::harmony)
            .orElse(NoChord.SILENT);
  }

  static List<String> of(Question question, List<Slot> slots, Carrying.Found found) {
    return new Reasons(question, slots, found).sentences();
  }

  private List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        switch (found.way()) {
          case LITERAL -> literal();
          case SKEWED -> skewed();
          case SEQUENCE -> sequence();
          case TRANSPOSED -> transposed();
        });
    pickUp().ifPresent(sentences::add);
    sentences.addAll(givenUp());
    return sentences;
  }

  private String literal() {
    if (!to.hasChord()) {
      return "No chord sounds here: say it as it is.";
    }
    Set<String> parts = new LinkedHashSet<>();
    for (int i = 0; i < slots.size(); i++) {
      if (slots.get(i).counts()) {
        parts.add(there(i) + " is the " + place(i));
      }
    }
    return "Nothing has to move over " + to.display() + ": " + listed(parts) + ".";
  }

  private String skewed() {
    Map<String, Integer> moves = new LinkedHashMap<>();
    Set<String> shortly = new LinkedHashSet<>();
    Set<String> stays = new LinkedHashSet<>();
    for (int i = 0; i < slots.size(); i++) {
      int moved = moved(i);
      if (moved == 0) {
        stays.add(here(i));
      } else {
        String way = (moved < 0 ? " falls " : " rises ") + distance(moved) + " to " + there(i);
        moves.merge(here(i) + way + ", the " + place(i) + " of " + chordName(i), 1, Integer::sum);
        shortly.add(here(i) + " to " + there(i));
      }
    }
    String rest =
        stays.isEmpty() ? "" : "; " + listed(stays) + (stays.size() > 1 ? " stay" : " stays");
    if (shortly.size() > MOST_MOVES_IN_FULL) {
      return "Each note that clashes goes to the nearest one that fits: "
          + listed(shortly)
          + rest
          + ".";
    }
    List<String> parts = new ArrayList<>();
    moves.forEach((move, times) -> parts.add((times > 1 ? "every " : "the ") + move));
    return capital(String.join("; ", parts)) + rest + ".";
  }

  private String sequence() {
    int last = slots.size() - 1;
    return "The whole idea goes "
        + (moved(last) < 0 ? "down" : "up")
        + " a scale step; it ends on "
        + there(last)
        + ", the "
        + place(last)
        + " of "
        + chordName(last)
        + ".";
  }

  private String transposed() {
    int moved = moved(0);
    String way = (moved < 0 ? "down " : "up ") + distance(moved);
    Optional<String> from = found.frame().source().harmony().map(Harmony::display);
    if (found.frame().kind() == Frame.Kind.PARALLEL && from.isPresent()) {
      return from.get()
          + " goes "
          + way
          + " to "
          + to.display()
          + ", and the idea goes with it, note for note.";
    }
    return "The whole idea goes " + way + ", note for note.";
  }

  /** A pick-up that rests over the old chord only. */
  private Optional<String> pickUp() {
    for (int i = 0; i < slots.size(); i++) {
      Slot slot = slots.get(i);
      int pitch = found.pitches().get(i);
      boolean old =
          slot.comingChord().filter(chord -> !chord.rests(pitch)).isPresent()
              && !slot.chords().isEmpty()
              && slot.chords().get(0).rests(pitch);
      if (old) {
        return Optional.of(
            "The pick-up still belongs to " + slot.chords().get(0).harmony().display() + ".");
      }
    }
    return Optional.empty();
  }

  /** What could not be kept. */
  private List<String> givenUp() {
    List<String> sentences = new ArrayList<>();
    for (int i = 1; i < slots.size(); i++) {
      int meant = question.idea().pitch(i) - question.idea().pitch(i - 1);
      int got = found.pitches().get(i) - found.pitches().get(i - 1);
      if (Integer.signum(meant) != Integer.signum(got)) {
        sentences.add(
            "The shape bends between notes "
                + i
                + " and "
                + (i + 1)
                + ", since nothing nearer fits.");
      }
    }
    for (int i = 0; i < slots.size(); i++) {
      Slot slot = slots.get(i);
      if (slot.counts() && !slot.isFree() && !slot.rests(found.pitches().get(i))) {
        sentences.add(there(i) + " rubs against " + chordName(i) + ", since nothing nearer fits.");
      }
    }
    return sentences;
  }

  private int moved(int i) {
    return found.pitches().get(i) - found.frame().source().pitch(i);
  }

  private String here(int i) {
    Harmony from = found.frame().source().harmony().orElse(to);
    return ToneName.shown(found.frame().source().pitch(i), from, key);
  }

  private String there(int i) {
    return ToneName.shown(found.pitches().get(i), chord(i), key);
  }

  private String place(int i) {
    return chord(i).hasChord() ? ToneName.place(found.pitches().get(i), chord(i)) : "note";
  }

  private String chordName(int i) {
    return chord(i).display();
  }

  private Harmony chord(int i) {
    return slots.get(i).chord().map(ChordHere::harmony).orElse(NoChord.SILENT);
  }

  private static String distance(int semitones) {
    return switch (Math.abs(semitones)) {
      case 1 -> "a half step";
      case 2 -> "a whole step";
      case 3 -> "a minor third";
      case 4 -> "a major third";
      case 5 -> "a fourth";
      case 6 -> "a tritone";
      case 7 -> "a fifth";
      case 12 -> "an octave";
      default -> Math.abs(semitones) + " half steps";
    };
  }

  private static String listed(Set<String> parts) {
    List<String> all = List.copyOf(parts);
    if (all.size() == 1) {
      return all.get(0);
    }
    return String.join(", ", all.subList(0, all.size() - 1)) + " and " + all.get(all.size() - 1);
  }

  private static String capital(String text) {
    return Character.toUpperCase(text.charAt(0)) + text.substring(1);
  }
}
