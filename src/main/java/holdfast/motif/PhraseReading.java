package holdfast.motif;

import java.util.OptionalInt;

/**
 * What hindsight says of one phrase.
 *
 * @param idea which idea it is held against: 0 is the opening idea, 1 the one that took over, …
 * @param verdict what it makes of that idea
 * @param statesNewIdea whether it is the first statement of an idea that takes over from here
 * @param takenBack whether an idea comes back here that was let go before
 * @param answers the phrase that this one answers, as an answer a question: the same beginning,
 *     another ending that comes to rest
 */
public record PhraseReading(
    int idea, Verdict verdict, boolean statesNewIdea, boolean takenBack, OptionalInt answers) {}
