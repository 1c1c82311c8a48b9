package holdfast.chart;

import holdfast.theory.Key;
import holdfast.theory.Letter;
import holdfast.theory.Mode;
import holdfast.theory.NoteName;
import java.util.Arrays;
import java.util.Optional;

/** What MusicXML says in numbers and musicians in names: keys, transposing instruments, tempi. */
final class MusicXmlKey {

  private MusicXmlKey() {}

  /** The key with this signature and mode; empty where its tonic would need a double accidental. */
  static Optional<Key> read(int fifths, String modeName) {
    Optional<Mode> mode = mode(modeName);
    if (mode.isEmpty()) {
      return Optional.empty();
    }
    for (Letter letter : Letter.values()) {
      for (int alter = -1; alter <= 1; alter++) {
        Key key = new Key(new NoteName(letter, alter), mode.get());
        if (key.fifths() == fifths) {
          return Optional.of(key);
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<Mode> mode(String name) {
    return switch (name) {
      case "", "ionian" -> Optional.of(Mode.MAJOR);
      case "aeolian" -> Optional.of(Mode.MINOR);
      default ->
          Arrays.stream(Mode.values())
              .filter(mode -> mode.name().equalsIgnoreCase(name))
              .findFirst();
    };
  }

  /**
   * The note that sounds where a C is written.
   *
   * @param chromatic semitones from written to sounding
   * @param diatonic letters from written to sounding, where the file says so
   */
  static NoteName soundingC(int chromatic, Optional<Integer> diatonic) {
    int pitchClass = Math.floorMod(chromatic, 12);
    if (diatonic.isPresent()) {
      Letter letter = Letter.C.plus(diatonic.get());
      int alter = Math.floorMod(pitchClass - letter.pitchClass() + 6, 12) - 6;
      if (Math.abs(alter) <= 1) {
        return new NoteName(letter, alter);
      }
    }
    // Instruments are built in flats: B♭, E♭, A♭, D♭.
    for (int alter = 0; alter >= -1; alter--) {
      for (Letter letter : Letter.values()) {
        NoteName name = new NoteName(letter, alter);
        if (name.pitchClass() == pitchClass) {
          return name;
        }
      }
    }
    throw new AssertionError("every pitch class is a letter or a flat: " + pitchClass);
  }

  /** The tempo of a metronome mark in quarter notes a minute; empty where it is no number. */
  static Optional<Double> tempo(XmlNode metronome) {
    Optional<Double> quarters =
        switch (metronome.textAt("beat-unit").orElse("")) {
          case "whole" -> Optional.of(4.0);
          case "half" -> Optional.of(2.0);
          case "quarter" -> Optional.of(1.0);
          case "eighth" -> Optional.of(0.5);
          case "16th" -> Optional.of(0.25);
          default -> Optional.empty();
        };
    double dotted = metronome.first("beat-unit-dot").isPresent() ? 1.5 : 1;
    return metronome
        .numberAt("per-minute")
        .flatMap(perMinute -> quarters.map(unit -> perMinute * unit * dotted));
  }
}
