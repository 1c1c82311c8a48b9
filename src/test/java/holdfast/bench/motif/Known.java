package holdfast.bench.motif;

/** What the judge is told beside the notes. */
enum Known {
  CHORDS_AND_PLAYER(", chords and player known"),
  CHORDS(", chords known"),
  NOTES_ALONE(", notes alone");

  private final String words;

  Known(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }
}
