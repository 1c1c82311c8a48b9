package holdfast.motif;

import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A verdict in two or three plain sentences, right for a child and defensible to a professional:
 * what was done with the idea, what became of single notes, and what else it might have been.
 */
public final class Why {

  /** Below this confidence the second choice is told too. */
  private static final double NOT_SURE = 0.75;

  /** From this probability on, a second choice is worth telling. */
  private static final double WORTH_TELLING = 0.15;

  private final Verdict verdict;

  private Why(Verdict verdict) {
    this.verdict = verdict;
  }

  /**
   * The sentences, in the order in which they are read.
   *
   * @param verdict what was judged
   * @param phrase the notes it was judged from
   * @param context as it was judged in
   */
  public static List<String> sentences(Verdict verdict, List<Note> phrase, Context context) {
    Why why = new Why(verdict);
    List<String> sentences = new ArrayList<>();
    sentences.add(why.done());
    if (verdict.treatment() == Treatment.NEW) {
      sentences.add(why.leastLost());
    } else {
      sentences.addAll(new NoteSentences(verdict, phrase, context.changes()).sentences());
    }
    why.doubt().ifPresent(sentences::add);
    return List.copyOf(sentences);
  }

  private String done() {
    String base =
        switch (verdict.treatment()) {
          case LITERAL -> "You played your idea again, with the same notes" + times();
          case TRANSPOSED ->
              "You moved the whole idea "
                  + TradeInterval.moved(verdict.transposition())
                  + " and kept every interval"
                  + times();
          case SEQUENCE -> sequence();
          case RHYTHM_KEPT -> rhythmKept();
          case CONTOUR_KEPT -> contourKept();
          case INVERTED -> "You turned your idea upside down: where it went up, you went down";
          case RETROGRADE -> "You played your idea backwards, from its last note to its first";
          case AUGMENTED -> "You played your idea " + slower() + " as slow";
          case DIMINISHED -> "You played your idea " + faster() + " as fast";
          case FRAGMENT -> fragment();
          case EXTENDED ->
              "You played your whole idea and added notes "
                  + (verdict.detail().isEmpty() ? "to it" : verdict.detail());
          case ORNAMENTED -> "You played your whole idea and put short notes between its own";
          case NEW ->
              "I did not hear your idea in this phrase; it was " + verdict.material().words();
        };
    return base + where() + ".";
  }

  private String times() {
    return verdict.detail().isEmpty() ? "" : ", " + verdict.detail();
  }

  private String sequence() {
    int steps = verdict.scaleSteps();
    if (steps == 0) {
      return "You kept your idea in its place and changed only what the new chord asks for";
    }
    int size = Math.abs(steps);
    return "You moved your idea "
        + (steps > 0 ? "up " : "down ")
        + (size == 1 ? "a step" : size + " steps")
        + " along the scale: the same shape, on new notes";
  }

  private String rhythmKept() {
    return switch (verdict.detail()) {
      case "notes in another octave" ->
          "You played the same notes in the same rhythm, some of them in another octave";
      case ReshapedForms.CHANGED_ENDING ->
          "You began your idea as before and gave it another ending";
      default -> "You kept the rhythm of your idea and chose other notes";
    };
  }

  private String contourKept() {
    return switch (verdict.detail()) {
      case "intervals widened" ->
          "You kept the rhythm and the ups and downs of your idea and made its leaps wider";
      case "intervals narrowed" ->
          "You kept the rhythm and the ups and downs of your idea and made its leaps narrower";
      case ReshapedForms.CHANGED_ENDING ->
          "You began your idea as before and gave it another ending";
      case Explanation.OWN_RHYTHM -> "You played the notes of your idea in a rhythm of their own";
      default ->
          verdict.family() == Family.RESTATED
              ? "You played your idea with its rhythm and its ups and downs, a few notes moved"
              : "You kept the rhythm and the ups and downs of your idea, with other intervals";
    };
  }

  private String slower() {
    return verdict.timeScale() == 2
        ? "twice"
        : String.format(Locale.ROOT, "%.3g times", verdict.timeScale());
  }

  private String faster() {
    return verdict.timeScale() == 0.5
        ? "twice"
        : String.format(Locale.ROOT, "%.3g times", 1 / verdict.timeScale());
  }

  private String fragment() {
    String part =
        verdict.detail().equals("head") ? "the beginning of your idea" : "a part of your idea";
    return verdict.detail().endsWith("times") || verdict.detail().equals("twice")
        ? "You took " + part + " and said it " + verdict.detail()
        : "You took " + part + " and left the rest out";
  }

  /** Where in the bar, if that is another place than the idea's. */
  private String where() {
    boolean tells =
        verdict.treatment() == Treatment.LITERAL
            || verdict.treatment() == Treatment.TRANSPOSED
            || verdict.treatment() == Treatment.SEQUENCE;
    return tells ? verdict.placeInBar().map(place -> ", " + place).orElse("") : "";
  }

  /** For new material: which side of the idea came nearest to being there. */
  private String leastLost() {
    Evidence evidence = verdict.evidence();
    if (evidence.rhythm() >= 0.6 && evidence.rhythm() > evidence.contour()) {
      return "Some of its rhythm was there, but the ups and downs were others.";
    }
    if (evidence.contour() >= 0.6) {
      return "Some of its ups and downs were there, but the rhythm was another.";
    }
    return "Neither its rhythm nor its ups and downs came back.";
  }

  private Optional<String> doubt() {
    if (verdict.confidence() >= NOT_SURE) {
      return Optional.empty();
    }
    return verdict.probabilities().entrySet().stream()
        .filter(e -> e.getKey() != verdict.treatment() && e.getValue() >= WORTH_TELLING)
        .max(java.util.Map.Entry.comparingByValue())
        .map(e -> "I am not sure: it could also be " + other(e.getKey()) + ".");
  }

  private static String other(Treatment treatment) {
    return switch (treatment) {
      case LITERAL -> "the same notes again with a slip";
      case TRANSPOSED -> "the whole idea moved";
      case SEQUENCE -> "the idea fitted to the chord";
      case RHYTHM_KEPT -> "its rhythm on other notes";
      case CONTOUR_KEPT -> "its ups and downs with other intervals";
      case INVERTED -> "the idea upside down";
      case RETROGRADE -> "the idea backwards";
      case AUGMENTED -> "the idea slower";
      case DIMINISHED -> "the idea faster";
      case FRAGMENT -> "a part of the idea";
      case EXTENDED -> "the idea with notes added";
      case ORNAMENTED -> "the idea with short notes put in";
      case NEW -> "something new";
    };
  }
}
