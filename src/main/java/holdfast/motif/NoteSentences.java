package holdfast.motif;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/** What became of single notes, in sentences that name the note and the chord. */
final class NoteSentences {

  /** More single notes than this are told as a number. */
  private static final int NAMED_NOTES = 3;

  private static final String[] ORDINALS = {
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"
  };

  private final Verdict verdict;
  private final List<Note> phrase;
  private final Optional<Changes> changes;

  NoteSentences(Verdict verdict, List<Note> phrase, Optional<Changes> changes) {
    this.verdict = verdict;
    this.phrase = phrase;
    this.changes = changes;
  }

  /**
   * Single notes: those that made way for the chord, those that slipped, those that are missing.
   */
  List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    toFit().ifPresent(sentences::add);
    slipped().ifPresent(sentences::add);
    changed().ifPresent(sentences::add);
    missing().ifPresent(sentences::add);
    return sentences.subList(0, Math.min(2, sentences.size()));
  }

  private Optional<String> toFit() {
    List<NoteChange> moved = of(NoteChange.Kind.MOVED_TO_FIT);
    if (moved.isEmpty()) {
      return Optional.empty();
    }
    // Chord by chord, in the order in which they come.
    TreeMap<Double, List<NoteChange>> byChord = new TreeMap<>();
    for (NoteChange change : moved) {
      byChord.computeIfAbsent(chordStart(change), k -> new ArrayList<>()).add(change);
    }
    List<String> parts = new ArrayList<>();
    for (List<NoteChange> there : byChord.values()) {
      boolean up = there.stream().allMatch(c -> c.semitones() > 0);
      boolean down = there.stream().allMatch(c -> c.semitones() < 0);
      parts.add(
          named(there)
              + (up ? " up" : down ? " down" : "")
              + " to fit the "
              + chordName(there.get(0)));
    }
    return Optional.of("You moved " + String.join(", and ", parts) + ".");
  }

  private Optional<String> slipped() {
    List<NoteChange> slips = of(NoteChange.Kind.SLIPPED);
    if (slips.isEmpty()) {
      return Optional.empty();
    }
    String which = named(slips);
    return Optional.of(Character.toUpperCase(which.charAt(0)) + which.substring(1) + " slipped.");
  }

  /** Notes that went elsewhere though nothing asked them to, and stand there as well. */
  private Optional<String> changed() {
    List<NoteChange> moved = of(NoteChange.Kind.MOVED);
    boolean rest =
        verdict.treatment() == Treatment.LITERAL
            || verdict.treatment() == Treatment.TRANSPOSED
            || verdict.treatment() == Treatment.SEQUENCE;
    if (moved.isEmpty() || !rest) {
      return Optional.empty();
    }
    return Optional.of(
        "You changed "
            + named(moved)
            + (moved.size() == 1 ? ", and it fits as well." : ", and they fit as well."));
  }

  private Optional<String> missing() {
    int dropped = of(NoteChange.Kind.DROPPED).size();
    int added = of(NoteChange.Kind.ADDED).size();
    if (verdict.treatment() == Treatment.FRAGMENT) {
      dropped = 0;
    }
    if (verdict.treatment() == Treatment.EXTENDED || verdict.treatment() == Treatment.ORNAMENTED) {
      added = 0;
    }
    if (dropped + added == 0) {
      return Optional.empty();
    }
    String out = dropped == 1 ? "One note was left out" : dropped + " notes were left out";
    String in = added == 1 ? "one note was put in" : added + " notes were put in";
    if (dropped == 0) {
      return Optional.of(Character.toUpperCase(in.charAt(0)) + in.substring(1) + ".");
    }
    return Optional.of(added == 0 ? out + "." : out + ", and " + in + ".");
  }

  private List<NoteChange> of(NoteChange.Kind kind) {
    return verdict.changes().stream().filter(c -> c.kind() == kind).toList();
  }

  private double chordStart(NoteChange change) {
    return changes
        .map(c -> c.at(phrase.get(change.phraseNote().orElseThrow()).onsetBeats()).startBeat())
        .orElse(0.0);
  }

  private String chordName(NoteChange change) {
    return changes
        .map(
            c ->
                c.at(phrase.get(change.phraseNote().orElseThrow()).onsetBeats())
                    .harmony()
                    .display())
        .orElse("chord");
  }

  /** "the third note", "the first and third notes", "four notes". */
  private String named(List<NoteChange> notes) {
    if (notes.size() > NAMED_NOTES) {
      return notes.size() + " notes";
    }
    List<String> names = notes.stream().map(this::ordinal).toList();
    if (names.size() == 1) {
      return "the " + names.get(0) + " note";
    }
    String last = names.get(names.size() - 1);
    return "the "
        + String.join(", ", names.subList(0, names.size() - 1))
        + " and "
        + last
        + " notes";
  }

  private String ordinal(NoteChange change) {
    int at = change.phraseNote().orElseThrow();
    if (at == phrase.size() - 1 && at > 0) {
      return "last";
    }
    return at < ORDINALS.length ? ORDINALS[at] : (at + 1) + "th";
  }
}
