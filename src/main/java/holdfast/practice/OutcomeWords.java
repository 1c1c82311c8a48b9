package holdfast.practice;

import holdfast.carry.Adaptation;
import holdfast.harmony.Fit;
import holdfast.melody.Note;
import holdfast.session.JudgedPhrase;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.List;
import java.util.Optional;

/**
 * What is said about a passage of the student's, in plain words.
 *
 * @param way in which it is practised; it decides what is asked for
 * @param key the key of the tune, for the names of notes
 */
record OutcomeWords(Way way, Optional<Key> key) {

  /**
   * The outcome of a passage.
   *
   * @param phrase what was played in it
   * @param before what the coach said last before it
   * @param mine how the coach would have said it, the likelier first; none but in the guessing game
   */
  Outcome of(
      Passage passage,
      Optional<JudgedPhrase> phrase,
      Optional<CoachLine> before,
      List<Adaptation> mine) {
    if (phrase.isEmpty()) {
      return new Outcome(
          passage,
          phrase,
          false,
          "Over " + passage.chord() + " I heard nothing; come in again at the next chord.");
    }
    JudgedPhrase played = phrase.get();
    if (played.statesTheIdea()) {
      return new Outcome(passage, phrase, true, "That is your idea; let us see where it goes.");
    }
    if (way == Way.SING_BACK && before.isPresent()) {
      return sungBack(passage, played, before.get());
    }
    if (way == Way.GUESS_NEXT && !mine.isEmpty()) {
      return guessed(passage, played, mine);
    }
    return carried(passage, played);
  }

  private Outcome carried(Passage passage, JudgedPhrase played) {
    String over = "over " + passage.chord();
    boolean sits = sits(played);
    String sentence =
        !played.carries()
            ? "Something new came " + over + "; take the idea up again."
            : sits ? "Kept " + over + ", and it sits." : "Kept " + over + ", but it rubs there.";
    return new Outcome(passage, Optional.of(played), played.carries() && sits, sentence);
  }

  private Outcome sungBack(Passage passage, JudgedPhrase played, CoachLine line) {
    Likeness likeness = Likeness.of(line.notes(), played.notes());
    String over = "over " + passage.chord();
    String octave = likeness.octaves() == 0 ? "" : " in another octave";
    if (likeness.isWhole()) {
      return new Outcome(
          passage, Optional.of(played), true, "Sung back " + over + octave + ", note for note.");
    }
    Harmony chord = passage.chords().get(0).harmony();
    String difference =
        likeness
            .difference(line.notes(), played.notes(), chord, key)
            .map(words -> ": " + words)
            .orElse("");
    String sentence =
        likeness.isNear()
            ? "Nearly " + over + octave + difference + "."
            : played.carries()
                ? "Your own way " + over + ", not the line you heard" + difference + "."
                : "That was another line " + over + "; listen once more.";
    return new Outcome(passage, Optional.of(played), false, sentence);
  }

  private Outcome guessed(Passage passage, JudgedPhrase played, List<Adaptation> mine) {
    String over = "over " + passage.chord();
    if (isSaid(mine.get(0), played)) {
      return new Outcome(
          passage, Optional.of(played), true, "Guessed " + over + ": that is how I say it.");
    }
    if (mine.size() > 1 && isSaid(mine.get(1), played)) {
      return new Outcome(
          passage,
          Optional.of(played),
          true,
          "Guessed " + over + ": I know this way, too; here is another.");
    }
    String sentence =
        !played.carries()
            ? "Something new " + over + "; here is how the idea could go."
            : sits(played)
                ? "Not mine " + over + ", but it holds: your own way. Here is mine."
                : "Near " + over + ", but it rubs. Here is mine.";
    return new Outcome(passage, Optional.of(played), false, sentence);
  }

  private static boolean isSaid(Adaptation way, JudgedPhrase played) {
    List<Note> notes = way.notes();
    return Likeness.of(notes, played.notes()).isWhole();
  }

  private static boolean sits(JudgedPhrase played) {
    return played.harmony().fit().map(Fit::sits).orElse(true);
  }
}
