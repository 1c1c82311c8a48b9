package holdfast.session;

import holdfast.backing.Arrangement;
import holdfast.backing.sound.SoundBank;
import holdfast.listening.PlayedNote;
import holdfast.listening.alignment.BackingFinder;
import holdfast.listening.alignment.BackingPlace;
import holdfast.listening.alignment.BackingPlace.Sureness;
import holdfast.listening.alignment.KnownBacking;
import holdfast.listening.alignment.LineFinder;
import holdfast.listening.alignment.OnBackingTime;
import holdfast.listening.audio.EarSound;
import holdfast.listening.calibration.Profile;
import holdfast.listening.pitch.CleanedSound;
import holdfast.listening.pitch.FileEar;
import holdfast.time.TempoMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A take that came as a sound file, laid over the tune it was played to: where its beats fall in
 * its seconds, and which notes were sung or played.
 *
 * @param beats where beats fall in the seconds of the file; beat 0 is bar 1
 * @param notes the player's notes, in seconds of the file
 * @param sureness how sure the place of bar 1 is
 * @param backingHeard whether the backing was found in the recording
 * @param stretch how much longer a second of the backing lasts in the file; 1 where nothing was
 *     found
 * @param barOne how bar 1 was found, in one sentence, with what to do where it is not sure
 */
public record SoundTake(
    TempoMap beats,
    List<PlayedNote> notes,
    Sureness sureness,
    boolean backingHeard,
    double stretch,
    String barOne) {

  /** A speed difference under this is not worth a word. */
  private static final double WORTH_SAYING = 0.002;

  /** What the user can do about it. */
  private static final String MEND = "if that is wrong, say where bar 1 begins: --bar-one SECONDS";

  /** Copies. */
  public SoundTake {
    notes = List.copyOf(notes);
  }

  /**
   * Hears a take.
   *
   * @param sound the recording
   * @param arrangement what was played along to
   * @param bank the instruments that the backing was rendered with
   * @param profile who sings or plays
   * @param barOne where bar 1 begins in the file, if the user says so
   */
  public static SoundTake hear(
      EarSound sound,
      Arrangement arrangement,
      SoundBank bank,
      Profile profile,
      OptionalDouble barOne) {
    try (Renderings renderings = new Renderings(arrangement, bank)) {
      return hear(sound, renderings, profile, barOne);
    }
  }

  /**
   * The same for one of several takes that were played along to the same.
   *
   * @param shared what was played along to; of any number of takes at once
   */
  public static SoundTake hear(
      EarSound sound, Renderings shared, Profile profile, OptionalDouble barOne) {
    try (Renderings.ForOneTake renderings = shared.forTake(sound.seconds())) {
      return hear(sound, renderings, shared.arrangement(), profile, barOne);
    }
  }

  private static SoundTake hear(
      EarSound sound,
      Renderings.ForOneTake renderings,
      Arrangement arrangement,
      Profile profile,
      OptionalDouble barOne) {
    KnownBacking backing = renderings.backing();
    BackingPlace place =
        barOne.isPresent()
            ? BackingFinder.near(sound, backing, barOne.getAsDouble())
            : BackingFinder.find(sound, backing);
    if (barOne.isEmpty() && place.sureness() == Sureness.UNSURE) {
      return byTheLine(sound, arrangement, profile);
    }
    List<PlayedNote> notes =
        place.ourSound()
            ? withoutBacking(sound, renderings, backing, place, profile)
            : listen(sound, profile);
    return new SoundTake(
        steady(arrangement, place.stretch(), place.barOneSeconds()),
        notes,
        place.sureness(),
        place.clearness() > 0 && (barOne.isEmpty() || place.ourSound()),
        place.stretch(),
        barOne.isPresent() ? asSaid(place) : found(place));
  }

  private static SoundTake byTheLine(EarSound sound, Arrangement arrangement, Profile profile) {
    List<PlayedNote> notes = listen(sound, profile);
    double beat = 60 / arrangement.tempo();
    LineFinder.Guess line = LineFinder.find(notes, arrangement.changes(), beat);
    String sentence =
        String.format(
            Locale.ROOT,
            "I could not find the backing in this recording, so where bar 1 is I %s from how your"
                + " notes fit the chords: at %.2f s; I am %s; %s.",
            line.likely() ? "take" : "only guess",
            line.barOneSeconds(),
            line.likely() ? "not quite sure" : "not sure, and the chart may be another",
            MEND);
    return new SoundTake(
        steady(arrangement, 1, line.barOneSeconds()),
        notes,
        line.likely() ? Sureness.LIKELY : Sureness.UNSURE,
        false,
        1,
        sentence);
  }

  private static TempoMap steady(Arrangement arrangement, double stretch, double barOne) {
    return TempoMap.steady(arrangement.tempo() / stretch, barOne);
  }

  private static String asSaid(BackingPlace place) {
    return String.format(
        Locale.ROOT,
        "Bar 1 begins at %.2f s, as you said%s.",
        place.barOneSeconds(),
        place.ourSound() ? "; I heard the backing there and set it to the hundredth" : "");
  }

  private static String found(BackingPlace place) {
    double slower = place.stretch() - 1;
    String speed =
        Math.abs(slower) < WORTH_SAYING
            ? ""
            : String.format(
                Locale.ROOT,
                ", %.1f %% %s than it is written, which I have allowed for",
                100 * Math.abs(slower),
                slower > 0 ? "slower" : "faster");
    String start =
        place.barOneSeconds() < 0
            ? String.format(
                Locale.ROOT, "The recording begins %.2f s after bar 1", -place.barOneSeconds())
            : String.format(Locale.ROOT, "Bar 1 begins at %.2f s", place.barOneSeconds());
    String sure =
        place.sureness() == Sureness.SURE
            ? "I heard the backing" + speed + " and am sure of it"
            : "I heard the backing" + speed + ", but other places fit nearly as well: " + MEND;
    return start + "; " + sure + ".";
  }

  private static List<PlayedNote> listen(EarSound sound, Profile profile) {
    return FileEar.hear(
            sound, profile.lowestHz(), profile.highestHz(), profile.manner(), (s, hz, sung) -> {})
        .notes();
  }

  /** The take on the backing's clock, the backing taken out; notes come back on the file's. */
  private static List<PlayedNote> withoutBacking(
      EarSound sound,
      Renderings.ForOneTake renderings,
      KnownBacking backing,
      BackingPlace place,
      Profile profile) {
    EarSound known = renderings.sound(place.tempoRatio(), place.rounds());
    try (OnBackingTime steady = OnBackingTime.of(sound, place);
        EarSound alone = new CleanedSound(steady, known, steady.delaySamples(backing, place))) {
      List<PlayedNote> notes = new ArrayList<>();
      for (PlayedNote note : listen(alone, profile)) {
        notes.add(
            new PlayedNote(
                steady.takeSeconds(note.onsetSeconds()),
                note.durationSeconds() * place.clockStretch(),
                note.pitch(),
                note.cents(),
                note.loudness(),
                note.confidence()));
      }
      return Leftover.dropped(notes);
    }
  }
}
