package holdfast.listening.midi;

import holdfast.listening.PlayedNote;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;

/**
 * What one channel of one track plays.
 *
 * @param track in the order of the file, from 1
 * @param channel 1 to 16; 10 is percussion by General MIDI
 * @param name of the track, or empty
 * @param program General MIDI program 0 to 127 that it starts with, where one is named
 * @param notes in increasing order of onset, lower pitches first; they may overlap
 * @param pedal moves of the sustain pedal in order of time
 */
public record TakePart(
    int track,
    int channel,
    String name,
    OptionalInt program,
    List<PlayedNote> notes,
    List<PedalMove> pedal) {

  /** General MIDI's channel for percussion. */
  public static final int PERCUSSION = 10;

  private static final Comparator<PlayedNote> IN_TIME =
      Comparator.comparingDouble(PlayedNote::onsetSeconds).thenComparingInt(PlayedNote::pitch);

  /**
   * The sustain pedal moved.
   *
   * @param seconds from the start of the take
   */
  public record PedalMove(double seconds, boolean down) {}

  /** Checks the numbers, puts notes in order and copies. */
  public TakePart {
    if (track < 1) {
      throw new IllegalArgumentException("tracks count from 1, not " + track);
    }
    if (channel < 1 || channel > 16) {
      throw new IllegalArgumentException("a channel is 1 to 16, not " + channel);
    }
    if (program.isPresent() && (program.getAsInt() < 0 || program.getAsInt() > 127)) {
      throw new IllegalArgumentException("a program is 0 to 127, not " + program.getAsInt());
    }
    notes = notes.stream().sorted(IN_TIME).toList();
    pedal = List.copyOf(pedal);
  }

  /** Whether this channel is General MIDI's percussion. */
  public boolean isPercussion() {
    return channel == PERCUSSION;
  }

  /** As told to people: {@code track 2 “Solo” (channel 1, 214 notes)}. */
  public String text() {
    String called = name.isEmpty() ? "" : " “" + name + "”";
    String count = notes.size() == 1 ? "1 note" : notes.size() + " notes";
    return "track " + track + called + " (channel " + channel + ", " + count + ")";
  }
}
