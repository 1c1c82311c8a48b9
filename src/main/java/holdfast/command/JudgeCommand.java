package holdfast.command;

import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.backing.Arrangement;
import holdfast.backing.Feel;
import holdfast.backing.Performance;
import holdfast.backing.sound.SoundBank;
import holdfast.book.RenderedSound;
import holdfast.book.TakeSound;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.chart.MusicXmlMelody;
import holdfast.chart.Transposition;
import holdfast.chart.WrittenFor;
import holdfast.disk.WholeFile;
import holdfast.listening.PlayedNote;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.SoundFile;
import holdfast.listening.calibration.Profile;
import holdfast.listening.midi.BarOne;
import holdfast.listening.midi.LineChoice;
import holdfast.listening.midi.MidiTakeFile;
import holdfast.listening.midi.RecordedTake;
import holdfast.listening.midi.TakePlacement;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.report.JudgementJson;
import holdfast.report.JudgementText;
import holdfast.report.Listening;
import holdfast.report.Occasion;
import holdfast.report.PhraseSounds;
import holdfast.report.PhrasesCsv;
import holdfast.report.PitchTrace;
import holdfast.report.ReportPage;
import holdfast.report.ReportPdf;
import holdfast.report.SoloSheet;
import holdfast.report.picture.Clef;
import holdfast.session.Coach;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.session.SoundTake;
import holdfast.theory.Key;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Judges a take that is recorded already. */
@Command(
    name = "judge",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Judge a recorded take: was the idea carried through the changes, where was it lost, and how"
          + " did it sit in the chords?",
      ""
    },
    footer = {
      "",
      "Example: holdfast judge take.mid --chart \"Slow Ferry\" --report take.html",
      "",
      "Signs in front of a phrase: ● restates the idea, ■ varies it, ○ is new; ! marks a turn of"
          + " the form that nobody expects."
    })
final class JudgeCommand implements Callable<Integer> {

  @Parameters(
      index = "0",
      paramLabel = "TAKE",
      description =
          "the take: a Standard MIDI File of format 0 or 1, or a recording as WAV, MP3, Ogg Vorbis,"
              + " FLAC or M4A, with our backing in it or, made with headphones, without")
  private Path take;

  @Option(
      names = "--chart",
      required = true,
      paramLabel = "CHART",
      description = "what it was played over: the name of one of our charts, or a file")
  private String chart;

  @Option(
      names = "--key",
      paramLabel = "KEY",
      description = "the key it was played in, where that is not the chart's")
  private Optional<String> key = Optional.empty();

  @Option(
      names = "--idea",
      paramLabel = "NOTES|FILE",
      description =
          "the idea that was given, as notes (\"G4/0.5 A4/0.5 C5 A4 E4/1.5\") or a MIDI file;"
              + " without it the first phrase is the idea")
  private Optional<String> idea = Optional.empty();

  @Option(
      names = "--player",
      paramLabel = "WHO",
      description =
          "keyboard or voice, which is given more room in time and pitch; without it a MIDI file is"
              + " a keyboard's, and a recording its profile's")
  private Optional<String> player = Optional.empty();

  @Option(
      names = "--track",
      paramLabel = "N|NAME",
      description = "the track that holds the player's line; found by itself otherwise")
  private Optional<String> track = Optional.empty();

  @Option(
      names = "--channel",
      paramLabel = "N",
      description = "the channel, 1 to 16, that holds the player's line")
  private Optional<Integer> channel = Optional.empty();

  @Option(
      names = "--starts-at",
      paramLabel = "BEATS",
      description = "where bar 1 starts, in beats from the start of the file")
  private Optional<Double> startsAt = Optional.empty();

