package holdfast.session;

import holdfast.motif.Family;
import holdfast.motif.Treatment;
import holdfast.motif.Verdict;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * A teacher's word on one phrase. It counts in everything that is said about the take; what the
 * coach heard is kept beside it.
 *
 * @param phrase which one, counted from 1 as people do
 * @param startSeconds where it began when the teacher heard it, in seconds of the take: by this it
 *     is found again should the take be cut another way later
 * @param family how near to the idea it stands
 * @param treatment what was done with the idea, where the teacher says so
 * @param words anything to add for the student
 */
public record Overruling(
    int phrase,
    double startSeconds,
    Family family,
    Optional<Treatment> treatment,
    Optional<String> words) {

  /** Phrases whose starts lie this near are one, in seconds: a long reaction of the cutter. */
  private static final double SAME_START_SECONDS = 0.25;

  /** Checks that there is such a phrase, and that treatment and family agree. */
  public Overruling {
    if (phrase < 1) {
      throw new IllegalArgumentException("phrases are counted from 1, not from " + phrase);
    }
    if (!Double.isFinite(startSeconds)) {
      throw new IllegalArgumentException("a phrase starts at a finite second");
    }
    // A contour that is kept with its notes near their places is the idea restated.
    boolean both = treatment.filter(t -> t == Treatment.CONTOUR_KEPT).isPresent();
    if (treatment.isPresent()
        && treatment.get().family() != family
        && !(both && family == Family.RESTATED)) {
      throw new IllegalArgumentException(
          "“" + treatment.get().word() + "” does not belong to “" + family.word() + "”");
    }
  }

  /** About this phrase, in the teacher's choice of a family. */
  public static Overruling of(JudgedPhrase phrase, Family family, Optional<String> words) {
    return new Overruling(
        phrase.index() + 1, phrase.startSeconds(), family, Optional.empty(), words);
  }

  /** About this phrase, in the teacher's choice of a treatment. */
  public static Overruling of(JudgedPhrase phrase, Treatment treatment, Optional<String> words) {
    return new Overruling(
        phrase.index() + 1,
        phrase.startSeconds(),
        treatment.family(),
        Optional.of(treatment),
        words);
  }

  /** Whether it is about this phrase. The idea's own statement cannot be overruled. */
  boolean isAbout(JudgedPhrase other) {
    return !other.statesTheIdea()
        && Math.abs(other.startSeconds() - startSeconds) <= SAME_START_SECONDS;
  }

  /** What counts from now on, in place of what was heard. */
  Verdict in(Verdict heard) {
    Treatment settled = treatment.orElseGet(() -> likeliest(heard));
    Map<Treatment, Double> sure = new EnumMap<>(Treatment.class);
    for (Treatment one : Treatment.values()) {
      sure.put(one, one == settled ? 1.0 : 0.0);
    }
    boolean isNew = family == Family.NEW;
    return new Verdict(
        settled,
        family,
        isNew ? 0 : heard.transposition(),
        isNew ? 0 : heard.scaleSteps(),
        heard.shiftBeats(),
        isNew ? 1 : heard.timeScale(),
        1,
        isNew ? 0 : 1,
        sure,
        heard.similarity(),
        heard.evidence(),
        heard.changes(),
        heard.material(),
        settled == heard.treatment() ? heard.detail() : "");
  }

  /** Of the family's treatments the one that the coach found most probable. */
  private Treatment likeliest(Verdict heard) {
    if (heard.family() == family) {
      return heard.treatment();
    }
    Treatment best = Treatment.NEW;
    double most = -1;
    for (Treatment one : Treatment.values()) {
      double probability = heard.probabilities().getOrDefault(one, 0.0);
      if (one.family() == family && probability > most) {
        most = probability;
        best = one;
      }
    }
    return best;
  }
}
