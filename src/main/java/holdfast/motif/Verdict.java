package holdfast.motif;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a listener who knows the idea would say about a phrase, and how sure they can be.
 *
 * @param treatment the most probable treatment within the most probable family
 * @param family how near the idea it stands
 * @param transposition how far the phrase lies from the idea, in semitones, up positive; 0 where it
 *     is new
 * @param scaleSteps the same in steps of the scale; 0 where it does not move by steps
 * @param shiftBeats how much later in the bar it starts than the idea, in beats; negative is
 *     earlier
 * @param timeScale by how much its times are stretched: 2 in an exact augmentation, 1 as a rule
 * @param confidence probability of the treatment, 0 to 1: of phrases called 0.8 sure, about 80 in a
 *     hundred are right
 * @param restates probability that a listener hears it as coming from the idea, 0 to 1
 * @param probabilities probability of every treatment; they sum to 1
 * @param similarity how much alike idea and phrase are feature by feature, 0 to 1
 * @param evidence the features: rhythm, contour, intervals
 * @param changes what became of each note, in the phrase's order; dropped notes where they are
 *     missed
 * @param material what it is made of if it is new
 * @param detail what the trade would add to the treatment's word, or nothing
 */
public record Verdict(
    Treatment treatment,
    Family family,
    int transposition,
    int scaleSteps,
    double shiftBeats,
    double timeScale,
    double confidence,
    double restates,
    Map<Treatment, Double> probabilities,
    double similarity,
    Evidence evidence,
    List<NoteChange> changes,
    Material material,
    String detail) {

  /** Copies map and list. */
  public Verdict {
    probabilities = Map.copyOf(probabilities);
    changes = List.copyOf(changes);
  }

  /** The same with other probabilities. */
  Verdict with(Map<Treatment, Double> others, double restatesNow) {
    return new Verdict(
        treatment,
        family,
        transposition,
        scaleSteps,
        shiftBeats,
        timeScale,
        others.getOrDefault(treatment, 0.0),
        restatesNow,
        others,
        similarity,
        evidence,
        changes,
        material,
        detail);
  }

  /** Less than a third of a beat is how a person breathes, not a new place in the bar. */
  private static final double NEW_PLACE_BEATS = 0.34;

  /**
   * Where in the bar it starts, against the idea, in words and to the half beat: {@code half a beat
   * later in the bar}; empty where that is the same place, or it is not the idea.
   */
  public Optional<String> placeInBar() {
    double halves = Math.rint(Math.abs(shiftBeats) * 2);
    if (treatment == Treatment.NEW || Math.abs(shiftBeats) < NEW_PLACE_BEATS) {
      return Optional.empty();
    }
    String number = halves % 2 == 0 ? Integer.toString((int) halves / 2) : halves / 2 + "";
    String beats = halves == 1 ? "half a beat" : halves == 2 ? "a beat" : number + " beats";
    return Optional.of(beats + (shiftBeats > 0 ? " later" : " earlier") + " in the bar");
  }

  /** Whether the phrase comes from the idea at all. */
  public boolean carriesTheIdea() {
    return family != Family.NEW;
  }
}
