package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import holdfast.listening.midi.TakePart.PedalMove;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Puts together what one player sends on several channels: a guitar that has a channel for each
 * string, a keyboard that bends each note by itself. Such channels share a track and a program, and
 * together they are still one line.
 */
final class OnePlayer {

  /** Two instruments that play at the same time sound together more than this. */
  private static final double LEAST_ALONE = 0.75;

  private OnePlayer() {}

  /** The parts, with those of one player put together under their lowest channel. */
  static List<TakePart> together(List<TakePart> parts) {
    Map<String, List<TakePart>> players = new LinkedHashMap<>();
    for (TakePart part : parts) {
      String player =
          part.track() + " " + part.program() + (part.isPercussion() ? " percussion" : "");
      players.computeIfAbsent(player, p -> new ArrayList<>()).add(part);
    }
    return players.values().stream().map(OnePlayer::orEach).flatMap(Collection::stream).toList();
  }

  private static List<TakePart> orEach(List<TakePart> parts) {
    if (parts.size() == 1) {
      return parts;
    }
    TakePart first = parts.get(0);
    List<PlayedNote> notes = parts.stream().flatMap(part -> part.notes().stream()).toList();
    TakePart all =
        new TakePart(
            first.track(),
            first.channel(),
            first.name(),
            OptionalInt.empty(),
            notes,
            parts.stream()
                .flatMap(part -> part.pedal().stream())
                .sorted(Comparator.comparingDouble(PedalMove::seconds))
                .toList());
    return PartPortrait.of(all).aloneShare() >= LEAST_ALONE ? List.of(all) : parts;
  }
}
