package holdfast.session;

import holdfast.listening.PlayedNote;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How a take stood against A = 440 Hz: as a whole, chorus by chorus, and how it moved. Singers sink
 * or rise together with their idea, and a restatement that is flat throughout is still one; but it
 * is worth knowing.
 *
 * @param cents where the middle of all sounding time lies, in cents over A = 440 Hz; negative: flat
 * @param driftCents how far it moved from the first note to the last, in cents; negative: sank
 * @param choruses the same as {@code cents} for each chorus that has notes, in order
 */
public record Intonation(double cents, double driftCents, List<OfChorus> choruses) {

  /** A few notes are chance and no tuning. */
  private static final int FEWEST_NOTES = 4;

  /** Pairs of notes for the slope: every pair of so many notes, evenly chosen. */
  private static final int MOST_NOTES_FOR_SLOPE = 400;

  /** Shorter notes count less, longer ones no more than this, in seconds. */
  private static final double LONG_SECONDS = 1;

  /**
   * One chorus.
   *
   * @param chorus counted from 1
   * @param cents over A = 440 Hz
   */
  public record OfChorus(int chorus, double cents) {}

  private record Weighted(double cents, double weight) {}

  /** Copies. */
  public Intonation {
    choruses = List.copyOf(choruses);
  }

  /** What a take says about it; empty for keyboards, which are in tune by nature, and few notes. */
  public static Optional<Intonation> of(JudgedTake take) {
    Map<Integer, List<PlayedNote>> byChorus = new TreeMap<>();
    List<PlayedNote> all = new ArrayList<>();
    for (JudgedPhrase phrase : take.phrases()) {
      all.addAll(phrase.played());
      byChorus
          .computeIfAbsent(phrase.place().chorus(), chorus -> new ArrayList<>())
          .addAll(phrase.played());
    }
    if (all.size() < FEWEST_NOTES || all.stream().allMatch(note -> note.cents() == 0)) {
      return Optional.empty();
    }
    all.sort(Comparator.comparingDouble(PlayedNote::onsetSeconds));
    List<OfChorus> choruses =
        byChorus.entrySet().stream()
            .filter(chorus -> chorus.getValue().size() >= FEWEST_NOTES)
            .map(chorus -> new OfChorus(chorus.getKey(), middle(chorus.getValue())))
            .toList();
    return Optional.of(new Intonation(middle(all), drift(all), choruses));
  }

  /** The weighted median: one wrong note does not move it. */
  private static double middle(List<PlayedNote> notes) {
    List<Weighted> sorted =
        notes.stream()
            .map(n -> new Weighted(n.cents(), Math.min(LONG_SECONDS, n.durationSeconds())))
            .sorted(Comparator.comparingDouble(Weighted::cents))
            .toList();
    double half = sorted.stream().mapToDouble(Weighted::weight).sum() / 2;
    double sum = 0;
    for (Weighted note : sorted) {
      sum += note.weight();
      if (sum >= half) {
        return note.cents();
      }
    }
    return sorted.get(sorted.size() - 1).cents();
  }

  /** The median slope between all pairs of notes (Theil 1950, Sen 1968), over the whole take. */
  private static double drift(List<PlayedNote> notes) {
    int count = Math.min(notes.size(), MOST_NOTES_FOR_SLOPE);
    List<PlayedNote> some = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      some.add(notes.get((int) ((long) i * notes.size() / count)));
    }
    double[] slopes = new double[count * (count - 1) / 2];
    int found = 0;
    for (int i = 0; i < count; i++) {
      for (int j = i + 1; j < count; j++) {
        double apart = some.get(j).onsetSeconds() - some.get(i).onsetSeconds();
        if (apart > 0) {
          slopes[found++] = (some.get(j).cents() - some.get(i).cents()) / apart;
        }
      }
    }
    if (found == 0) {
      return 0;
    }
    Arrays.sort(slopes, 0, found);
    double span = notes.get(notes.size() - 1).onsetSeconds() - notes.get(0).onsetSeconds();
    return slopes[found / 2] * span;
  }
}
