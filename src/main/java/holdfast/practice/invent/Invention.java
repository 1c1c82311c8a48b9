package holdfast.practice.invent;

import holdfast.melody.Note;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * One idea of an inventing session.
 *
 * @param number counted from 1 through the session
 * @param notes in beats of the take
 * @param sameAs the number of the idea that it is again; empty where it is a new one
 * @param clothes what it wears then
 * @param differences for a new idea what makes it another than the new one before; none for the
 *     first
 */
public record Invention(
    int number,
    List<Note> notes,
    OptionalInt sameAs,
    Optional<Clothes> clothes,
    Set<Difference> differences) {

  /** Copies. */
  public Invention {
    notes = List.copyOf(notes);
    differences = Set.copyOf(differences);
  }

  /** Whether it was not heard before. */
  public boolean isNew() {
    return sameAs.isEmpty();
  }

  /** What is said about it, kindly. */
  public String sentence() {
    if (sameAs.isPresent()) {
      String again =
          "Number "
              + number
              + " is number "
              + sameAs.getAsInt()
              + " again, "
              + clothes.orElse(Clothes.NONE).words();
      return again + ". You know that one well; what else comes?";
    }
    if (differences.isEmpty()) {
      return number == 1 ? "Number 1, your first idea." : "Number " + number + " is new.";
    }
    String made =
        Difference.inOrder(differences).map(Difference::words).collect(Collectors.joining(", "));
    return "Number " + number + " is new: " + made + ".";
  }
}
