package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import holdfast.theory.Key;
import holdfast.theory.SpelledPitch;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * Which part of a take is the melody, and why.
 *
 * @param part the part that was chosen, without what the player's other hand plays
 * @param line its notes, one at a time, as {@link MonophonicLine} thins them
 * @param reason the choice in one sentence, for the user
 */
public record LineChoice(TakePart part, List<PlayedNote> line, String reason) {

  /** Parts that a message names at most. */
  private static final int MOST_NAMED = 12;

  private static final Key PLAIN = Key.parse("C");

  /** Copies the line. */
  public LineChoice {
    line = List.copyOf(line);
  }

  /**
   * Finds the melody by itself: percussion never, accompaniment by its name, register or chords
   * seldom.
   *
   * @throws MidiFileException where there is nothing to choose from
   */
  public static LineChoice byItself(RecordedTake take) {
    return of(take, Optional.empty(), OptionalInt.empty());
  }

  /**
   * Takes the part that is named, and finds the melody among what the names leave open.
   *
   * @param track a track's number from 1, or its name or a part of it
   * @param channel 1 to 16
   * @throws MidiFileException where no part is of that name; the message lists those there are
   */
  public static LineChoice of(RecordedTake take, Optional<String> track, OptionalInt channel) {
    if (take.parts().isEmpty()) {
      throw MidiFileException.of(
          take.source(), "holds no notes", "give a file in which somebody plays");
    }
    List<TakePart> named =
        take.parts().stream()
            .filter(part -> channel.isEmpty() || part.channel() == channel.getAsInt())
            .toList();
    if (track.isPresent()) {
      named = ofTrack(named, track.get());
    }
    if (named.isEmpty()) {
      throw MidiFileException.of(
          take.source(),
          "has no notes in " + asked(track, channel),
          "choose one of these: " + list(take.parts()));
    }
    List<TakePart> pitched = named.stream().filter(part -> !part.isPercussion()).toList();
    if (pitched.isEmpty() && channel.isEmpty()) {
      throw MidiFileException.of(
          take.source(),
          "holds percussion only (channel 10)",
          "give a file with a melody, or name --channel 10 if those notes are one");
    }
    List<TakePart> candidates =
        pitched.isEmpty() ? named : channel.isPresent() ? pitched : OnePlayer.together(pitched);
    PartPortrait best =
        candidates.stream()
            .map(PartPortrait::of)
            .max(Comparator.comparingDouble(PartPortrait::likeness))
            .orElseThrow();
    boolean isNamed = track.isPresent() || channel.isPresent();
    OptionalInt lowest = UpperHand.lowestPitch(best.part().notes());
    TakePart hand = lowest.isEmpty() ? best.part() : from(lowest.getAsInt(), best.part());
    return new LineChoice(
        hand,
        MonophonicLine.of(hand.notes()),
        "The line is "
            + best.part().text()
            + ": "
            + reason(best, candidates, isNamed, take.parts().size())
            + (lowest.isEmpty()
                ? ""
                : "; what lies below "
                    + pitchName(lowest.getAsInt())
                    + " is taken for the other hand")
            + ".");
  }

  private static String pitchName(int pitch) {
    return SpelledPitch.of(pitch, PLAIN.spell(Math.floorMod(pitch, 12))).text();
  }

  private static TakePart from(int lowest, TakePart part) {
    return new TakePart(
        part.track(),
        part.channel(),
        part.name(),
        part.program(),
        part.notes().stream().filter(note -> note.pitch() >= lowest).toList(),
        part.pedal());
  }

  private static List<TakePart> ofTrack(List<TakePart> parts, String track) {
    String wanted = track.strip().toLowerCase(Locale.ROOT);
    if (wanted.matches("\\d{1,6}")) {
      return parts.stream().filter(part -> part.track() == Integer.parseInt(wanted)).toList();
    }
    List<TakePart> exact =
        parts.stream().filter(p -> p.name().toLowerCase(Locale.ROOT).equals(wanted)).toList();
    return exact.isEmpty()
        ? parts.stream().filter(p -> p.name().toLowerCase(Locale.ROOT).contains(wanted)).toList()
        : exact;
  }

  private static String reason(
      PartPortrait best, List<TakePart> candidates, boolean isNamed, int parts) {
    if (candidates.size() == 1) {
      return isNamed
          ? "you named it"
          : parts == 1 ? "it is the only part" : "it is the only part that is not percussion";
    }
    String alone =
        String.format(
            Locale.ROOT,
            "one note sounds at a time in %.0f %% of it",
            Math.floor(100 * best.aloneShare()));
    String why = best.nameSays() > 0 ? "its name says so, and " + alone : alone;
    String others =
        candidates.size() == 2
            ? "the other part"
            : "the other " + (candidates.size() - 1) + " parts";
    return why
        + ", so it is more of a melody than "
        + others
        + "; --track or --channel name another";
  }

  private static String asked(Optional<String> track, OptionalInt channel) {
    String ofTrack = track.map(t -> "track “" + t + "”").orElse("");
    String ofChannel = channel.isPresent() ? "channel " + channel.getAsInt() : "";
    return ofTrack + (track.isPresent() && channel.isPresent() ? ", " : "") + ofChannel;
  }

  private static String list(List<TakePart> parts) {
    String named =
        parts.stream().limit(MOST_NAMED).map(TakePart::text).collect(Collectors.joining(", "));
    return parts.size() > MOST_NAMED
        ? named + " and " + (parts.size() - MOST_NAMED) + " more"
        : named;
  }
}
