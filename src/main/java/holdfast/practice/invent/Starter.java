package holdfast.practice.invent;

import holdfast.chart.Changes;
import holdfast.harmony.ToneName;
import holdfast.theory.ChordPalette;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;

/**
 * Something to start from for a player who is stuck. Never a lick: a frame, and the player fills
 * it. The frames are common practice of teachers, no source.
 *
 * @param kind what it gives
 * @param sentence what is said to the player
 */
public record Starter(Kind kind, String sentence) {

  /** What a starter gives. */
  public enum Kind {
    /** Long and short, without notes. */
    RHYTHM,
    /** Ups and downs, without rhythm. */
    SHAPE,
    /** Three notes, in any order and rhythm. */
    NOTES,
    /** An open end that wants an answer. */
    QUESTION,
    /** A word with its own rhythm. */
    WORD
  }

  private static final List<String> RHYTHMS =
      List.of(
          "long, short, short, long",
          "short, short, short, long",
          "short, long, short, long",
          "long, long, short, short, long",
          "a rest, then short, short, long");

  private static final List<String> SHAPES =
      List.of(
          "up, up, down",
          "down, up, up, down",
          "a leap up, then small steps down",
          "stay, stay, up, back",
          "down, down, and a leap up");

  private static final List<String> WORDS =
      List.of("um-brel-la", "lan-tern light", "the fer-ry is late", "ket-tle", "one door o-pen");

  private static final List<String> QUESTIONS =
      List.of(
          "I go up and stop on %s, as if I asked something; you answer and come home",
          "I hang on %s and wait; take it from there and bring it to rest",
          "I fall to %s and break off; say how it ends");

  private static final int NOTES_GIVEN = 3;

  /** Another starter of each kind in turn, in an order that the seed shuffles. */
  public static List<Starter> shuffled(Changes changes, long seed) {
    Random random = new Random(seed);
    List<Starter> all = new ArrayList<>();
    for (String rhythm : picked(RHYTHMS, random)) {
      all.add(new Starter(Kind.RHYTHM, "Fill this rhythm with notes of yours: " + rhythm + "."));
    }
    for (String shape : picked(SHAPES, random)) {
      all.add(new Starter(Kind.SHAPE, "Follow this shape, on any notes: " + shape + "."));
    }
    for (int i = 0; i < RHYTHMS.size(); i++) {
      all.add(
          new Starter(
              Kind.NOTES,
              "Use only these, as often as you like: " + threeNotes(changes, random) + "."));
    }
    for (String question : picked(QUESTIONS, random)) {
      String open = String.format(Locale.ROOT, question, openNote(changes, random));
      all.add(new Starter(Kind.QUESTION, open + "."));
    }
    for (String word : picked(WORDS, random)) {
      all.add(new Starter(Kind.WORD, "Give this word a tune of your own: " + word + "."));
    }
    return inTurn(all);
  }

  private static List<String> picked(List<String> from, Random random) {
    List<String> shuffled = new ArrayList<>(from);
    Collections.shuffle(shuffled, random);
    return shuffled;
  }

  /** One of each kind, then the next of each. */
  private static List<Starter> inTurn(List<Starter> all) {
    List<Starter> turn = new ArrayList<>();
    for (int round = 0; turn.size() < all.size(); round++) {
      for (Kind kind : Kind.values()) {
        List<Starter> ofKind = all.stream().filter(s -> s.kind() == kind).toList();
        if (round < ofKind.size()) {
          turn.add(ofKind.get(round));
        }
      }
    }
    return turn;
  }

  private static String threeNotes(Changes changes, Random random) {
    ChordPalette palette = changes.paletteAt(0);
    List<Integer> notes = new ArrayList<>(pitchClasses(palette.scale()));
    Collections.shuffle(notes, random);
    List<Integer> three = new ArrayList<>(notes.subList(0, Math.min(NOTES_GIVEN, notes.size())));
    Collections.sort(three);
    List<String> names = three.stream().map(pc -> name(pc, changes)).toList();
    return String.join(", ", names);
  }

  /** A tone of the scale that is no tone of the chord leaves a question open. */
  private static String openNote(Changes changes, Random random) {
    ChordPalette palette = changes.paletteAt(0);
    List<Integer> open =
        pitchClasses(palette.scale()).stream()
            .filter(pc -> !palette.chordTones().contains(pc))
            .toList();
    List<Integer> choice = open.isEmpty() ? pitchClasses(palette.scale()) : open;
    return choice.isEmpty() ? "one note" : name(choice.get(random.nextInt(choice.size())), changes);
  }

  private static List<Integer> pitchClasses(PitchClassSet set) {
    List<Integer> found = new ArrayList<>();
    for (int pc = 0; pc < 12; pc++) {
      if (set.contains(pc)) {
        found.add(pc);
      }
    }
    return found;
  }

  private static String name(int pitchClass, Changes changes) {
    Optional<Key> key = changes.key();
    return ToneName.shown(pitchClass, changes.at(0).harmony(), key);
  }
}
