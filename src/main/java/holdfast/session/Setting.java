package holdfast.session;

import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.chart.Changes;
import holdfast.chart.Chart;
import holdfast.chart.Form;
import holdfast.melody.Note;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.time.Metre;
import holdfast.time.TempoMap;
import java.util.List;
import java.util.Optional;

/**
 * What is known before the first note: the tune, where its beats fall, who plays, and whether a
 * teacher gave the idea.
 *
 * @param chart the tune
 * @param form one chorus of it, played out
 * @param changes its chords in time, chorus after chorus
 * @param beats where the take's beats fall in its seconds; beat 0 is bar 1 of the first chorus
 * @param player how exactly this player's notes can be taken
 * @param givenIdea the idea that the teacher gave; without one the first phrase is the idea
 * @param way which bar is played at which beat: the form again and again, or the bars that were
 *     looped
 */
public record Setting(
    Chart chart,
    Form form,
    Changes changes,
    TempoMap beats,
    Player player,
    Optional<Motif> givenIdea,
    Way way) {

  /** Which bar of which chorus is played at a beat of the take. */
  @FunctionalInterface
  public interface Way {
    /** The place of a beat. */
    Place at(double beat);
  }

  /** A tune at a tempo; the form and the changes are the chart's. */
  public static Setting of(Chart chart, TempoMap beats, Player player, Optional<Motif> givenIdea) {
    Form form = chart.form();
    return new Setting(
        chart, form, chart.changes(), beats, player, givenIdea, beat -> Place.at(beat, form));
  }

  /** A tune as a backing plays it: its bars, its harmony. */
  public static Setting of(
      Arrangement arrangement, TempoMap beats, Player player, Optional<Motif> givenIdea) {
    BarRange bars = arrangement.bars();
    int beatsInBar = arrangement.metre().beats();
    Way way =
        beat -> {
          int since = (int) Math.max(0, Math.floor(beat / beatsInBar));
          return new Place(1 + since / bars.size(), bars.first() + since % bars.size());
        };
    return new Setting(
        arrangement.chart(),
        arrangement.form(),
        arrangement.changes(),
        beats,
        player,
        givenIdea,
        way);
  }

  /** Where a phrase stands. */
  public Place placeOf(List<Note> phrase) {
    return way.at(Place.beatThatPlaces(phrase, metre()));
  }

  /** The metre throughout. */
  public Metre metre() {
    return form.metre();
  }
}