  @Option(
      names = "--bar-one",
      paramLabel = "SECONDS",
      description =
          "in a recording, where bar 1 begins, to a quarter of a second; found by itself otherwise")
  private Optional<Double> barOne = Optional.empty();

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description = "in a recording, who sings or plays: ${COMPLETION-CANDIDATES}",
      completionCandidates = ListenCommand.ProfileNames.class)
  private Optional<String> profile = Optional.empty();

  @Option(
      names = "--tempo",
      paramLabel = "BPM",
      description = "in a recording, the tempo of the backing, where that is not the chart's")
  private Optional<Double> tempo = Optional.empty();

  @Option(
      names = "--feel",
      paramLabel = "FEEL",
      description = "in a recording, the feel of the backing, where that is not the chart's")
  private Optional<String> feel = Optional.empty();

  @Option(names = "--json", description = "write the judgement as JSON instead of text")
  private boolean json;

  @Option(
      names = "--report",
      paramLabel = "FILE",
      description =
          "write the report as well: as one HTML page, or by the file's ending as .pdf, as .csv"
              + " (the phrases) or as .musicxml (the solo with its chords and verdicts)")
  private Optional<Path> report = Optional.empty();

  @Option(names = "--hear", description = "let each phrase be heard from the report's page")
  private boolean hear;

  @Option(
      names = "--for",
      paramLabel = "PITCH",
      description = "write the idea for an instrument in Bb, Eb or F")
  private Optional<String> instrument = Optional.empty();

  @Option(
      names = "--clef",
      paramLabel = "CLEF",
      description = "treble, bass or treble8 (sounds an octave lower); by its height otherwise")
  private Optional<String> clef = Optional.empty();

  @Option(
      names = "--why",
      paramLabel = "PHRASE",
      description = "say why this phrase was judged as it was, counted from 1, note by note")
  private Optional<Integer> why = Optional.empty();

  @Option(
      names = "--student",
      paramLabel = "NAME",
      description = "a first name or nickname for the report's head")
  private Optional<String> student = Optional.empty();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    Chart over = inKey(ChartLibrary.open(chart));
    return isMidi() ? judgeMidi(over) : judgeSound(over);
  }

  private int judgeMidi(Chart over) {
    if (barOne.isPresent()) {
      throw new UserMistake("--bar-one is for recordings; in a MIDI file write --starts-at BEATS");
    }
    RecordedTake recorded = MidiTakeFile.read(take);
    LineChoice line = LineChoice.of(recorded, track, channel());
    TakePlacement placement =
        new BarOne(over.metre(), over.tempo()).of(recorded, line.line(), startsAt());
    // The coach thins the part itself, as it does when a keyboard is played live.
    List<PlayedNote> played = line.part().notes();
    Setting setting =
        Setting.of(over, placement.tempo(), player().orElse(Player.KEYBOARD), givenIdea(over));
    List<String> notes = new ArrayList<>(recorded.remarks());
    notes.add(line.reason());
    notes.add(placement.reason());
    return judge(setting, played, notes, Optional.empty(), Optional.empty(), json -> {});
  }

  private int judgeSound(Chart over) {
    if (startsAt.isPresent()) {
      throw new UserMistake(
          "--starts-at is for MIDI files; in a recording write --bar-one SECONDS");
    }
    Profile who = profile.map(Profile::named).orElse(Profile.ANYONE);
    Arrangement arrangement =
        Arrangement.of(
            over,
            feel.map(Feel::parse).orElse(Feel.read(over.feel()).orElse(Feel.PLAIN)),
            tempo.map(BackingOptions::checkedTempo).orElse(over.tempo()),
            Optional.empty(),
            Optional.empty());
    try (EarSound sound = SoundFile.tape(take)) {
      SoundTake heard =
          SoundTake.hear(sound, arrangement, SoundBank.builtIn(), who, barOneSeconds());
      Player plays = player().orElse(who.sings() ? Player.VOICE : Player.UNKNOWN);
      Setting setting = Setting.of(arrangement, heard.beats(), plays, givenIdea(over));
      return judge(
          setting,
          heard.notes(),
          List.of(heard.barOne()),
          Optional.of(new PhraseSounds(sound, 0)),
          report.isPresent() && plays == Player.VOICE
              ? Optional.of(TakeSound.heights(sound))
              : Optional.empty(),
          json -> placed(json, heard));
    }
  }

  private static void placed(ObjectNode json, SoundTake heard) {
    json.put("barOne", heard.barOne());
    json.putObject("placement")
        .put("barOneSeconds", Math.rint(1000 * heard.beats().secondsAt(0)) / 1000)
        .put("stretch", Math.rint(1e6 * heard.stretch()) / 1e6)
        .put("sureness", heard.sureness().name().toLowerCase(java.util.Locale.ROOT))
        .put("backingHeard", heard.backingHeard());
  }

  private OptionalDouble barOneSeconds() {
    if (barOne.isEmpty()) {
      return OptionalDouble.empty();
    }
    double seconds = barOne.get();
    if (!Double.isFinite(seconds) || Math.abs(seconds) > 3 * 3600) {
      throw new UserMistake("--bar-one needs a number of seconds, such as 4.5");
    }
    return OptionalDouble.of(seconds);
  }

  /** Told by how it begins; a file that cannot be read, or is called so, by its name. */
  private boolean isMidi() {
    String name = String.valueOf(take.getFileName()).toLowerCase(java.util.Locale.ROOT);
    if (name.endsWith(".mid") || name.endsWith(".midi")) {
      return true;
    }
    try (InputStream in = Files.newInputStream(take)) {
      return new String(in.readNBytes(4), StandardCharsets.ISO_8859_1).equals("MThd");
    } catch (IOException unreadable) {
      return !name.matches(".*\\.(wav|mp3|ogg|oga|flac|m4a|mp4|aac)");
    }
  }

  private int judge(
      Setting setting,
      List<PlayedNote> played,
      List<String> notes,
      Optional<Listening> recording,
      Optional<PitchTrace> sung,
      Consumer<ObjectNode> moreJson) {
    PrintWriter out = spec.commandLine().getOut();
    JudgedTake judged = json ? silently(setting, played) : aloud(setting, played, notes, out);
    if (json) {
      ObjectNode tree = JudgementJson.tree(judged);
      moreJson.accept(tree);
      out.println(tree.toPrettyString());
    }
    why.ifPresent(number -> tellWhy(setting, judged, number, out));
    Occasion occasion =
        Occasion.UNKNOWN.by(student).remarking(notes).writtenFor(instrument(), clef()).sungAt(sung);
    report.ifPresent(
        file -> {
          write(file, judged, occasion, recording);
          if (!json) {
            out.println();
            out.println("The report is in " + file);
          }
        });
    out.flush();
    return 0;
  }

  private void write(
      Path file, JudgedTake judged, Occasion occasion, Optional<Listening> recording) {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".pdf")) {
      WholeFile.write(file, ReportPdf.of(judged, occasion));
    } else if (name.endsWith(".csv")) {
      WholeFile.write(file, PhrasesCsv.of(judged));
    } else if (name.endsWith(".musicxml")) {
      WholeFile.write(file, MusicXmlMelody.write(SoloSheet.of(judged)));
    } else if (hear && recording.isPresent()) {
      WholeFile.write(file, ReportPage.of(judged, occasion.heardAs(recording.get())));
    } else if (hear) {
      Performance backing = Performance.endless(Arrangement.of(judged.setting().chart()));
      try (RenderedSound sound = RenderedSound.of(judged, backing)) {
        WholeFile.write(file, ReportPage.of(judged, occasion.heardAs(sound)));
      }
    } else {
      WholeFile.write(file, ReportPage.of(judged, occasion));
    }
  }

  private WrittenFor instrument() {
    if (instrument.isEmpty()) {
      return WrittenFor.CONCERT;
    }
    return switch (instrument.get().strip()) {
      case "C" -> WrittenFor.CONCERT;
      case "Bb", "B♭" -> WrittenFor.B_FLAT;
      case "Eb", "E♭" -> WrittenFor.E_FLAT;
      case "F" -> WrittenFor.F;
      default ->
          throw new UserMistake(
              "--for " + instrument.get() + ": no instrument has this pitch; say Bb, Eb or F");
    };
  }

  private Optional<Clef> clef() {
    return clef.map(
        word ->
            switch (word.strip().toLowerCase(Locale.ROOT)) {
              case "treble" -> Clef.TREBLE;
              case "bass" -> Clef.BASS;
              case "treble8" -> Clef.TREBLE_OCTAVE_BELOW;
              default ->
                  throw new UserMistake(
                      "--clef " + word + " is unknown; write treble, bass or treble8");
            });
  }

  private static JudgedTake silently(Setting setting, List<PlayedNote> played) {
    Consumer<JudgedPhrase> nobody = phrase -> {};
    return Coach.judge(setting, played, nobody);
  }

  private static JudgedTake aloud(
      Setting setting, List<PlayedNote> played, List<String> notes, PrintWriter out) {
    JudgementText text = new JudgementText(setting);
    notes.forEach(out::println);
    JudgedTake judged = Coach.judge(setting, played, text.to(out::println));
    text.close(judged).forEach(out::println);
    return judged;
  }

  private static void tellWhy(Setting setting, JudgedTake judged, int number, PrintWriter out) {
    if (number < 1 || number > judged.phrases().size()) {
      throw new UserMistake(
          "--why " + number + ": the take has phrases 1 to " + judged.phrases().size());
    }
    out.println();
    new JudgementText(setting).why(judged.phrases().get(number - 1)).forEach(out::println);
  }

  private Chart inKey(Chart original) {
    if (key.isEmpty()) {
      return original;
    }
    try {
      return Transposition.to(original, Key.parse(key.get()).tonic());
    } catch (IllegalArgumentException e) {
      throw new UserMistake(
          "--key " + key.get() + " is no key; write a note name such as Eb, F# or C", e);
    }
  }

  private Optional<Player> player() {
    return player.map(
        who ->
            switch (who.strip().toLowerCase(Locale.ROOT)) {
              case "keyboard" -> Player.KEYBOARD;
              case "voice" -> Player.VOICE;
              default ->
                  throw new UserMistake("--player " + who + " is unknown; write keyboard or voice");
            });
  }

  private OptionalInt channel() {
    if (channel.isEmpty()) {
      return OptionalInt.empty();
    }
    int number = channel.get();
    if (number < 1 || number > 16) {
      throw new UserMistake("--channel " + number + " does not exist; channels are 1 to 16");
    }
    return OptionalInt.of(number);
  }

  private OptionalDouble startsAt() {
    if (startsAt.isEmpty()) {
      return OptionalDouble.empty();
    }
    double beats = startsAt.get();
    if (!Double.isFinite(beats)) {
      throw new UserMistake("--starts-at needs a number of beats, such as 8 or 3.5");
    }
    return OptionalDouble.of(beats);
  }

  private Optional<Motif> givenIdea(Chart over) {
    if (idea.isEmpty()) {
      return Optional.empty();
    }
    List<Note> notes = GivenIdea.read(idea.get(), over.metre(), over.tempo());
    return Optional.of(Motif.over(over.changes().at(0).harmony(), notes));
  }
}
