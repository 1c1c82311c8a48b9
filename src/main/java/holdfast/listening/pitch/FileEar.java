package holdfast.listening.pitch;

import holdfast.listening.PlayedNote;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import holdfast.listening.audio.Sound;
import java.util.ArrayList;
import java.util.List;

/** Listens to a whole take that lies in a file, with all of it in view. */
public final class FileEar {

  /** Seconds at the start that show how loud the singer and the room are. */
  private static final int SURVEY_SECONDS = 60;

  /** Samples that are read at once: a second. */
  private static final int PIECE = Resampler.EAR_RATE;

  private FileEar() {}

  /** One frame in ten milliseconds. */
  @FunctionalInterface
  public interface Track {

    /**
     * Is told a frame.
     *
     * @param seconds its time
     * @param hz its pitch in hertz; a guess where nothing is sung
     * @param sung whether it is sung
     */
    void at(double seconds, double hz, boolean sung);
  }

  /**
   * What was heard.
   *
   * @param notes in order of onset; pitches as the player is tuned, cents from A = 440 Hz
   * @param tuningCents the player's tuning over A = 440 Hz at the end, in cents
   * @param driftCents how far the tuning moved from the first note to the last, in cents
   */
  public record Hearing(List<PlayedNote> notes, double tuningCents, double driftCents) {

    /** Copies the list. */
    public Hearing {
      notes = List.copyOf(notes);
    }
  }

  /**
   * Hears a take.
   *
   * @param sound the take
   * @param lowestHz lowest pitch looked for
   * @param highestHz highest pitch looked for
   * @param track told each frame of 10 ms
   */
  public static Hearing hear(Sound sound, double lowestHz, double highestHz, Track track) {
    return hear(sound.atEarRate(), lowestHz, highestHz, track);
  }

  /** The same for samples that are at the ear's rate already. */
  public static Hearing hear(float[] ear, double lowestHz, double highestHz, Track track) {
    return hear(EarSound.of(ear), lowestHz, highestHz, track);
  }

  /** The same for sound of any length, which is read piece by piece. */
  public static Hearing hear(EarSound ear, double lowestHz, double highestHz, Track track) {
    return hear(ear, lowestHz, highestHz, Manner.ANYONE, track);
  }

  /** The same for someone whose manner is known. */
  public static Hearing hear(
      EarSound ear, double lowestHz, double highestHz, Manner manner, Track track) {
    int surveyed = (int) Math.min(ear.length(), SURVEY_SECONDS * Resampler.EAR_RATE);
    Levels levels = Levels.of(ear.samples(0, surveyed), surveyed);
    Collected collected = new Collected(manner.gate(levels));
    Ear chain =
        new Ear(
            Resampler.EAR_RATE,
            false,
            lowestHz,
            highestHz,
            levels,
            manner,
            (frame, cents, sung, sure, level, flux) -> {
              if (frame % 2 == 0) {
                track.at(frame * Frames.HOP_SECONDS, Frames.hertz(cents), sung);
              }
            },
            collected);
    float[] piece = new float[PIECE];
    for (long from = 0; from < ear.length(); from += PIECE) {
      int count = (int) Math.min(PIECE, ear.length() - from);
      ear.read(from, piece, 0, count);
      chain.push(piece, 0, count);
    }
    chain.end();
    return collected.hearing();
  }

  private static final class Collected implements NoteListener {

    /** Onset, end, cents, level and confidence of a note. */
    private record Raw(double onset, double end, double cents, double levelDb, double sure) {}

    private final List<Raw> raw = new ArrayList<>();
    private final double gateDb;

    Collected(double gateDb) {
      this.gateDb = gateDb;
    }

    @Override
    public void began(double onsetSeconds, double cents, double levelDb) {
      // Only the whole note counts here.
    }

    @Override
    public void ended(
        double onsetSeconds, double endSeconds, double cents, double levelDb, double confidence) {
      if (levelDb < gateDb) {
        return;
      }
      raw.add(new Raw(onsetSeconds, endSeconds, cents, levelDb, confidence));
    }

    @Override
    public void takenBack() {
      // Nothing was kept of it.
    }

    Hearing hearing() {
      List<double[]> all = new ArrayList<>();
      for (Raw note : raw) {
        all.add(new double[] {note.cents, note.end - note.onset});
      }
      Tuning tuning = Tuning.fitting(all);
      List<PlayedNote> notes = new ArrayList<>();
      for (Raw note : raw) {
        tuning.hear(note.cents, note.end - note.onset);
        int pitch = tuning.pitch(note.cents);
        double off = Math.max(-100, Math.min(100, note.cents - 100.0 * pitch));
        notes.add(
            new PlayedNote(
                note.onset,
                note.end - note.onset,
                pitch,
                off,
                Levels.loudness(note.levelDb),
                Math.max(0, Math.min(1, note.sure))));
      }
      return new Hearing(notes, tuning.cents(), tuning.drift());
    }
  }
}
