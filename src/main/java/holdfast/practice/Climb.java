package holdfast.practice;

import holdfast.backing.Arrangement;
import holdfast.backing.Playback;
import holdfast.harmony.Fit;
import holdfast.session.JudgedPhrase;
import holdfast.session.Partner;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Hard bars go round and round: a little faster after each round that held, a little slower after
 * two in a row that did not. At the tempo to arrive at, it is over after two more that hold.
 */
final class Climb implements Partner {

  /** A step up that is felt and frightens nobody: common practice of teachers, no source. */
  private static final double UP = 1.06;

  private static final double DOWN = 0.92;

  /** How far below its start the tempo may fall, as a share. */
  private static final double LOWEST_SHARE = 0.7;

  private static final int MISSED_BEFORE_SLOWER = 2;
  private static final int HELD_AT_THE_TOP = 2;

  /** The next round's first bar is planned this long before it is heard. */
  private static final double AHEAD_SECONDS = 0.6;

  private final Lesson lesson;
  private final PracticeAudience audience;
  private final double roundBeats;
  private final double goal;
  private final double lowest;
  private final List<Outcome> outcomes = new ArrayList<>();
  private final List<JudgedPhrase> thisRound = new ArrayList<>();

  private Optional<Playback> playback = Optional.empty();
  private double tempo;
  private int round;
  private int missed;
  private int heldAtTheTop;
  private boolean arrived;

  Climb(Lesson lesson, PracticeAudience audience) {
    this.lesson = lesson;
    this.audience = audience;
    Arrangement arrangement = lesson.arrangement();
    this.roundBeats = (double) arrangement.bars().size() * arrangement.metre().beats();
    this.tempo = arrangement.tempo();
    this.goal = Math.min(Arrangement.FASTEST, Math.rint(tempo / Exercise.SLOWER_AT_FIRST));
    this.lowest = Math.max(Arrangement.SLOWEST, tempo * LOWEST_SHARE);
  }

  @Override
  public void begin(Playback started) {
    playback = Optional.of(started);
    audience.passage(passage(0));
  }

  @Override
  public void look(double beat) {
    double end = (round + 1) * roundBeats;
    double left = secondsAt(end) - secondsAt(beat);
    if (!arrived && left <= AHEAD_SECONDS) {
      endRound();
    }
    if (arrived && beat >= end) {
      playback.orElseThrow().stop();
    }
  }

  @Override
  public void hear(JudgedPhrase phrase) {
    thisRound.add(phrase);
  }

  List<Outcome> outcomes() {
    return List.copyOf(outcomes);
  }

  /** The tempo that was reached, in beats a minute. */
  double tempo() {
    return tempo;
  }

  private void endRound() {
    boolean held = !thisRound.isEmpty() && thisRound.stream().allMatch(Climb::holds);
    String sentence = thisRound.isEmpty() ? "I heard nothing in this round." : turn(held);
    Optional<JudgedPhrase> shown =
        thisRound.stream()
            .filter(p -> !holds(p))
            .findFirst()
            .or(() -> thisRound.stream().findFirst());
    Outcome outcome = new Outcome(passage(round), shown, held, sentence);
    outcomes.add(outcome);
    audience.outcome(outcome);
    thisRound.clear();
    if (arrived) {
      return;
    }
    round++;
    if (round < lesson.rounds()) {
      audience.passage(passage(round));
    }
  }

  /** Sets the tempo of the next round, and says why. */
  private String turn(boolean held) {
    missed = held ? 0 : missed + 1;
    if (held && tempo >= goal) {
      heldAtTheTop++;
      arrived = heldAtTheTop >= HELD_AT_THE_TOP;
      return arrived
          ? "You hold these bars at " + number(tempo) + ". That is what we came for."
          : "Held at " + number(tempo) + "; once more, so that it stays.";
    }
    if (held) {
      setTempo(Math.min(goal, Math.rint(tempo * UP)));
      return "That round held; a little faster now, " + number(tempo) + ".";
    }
    if (missed >= MISSED_BEFORE_SLOWER && tempo > lowest) {
      missed = 0;
      setTempo(Math.max(lowest, Math.rint(tempo * DOWN)));
      return "Let us take it a little slower, " + number(tempo) + ".";
    }
    boolean carried = thisRound.stream().allMatch(Climb::carries);
    return carried
        ? "You kept the idea, but it rubs; once more at " + number(tempo) + "."
        : "The idea slipped away; once more at " + number(tempo) + ".";
  }

  private void setTempo(double beatsPerMinute) {
    tempo = beatsPerMinute;
    playback.orElseThrow().setTempo(beatsPerMinute);
  }

  private Passage passage(int which) {
    double start = which * roundBeats;
    return new Passage(
        Passage.Who.STUDENT,
        start,
        start + roundBeats,
        lesson.arrangement().changes().between(start, start + roundBeats));
  }

  private double secondsAt(double beat) {
    return playback.orElseThrow().tempoMap().secondsAt(beat);
  }

  private static boolean carries(JudgedPhrase phrase) {
    return phrase.statesTheIdea() || phrase.carries();
  }

  private static boolean holds(JudgedPhrase phrase) {
    return phrase.statesTheIdea()
        || (phrase.carries() && phrase.harmony().fit().map(Fit::sits).orElse(true));
  }

  private static String number(double tempo) {
    return Long.toString(Math.round(tempo));
  }
}
