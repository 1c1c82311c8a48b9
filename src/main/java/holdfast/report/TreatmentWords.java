package holdfast.report;

import holdfast.motif.Family;
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
    return words + verdict.placeInBar().map(place -> ", " + place).orElse("");
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
}
