package holdfast.command;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import holdfast.listening.PlayedNote;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.SoundFile;
import holdfast.listening.calibration.Profile;
import holdfast.listening.pitch.CleanedSound;
import holdfast.listening.pitch.FileEar;
import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says which notes are sung or played in a sound file. */
@Command(
    name = "listen",
    mixinStandardHelpOptions = true,
    description = {
      "Says which notes one voice or instrument sings or plays in a sound file.",
      "With --live it says what a microphone hears now, note by note.",
      "Reads WAV (8 to 192 kHz, 8 to 32 bits, floats), MP3, Ogg Vorbis, FLAC and M4A."
    },
    footerHeading = "%nWith --json:%n",
    footer = {
      "  {\"seconds\": 12.0, \"tuning_cents\": -12.1, \"drift_cents\": -3.0, \"a4_hz\": 436.9,",
      "   \"notes\": [{\"onset\": 0.41, \"duration\": 0.52, \"pitch\": 60, \"cents\": -8.5,",
      "              \"loudness\": 0.7, \"confidence\": 0.9}, …]}",
      "With --frames: lines of time, frequency, voicing (1 sung, 0 not), one each 10 ms;",
      "with both: \"frames\": [[time, frequency, voicing], …] in the object."
    })
final class ListenCommand implements Callable<Integer> {

  @Parameters(
      paramLabel = "FILE",
      arity = "0..1",
      description = "The take; with --live part of the microphone's name, or nothing.")
  private Optional<Path> file = Optional.empty();

  @Option(names = "--live", description = "Listen to a microphone, and keep nothing.")
  private boolean live;

  @Option(
      names = "--seconds",
      paramLabel = "N",
      description = "How long to listen with --live (until it is stopped without this).")
  private double seconds = Double.POSITIVE_INFINITY;

  @Option(names = "--json", description = "Write one JSON object.")
  private boolean json;

  @Option(names = "--frames", description = "Write the pitch track, a frame each 10 ms.")
  private boolean frames;

  @Option(
      names = "--backing",
      paramLabel = "SOUND",
      description = "The backing that can be heard in the take, to be taken out of it.")
  private Optional<Path> backing = Optional.empty();

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "Who sings or plays: ${COMPLETION-CANDIDATES}.",
      completionCandidates = ProfileNames.class)
  private Optional<String> profileName = Optional.empty();

  @Spec private CommandSpec spec;

  /** For the help page. */
  static final class ProfileNames implements Iterable<String> {
    @Override
    public java.util.Iterator<String> iterator() {
      return Profile.names().iterator();
    }
  }

  /** A growing row of frames. */
  private static final class Track implements FileEar.Track {
    private double[] hz = new double[1 << 12];
    private boolean[] sung = new boolean[1 << 12];
    private int count;

    @Override
    public void at(double seconds, double frequency, boolean isSung) {
      if (count == hz.length) {
        hz = java.util.Arrays.copyOf(hz, 2 * count);
        sung = java.util.Arrays.copyOf(sung, 2 * count);
      }
      hz[count] = frequency;
      sung[count] = isSung;
      count++;
    }
  }

  @Override
  public Integer call() throws IOException, InterruptedException {
    Profile profile = profileName.map(Profile::named).orElse(Profile.ANYONE);
    if (live) {
      String name = file.map(Path::toString).orElse("");
      new LiveListening(spec.commandLine().getOut()).listen(name, profile, seconds);
      return 0;
    }
    Path take =
        file.orElseThrow(
            () -> new UserMistake("name a sound file, or listen to a microphone with --live"));
    try (EarSound sound = SoundFile.tape(take)) {
      return hear(sound, profile);
    }
  }

  private int hear(EarSound sound, Profile profile) throws IOException {
    if (backing.isEmpty()) {
      return tell(sound, profile);
    }
    try (EarSound played = SoundFile.tape(backing.get());
        EarSound cleaned = CleanedSound.of(sound, played)) {
      return tell(cleaned, profile);
    }
  }

  private int tell(EarSound ear, Profile profile) throws IOException {
    Track track = new Track();
    FileEar.Hearing hearing =
        FileEar.hear(ear, profile.lowestHz(), profile.highestHz(), profile.manner(), track);
    // The last frame may stand a hair after the last sample.
    track.count = Math.min(track.count, (int) Math.ceil(ear.seconds() * 100));
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      writeJson(out, ear, hearing, track);
    } else if (frames) {
      for (int i = 0; i < track.count; i++) {
        out.printf(Locale.ROOT, "%.2f\t%.3f\t%d%n", i / 100.0, track.hz[i], track.sung[i] ? 1 : 0);
      }
    } else {
      writePlain(out, ear, hearing);
    }
    out.flush();
    return 0;
  }

  private void writeJson(PrintWriter out, EarSound sound, FileEar.Hearing hearing, Track track)
      throws IOException {
    try (JsonGenerator writer =
        new JsonFactory().createGenerator(out).disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)) {
      writer.writeStartObject();
      number(writer, "seconds", sound.seconds(), 3);
      number(writer, "tuning_cents", hearing.tuningCents(), 1);
      number(writer, "drift_cents", hearing.driftCents(), 1);
      number(writer, "a4_hz", 440 * Math.pow(2, hearing.tuningCents() / 1200), 2);
      writer.writeArrayFieldStart("notes");
      for (PlayedNote note : hearing.notes()) {
        writer.writeStartObject();
        number(writer, "onset", note.onsetSeconds(), 3);
        number(writer, "duration", note.durationSeconds(), 3);
        writer.writeNumberField("pitch", note.pitch());
        number(writer, "cents", note.cents(), 1);
        number(writer, "loudness", note.loudness(), 3);
        number(writer, "confidence", note.confidence(), 3);
        writer.writeEndObject();
      }
      writer.writeEndArray();
      if (frames) {
        writer.writeArrayFieldStart("frames");
        for (int i = 0; i < track.count; i++) {
          writer.writeStartArray();
          writer.writeNumber(rounded(i / 100.0, 2));
          writer.writeNumber(rounded(track.hz[i], 3));
          writer.writeNumber(track.sung[i] ? 1 : 0);
          writer.writeEndArray();
        }
        writer.writeEndArray();
      }
      writer.writeEndObject();
    }
    out.println();
  }

  private static void number(JsonGenerator writer, String field, double value, int decimals)
      throws IOException {
    writer.writeNumberField(field, rounded(value, decimals));
  }

  private static double rounded(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return Math.rint(value * scale) / scale;
  }

  private static void writePlain(PrintWriter out, EarSound sound, FileEar.Hearing hearing) {
    out.printf(
        Locale.ROOT,
        "%d notes in %.1f s; A4 stands at %.1f Hz%n",
        hearing.notes().size(),
        sound.seconds(),
        440 * Math.pow(2, hearing.tuningCents() / 1200));
    if (Math.abs(hearing.driftCents()) >= 15) {
      out.printf(
          Locale.ROOT,
          "you drifted %.0f cents %s on the way%n",
          Math.abs(hearing.driftCents()),
          hearing.driftCents() < 0 ? "flat" : "sharp");
    }
    for (PlayedNote note : hearing.notes()) {
      out.printf(
          Locale.ROOT,
          "%8.2f s  %-3s %+4.0f cents  %.2f s%n",
          note.onsetSeconds(),
          PlainNotes.name(note.pitch()),
          note.cents(),
          note.durationSeconds());
    }
  }
}
