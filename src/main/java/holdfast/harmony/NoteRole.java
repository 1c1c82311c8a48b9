package holdfast.harmony;

/**
 * What a note does over its chord, in the words of the trade. Non-chord tones are told apart as in
 * the usual harmony books: by how they are reached and left, and by their weight in the bar.
 */
public enum NoteRole {
  /** It belongs to the chord. */
  CHORD_TONE("chord tone", Effect.RESTS),
  /** It colours the chord from above: ninth, eleventh, thirteenth and their kin. */
  TENSION("tension", Effect.RESTS),
  /**
   * It belongs to a scale of the chord, comes lightly and is left by leap: neither rest nor rub.
   */
  SCALE_TONE("scale tone", Effect.MOVES),
  /** It fills a step between two notes, in one direction. */
  PASSING("passing", Effect.RESOLVES),
  /** It lies a step beside a note: there and back, or one of the two steps only. */
  NEIGHBOUR("neighbour", Effect.MOVES),
  /** It leads by a half step, from outside the chord, into the note that follows. */
  APPROACH("approach", Effect.RESOLVES),
  /** It is one of two notes that close in on a third from above and below. */
  ENCLOSURE("enclosure", Effect.RESOLVES),
  /** It leans on the stronger place, reached by leap, and gives way by step. */
  APPOGGIATURA("appoggiatura", Effect.RESOLVES),
  /** It stays from the chord before, then gives way by step. */
  SUSPENSION("suspension", Effect.RESOLVES),
  /** It comes early: it belongs to the next chord. */
  ANTICIPATION("anticipation", Effect.RESOLVES),
  /** The lowered third or fifth of the blues, over a dominant or the key's minor home chord. */
  BLUE_NOTE("blue note", Effect.RESOLVES),
  /** It is long or last, rubs against the chord and gives way to nothing. */
  HELD_AGAINST("held against the chord", Effect.RUBS),
  /** It belongs to neither chord nor scale and leads nowhere by step, but is soon gone. */
  OUTSIDE("outside", Effect.RUBS),
  /** No chord sounds, so there is nothing to judge by. */
  UNJUDGED("not judged", Effect.NONE);

  /** What the role does to the ear. */
  public enum Effect {
    /** It can stay. */
    RESTS,
    /** It is on its way, and harmless. */
    MOVES,
    /** It is a dissonance with a reason: it leads or gives way, as the ear expects. */
    RESOLVES,
    /** It rubs. */
    RUBS,
    /** There is no chord to say. */
    NONE
  }

  private final String text;
  private final Effect effect;

  NoteRole(String text, Effect effect) {
    this.text = text;
    this.effect = effect;
  }

  /** As written in reports and JSON: {@code held against the chord}. */
  public String text() {
    return text;
  }

  /** What it does to the ear. */
  public Effect effect() {
    return effect;
  }
}
