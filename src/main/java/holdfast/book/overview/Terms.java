package holdfast.book.overview;

import holdfast.backing.Arrangement;
import holdfast.backing.sound.SoundBank;
import holdfast.book.assignment.Assignment;
import holdfast.chart.Chart;
import holdfast.chart.ChartText;
import holdfast.listening.calibration.Profile;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Player;
import holdfast.session.Renderings;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.CRC32C;

/**
 * What is known of takes that come as bare MIDI or sound files. Answers to assignments bring their
 * own.
 *
 * @param chart what was played over; without one bare files cannot be judged
 * @param beatsPerMinute the tempo, where a file does not name one
 * @param idea the idea that was given
 * @param player how exactly the notes of bare MIDI files can be taken
 * @param profile who sings or plays in sound files
 */
public record Terms(
    Optional<Chart> chart,
    double beatsPerMinute,
    Optional<List<Note>> idea,
    Player player,
    Profile profile) {

  /** Goes up when takes come to be judged another way, so that old lines no longer count. */
  private static final int JUDGE = 2;

  /** Only answers that bring their own chart. */
  public static final Terms NONE =
      new Terms(Optional.empty(), 60, Optional.empty(), Player.KEYBOARD, Profile.ANYONE);

  /** Copies. */
  public Terms {
    idea = idea.map(List::copyOf);
  }

  /** Only a chart, at its own tempo. */
  public static Terms over(Chart chart) {
    return new Terms(
        Optional.of(chart), chart.tempo(), Optional.empty(), Player.KEYBOARD, Profile.ANYONE);
  }

  /** What an assignment says. */
  public static Terms of(Assignment assignment) {
    return new Terms(
        Optional.of(assignment.chart()),
        assignment.beatsPerMinute(),
        assignment.idea(),
        Player.KEYBOARD,
        Profile.ANYONE);
  }

  /** What recordings were played along to; nothing of it is rendered yet. */
  Optional<Renderings> backing() {
    return chart.map(
        over -> new Renderings(Arrangement.of(over).at(beatsPerMinute), SoundBank.builtIn()));
  }

  /** Tells these terms from others in a line. */
  String mark() {
    String all =
        JUDGE
            + chart.map(ChartText::print).orElse("")
            + beatsPerMinute
            + idea.map(IdeaNotation::print).orElse("")
            + player
            + profile.name();
    CRC32C sum = new CRC32C();
    sum.update(all.getBytes(StandardCharsets.UTF_8));
    return String.format(Locale.ROOT, "%08x", sum.getValue());
  }
}
