package holdfast.theory;

/** Which of its names a pitch class has in a key. */
final class KeySpelling {

  /** Names of the twelve steps above the tonic in major and minor: the degrees that chords use. */
  private static final Degree[] STEPS = {
    new Degree(1, 0),
    new Degree(2, -1),
    new Degree(2, 0),
    new Degree(3, -1),
    new Degree(3, 0),
    new Degree(4, 0),
    new Degree(4, 1),
    new Degree(5, 0),
    new Degree(6, -1),
    new Degree(6, 0),
    new Degree(7, -1),
    new Degree(7, 0)
  };

  private KeySpelling() {}

  static NoteName name(Key key, int pitchClass) {
    int step = Math.floorMod(pitchClass - key.tonic().pitchClass(), 12);
    Degree degree = STEPS[step];
    // The Locrian fifth is a flat fifth, and belongs to the scale.
    if (step == 6 && key.mode() == Mode.LOCRIAN) {
      degree = new Degree(5, -1);
    }
    return key.tonic().transpose(degree.interval()).simplified();
  }
}
