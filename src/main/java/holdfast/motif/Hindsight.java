package holdfast.motif;

import holdfast.melody.Note;
import holdfast.theory.Harmony;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * A whole take read again once it is over. What was said live stands as it was; hindsight knows
 * this player's habits, and which phrases turned out to be ideas of their own.
 *
 * @param ideas the opening idea, then those that took over, in the order in which they came
 * @param phrases what is said of each phrase
 */
public record Hindsight(List<Motif> ideas, List<PhraseReading> phrases) {

  /** A new phrase becomes an idea when this many of those after it restate it. */
  private static final int TAKES_OVER = 2;

  /** Of so many phrases after it that the ideas before do not explain. */
  private static final int LOOKED_AHEAD = 6;

  /** An idea that takes over has at least so many notes: two are found anywhere. */
  private static final int FEWEST_NOTES = 3;

  /** And at most so many: a longer phrase is a passage, not an idea. */
  private static final int MOST_NOTES = 24;

  /** A restatement must be this probable for a phrase to count as an idea's. */
  private static final double SURELY = 0.9;

  /** An answer comes within this many bars after its question. */
  private static final double ANSWER_BARS = 2;

  /** Copies. */
  public Hindsight {
    ideas = List.copyOf(ideas);
    phrases = List.copyOf(phrases);
  }

  /**
   * Reads a take again.
   *
   * @param judge judges each phrase
   * @param opening the idea of the take
   * @param phrases all phrases, in beats, in order; the opening idea's own statement may be among
   *     them
   * @param context chords, key and player; its priors are those from before the take
   */
  public static Hindsight read(
      MotifJudge judge, Motif opening, List<List<Note>> phrases, Context context) {
    List<Verdict> first = phrases.stream().map(p -> judge.compare(opening, p, context)).toList();
    return read(judge, opening, phrases, context, first);
  }

  /**
   * Reads a take again whose phrases were all held against the opening already.
   *
   * @param first what {@link MotifJudge#compare} says of each in this context
   */
  public static Hindsight read(
      MotifJudge judge,
      Motif opening,
      List<List<Note>> phrases,
      Context context,
      List<Verdict> first) {
    Context known = context.with(Priors.after(first));
    return new Reader(judge, opening, phrases, known).read();
  }

  private static final class Reader {
    private final MotifJudge judge;
    private final List<List<Note>> phrases;
    private final Context context;
    private final List<Motif> ideas = new ArrayList<>();
    private final List<Verdict> verdicts = new ArrayList<>();
    private final int[] ideaOf;
    private final boolean[] states;

    Reader(MotifJudge judge, Motif opening, List<List<Note>> phrases, Context context) {
      this.judge = judge;
      this.phrases = phrases;
      this.context = context;
      this.ideaOf = new int[phrases.size()];
      this.states = new boolean[phrases.size()];
      ideas.add(opening);
      for (List<Note> phrase : phrases) {
        verdicts.add(judge.compare(opening, phrase, context));
      }
    }

    Hindsight read() {
      for (int k = 0; k < phrases.size(); k++) {
        if (isFree(k) && isIdeaSized(phrases.get(k))) {
          takeOver(k);
        }
      }
      List<PhraseReading> readings = new ArrayList<>();
      for (int k = 0; k < phrases.size(); k++) {
        readings.add(
            new PhraseReading(ideaOf[k], verdicts.get(k), states[k], takenBack(k), answers(k)));
      }
      return new Hindsight(ideas, readings);
    }

    private static boolean isIdeaSized(List<Note> phrase) {
      return phrase.size() >= FEWEST_NOTES && phrase.size() <= MOST_NOTES;
    }

    private boolean isFree(int k) {
      return !verdicts.get(k).carriesTheIdea() && !states[k];
    }

    /** Makes phrase k an idea, if enough of what follows restates it. */
    private void takeOver(int k) {
      Motif candidate = new Motif(phrases.get(k), chordAt(k));
      int restated = 0;
      int left = (int) IntStream.range(k + 1, phrases.size()).filter(this::isFree).count();
      left = Math.min(left, LOOKED_AHEAD);
      // No further than it can still change the answer.
      for (int j = k + 1; restated < TAKES_OVER && restated + left >= TAKES_OVER; j++) {
        if (isFree(j)) {
          left--;
          restated += isRestated(candidate, phrases.get(j)) ? 1 : 0;
        }
      }
      if (restated < TAKES_OVER) {
        return;
      }
      ideas.add(candidate);
      int number = ideas.size() - 1;
      states[k] = true;
      for (int j = k; j < phrases.size(); j++) {
        Verdict verdict = judge.compare(candidate, phrases.get(j), context);
        Verdict old = verdicts.get(j);
        if (j == k || (verdict.carriesTheIdea() && verdict.restates() > old.restates())) {
          verdicts.set(j, verdict);
          ideaOf[j] = number;
        } else if (!old.carriesTheIdea() && !verdict.carriesTheIdea()) {
          // Lost either way: held against the idea that is carried now.
          verdicts.set(j, verdict);
          ideaOf[j] = number;
        }
      }
    }

    private boolean isRestated(Motif candidate, List<Note> phrase) {
      if (!judge.mayBeRestated(candidate, phrase, context)) {
        return false;
      }
      Verdict verdict = judge.compare(candidate, phrase, context);
      return verdict.family() == Family.RESTATED && verdict.restates() > SURELY;
    }

    private Optional<Harmony> chordAt(int k) {
      double beat = phrases.get(k).get(0).onsetBeats();
      return context.changes().map(changes -> changes.at(beat).harmony());
    }

    /** Carries an idea that the phrase before did not carry, but an earlier one did. */
    private boolean takenBack(int k) {
      if (k == 0 || !verdicts.get(k).carriesTheIdea() || states[k] || carries(k - 1, ideaOf[k])) {
        return false;
      }
      for (int j = 0; j < k - 1; j++) {
        if (carries(j, ideaOf[k])) {
          return true;
        }
      }
      return false;
    }

    private boolean carries(int k, int idea) {
      return ideaOf[k] == idea && verdicts.get(k).carriesTheIdea();
    }

    /** The phrase before, if this one begins alike, ends otherwise, and comes to rest. */
    private OptionalInt answers(int k) {
      if (k == 0 || !isIdeaSized(phrases.get(k - 1))) {
        return OptionalInt.empty();
      }
      List<Note> question = phrases.get(k - 1);
      List<Note> answer = phrases.get(k);
      double bars =
          (answer.get(0).onsetBeats() - question.get(question.size() - 1).endBeats())
              / context.beatsPerBar();
      if (bars > ANSWER_BARS || rests(question) || !rests(answer)) {
        return OptionalInt.empty();
      }
      Verdict verdict = judge.compare(new Motif(question, chordAt(k - 1)), answer, context);
      boolean otherEnding = verdict.detail().equals(ReshapedForms.CHANGED_ENDING);
      return otherEnding ? OptionalInt.of(k - 1) : OptionalInt.empty();
    }

    /** Whether the last note is the root of its chord, or the tonic of the key. */
    private boolean rests(List<Note> phrase) {
      Note last = phrase.get(phrase.size() - 1);
      Optional<Integer> root =
          context
              .changes()
              .flatMap(changes -> changes.at(last.onsetBeats()).harmony().chord())
              .map(chord -> chord.root().pitchClass());
      Optional<Integer> tonic = context.key().map(key -> key.tonic().pitchClass());
      int pitchClass = last.pitch() % 12;
      return root.filter(r -> r == pitchClass).isPresent()
          || tonic.filter(t -> t == pitchClass).isPresent();
    }
  }
}
