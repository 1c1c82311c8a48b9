package holdfast.book;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Which takes are wanted; all conditions hold at once.
 *
 * @param student who played; case does not count
 * @param chart a part of the chart's title; case does not count
 * @param from the first day
 * @param to the last day
 * @param words each stands somewhere in the take's names, notes or feelings
 * @param most so many, the newest first
 */
public record Search(
    Optional<String> student,
    Optional<String> chart,
    Optional<LocalDate> from,
    Optional<LocalDate> to,
    List<String> words,
    int most) {

  /** Everything, the newest first. */
  public static final Search ALL =
      new Search(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          Integer.MAX_VALUE);

  /** Copies. */
  public Search {
    words = List.copyOf(words);
    if (most < 0) {
      throw new IllegalArgumentException("cannot list " + most + " takes");
    }
  }

  /** The same for one student. */
  public Search of(String name) {
    return new Search(Optional.of(name), chart, from, to, words, most);
  }

  /** The same over charts with this in their title. */
  public Search over(String title) {
    return new Search(student, Optional.of(title), from, to, words, most);
  }

  /** The same, so many and no more. */
  public Search atMost(int number) {
    return new Search(student, chart, from, to, words, number);
  }
}
