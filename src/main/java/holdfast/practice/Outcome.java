package holdfast.practice;

import holdfast.session.JudgedPhrase;
import java.util.Optional;

/**
 * What became of one passage of the student's.
 *
 * @param passage whose turn it was, and when
 * @param phrase what was played; empty where nothing was heard
 * @param reached whether it was what this way of practising asks for: carried and sitting, sung
 *     back, guessed
 * @param sentence what is said about it, in plain words
 */
public record Outcome(
    Passage passage, Optional<JudgedPhrase> phrase, boolean reached, String sentence) {}
