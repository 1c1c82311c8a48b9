package holdfast.report;

import holdfast.motif.Family;
import holdfast.motif.Treatment;
import holdfast.motif.Verdict;
import holdfast.session.JudgedPhrase;
import java.util.Locale;

/** What a player did with the idea, in a few plain words. */
public final class TreatmentWords {

  private static final int OCTAVE = 12;

  private TreatmentWords() {}

  /** A few words without a full stop, as they stand in a table; the teacher's where there are. */
  static String of(JudgedPhrase phrase) {
    return phrase
        .overruled()
        .map(o -> OverrulingWords.inATable(o.by()))
        .orElseGet(() -> of(phrase.verdict()));
  }

  /** A few words without a full stop, as they stand in a table. */
  public static String of(Verdict verdict) {
    String words =
        switch (verdict.treatment()) {
          case LITERAL -> "the same notes again";
          case TRANSPOSED -> "the whole idea " + moved(verdict.transposition());
          case SEQUENCE -> sequence(verdict);
          case RHYTHM_KEPT -> "its rhythm, other notes";
          case CONTOUR_KEPT ->
              verdict.family() == Family.RESTATED
                  ? "the idea, skewed a little"
                  : "its ups and downs, other steps";
          case INVERTED -> "upside down";
          case RETROGRADE -> "backwards";
          case AUGMENTED -> "slower, " + times(verdict.timeScale()) + " as long";
          case DIMINISHED -> "quicker, " + times(verdict.timeScale()) + " as long";
          case FRAGMENT -> "a part of it";
          case EXTENDED -> "the whole idea and more";
          case ORNAMENTED -> "the idea, decorated";
          case NEW -> verdict.material().words();
        };
    return words + shift(verdict);
  }

  private static String sequence(Verdict verdict) {
    int steps = verdict.scaleSteps();
    if (steps == 0) {
      return "the idea, skewed to its chord";
    }
    String count = Math.abs(steps) == 1 ? "a step" : Math.abs(steps) + " steps";
    return "its shape, " + count + (steps > 0 ? " up" : " down");
  }

  private static String moved(int semitones) {
    String where = semitones > 0 ? " up" : " down";
    int size = Math.abs(semitones);
    if (size == 0) {
      return "again";
    }
    if (size % OCTAVE == 0) {
      return (size == OCTAVE ? "an octave" : size / OCTAVE + " octaves") + where;
    }
    return (size == 1 ? "a half step" : size + " half steps") + where;
  }

  private static String times(double scale) {
    if (Math.abs(scale - 2) < 0.1) {
      return "twice";
    }
    if (Math.abs(scale - 0.5) < 0.05) {
      return "half";
    }
    return String.format(Locale.ROOT, "%.2g times", scale);
  }

  private static String shift(Verdict verdict) {
    // Less than a third of a beat is how a person breathes, not a new place in the bar.
    double shift = verdict.shiftBeats();
    if (verdict.treatment() == Treatment.NEW || Math.abs(shift) < 0.34) {
      return "";
    }
    double size = Math.rint(Math.abs(shift) * 2) / 2;
    String beats = size == 1 ? "a beat" : size == 0.5 ? "half a beat" : trim(size) + " beats";
    return ", " + beats + (shift > 0 ? " later in the bar" : " earlier in the bar");
  }

  private static String trim(double number) {
    return number == Math.rint(number) ? Integer.toString((int) number) : Double.toString(number);
  }
}
