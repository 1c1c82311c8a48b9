package holdfast.bench.motif;

import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Family;
import holdfast.motif.Motif;
import holdfast.motif.Treatment;
import holdfast.motif.Verdict;
import java.util.List;
import java.util.Set;

/**
 * One phrase whose making is known.
 *
 * @param idea the idea as it was played first
 * @param phrase the phrase as it was played, with noise
 * @param context chords, key and kind of player
 * @param made how the phrase was made
 * @param treatments all words that are right for it: more than one only where two rules come to the
 *     very same notes
 * @param families all families that are right for it: more than one only for a contour kept with
 *     every note near its place
 */
record Case(
    Motif idea,
    List<Note> phrase,
    Context context,
    Treatment made,
    Set<Treatment> treatments,
    Set<Family> families) {

  boolean isTreatment(Verdict verdict) {
    return treatments.contains(verdict.treatment());
  }

  boolean isFamily(Verdict verdict) {
    boolean ownFamily = isTreatment(verdict) && verdict.family() == verdict.treatment().family();
    return ownFamily || families.contains(verdict.family());
  }
}
