package holdfast.command;

import holdfast.backing.Performance;
import holdfast.backing.PitchRange;
import holdfast.backing.PlayerVoice;
import holdfast.backing.SoundPlayer;
import holdfast.backing.sound.SoundChoice;
import holdfast.book.Book;
import holdfast.book.KeptTake;
import holdfast.book.TakeFolder;
import holdfast.book.TakeSettings;
import holdfast.book.UserFolder;
import holdfast.book.assignment.Answer;
import holdfast.book.assignment.Assignment;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.command.live.Key;
import holdfast.command.live.LiveScreen;
import holdfast.listening.NoteSource;
import holdfast.listening.calibration.Profile;
import holdfast.listening.keyboard.Keyboard;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.practice.Exercise;
import holdfast.practice.Lesson;
import holdfast.practice.Plan;
import holdfast.practice.Way;
import holdfast.practice.WrittenIdea;
import holdfast.report.JudgementText;
import holdfast.report.PlanText;
import holdfast.session.DemoPlayer;
import holdfast.session.DemoTake;
import holdfast.session.Feedback;
import holdfast.session.JudgedTake;
import holdfast.session.LiveTake;
import holdfast.session.Setting;
import holdfast.session.input.InputChoice;
import holdfast.session.input.Inputs;
import holdfast.session.input.KeyboardInput;
import holdfast.session.input.MicrophoneInput;
import holdfast.session.input.ReadyInput;
import holdfast.session.input.Surroundings;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Plays a backing, listens, and says what it heard. */
@Command(
    name = "play",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Play over slow changes and be heard: after a count-in the chords go round, you carry your"
          + " idea through them, and after each phrase I say what I heard.",
      ""
    },
    footer = {
      "",
      "While it plays: space stops, i takes a new idea, h hides what I say, l loops these bars.",
      "Everything you play is kept in a file at once, also if the power fails.",
      "What a microphone hears is kept as sound beside it, on this machine only."
    })
final class PlayCommand implements Callable<Integer> {

  private static final int USUAL_CHORUSES = 3;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "CHART",
      description = "one of our charts, or a file")
  private Optional<String> chart = Optional.empty();

  @Option(
      names = "--input",
      paramLabel = "NAME",
      description = "listen to the MIDI input whose name holds this; the first one without it")
  private Optional<String> input = Optional.empty();

  @Option(
      names = "--microphone",
      arity = "0..1",
      fallbackValue = "",
      paramLabel = "NAME",
      description =
          "listen to what I sing or play into the microphone whose name holds this; into the"
              + " system's own without a name")
  private Optional<String> microphone = Optional.empty();

  @Option(
      names = "--profile",
      paramLabel = "NAME",
      description =
          "who sings or plays into the microphone: child-voice, voice, low-voice, trumpet, flute"
              + " … (`holdfast listen --help` names them all)")
  private Optional<String> profile = Optional.empty();

  @Option(
      names = "--headphones",
      description = "I wear headphones, so the microphone does not hear the backing")
  private boolean headphones;

  @Option(names = "--inputs", description = "list the MIDI inputs and the microphones, and leave")
  private boolean listInputs;

  @Option(names = "--demo", description = "let the demo student play two choruses")
  private boolean demo;

  @Option(
      names = "--sound-me",
      description =
          "sound my keyboard, too; for keyboards that make no sound themselves. The sound is made"
              + " quickly and may crackle on a busy machine.")
  private boolean soundMe;

  @Option(
      names = "--idea",
      paramLabel = "NOTES|FILE",
      description = "the idea to carry; without it your first phrase is the idea")
  private Optional<String> idea = Optional.empty();

  @Option(
      names = "--tell",
      paramLabel = "WHEN",
      description =
          "how often I speak: phrase, chorus (every other one; the default) or end. Being told"
              + " less while playing teaches more.")
  private Feedback tell = Feedback.CHORUS;

  @Option(
      names = "--student",
      paramLabel = "NAME",
      description = "a first name or nickname for the report")
  private Optional<String> student = Optional.empty();

  @Mixin private BackingOptions backing = new BackingOptions();

  @Mixin private SoundOptions sound = new SoundOptions();

  @Spec private CommandSpec spec;

  private Optional<Assignment> task = Optional.empty();

  @Override
  public Integer call() throws InterruptedException, IOException {
    PrintWriter out = spec.commandLine().getOut();
    if (listInputs) {
      inputs().forEach(out::println);
      return 0;
    }
    chartAfterMicrophone();
    Optional<Path> asked = chart.flatMap(PlayCommand::assignment);
    if (asked.isPresent()) {
      return answer(asked.get(), out);
    }
    Chart over =
        ChartLibrary.open(
            chart.orElseThrow(
                () ->
                    new UserMistake(
                        "name a chart, such as \"Paper Boats\"; `holdfast charts` lists them")));
    try (Book book = Book.open()) {
      book.said().forEach(out::println);
    }
    Performance performance =
        backing.performance(
            over, OptionalInt.of(demo ? DemoTake.CHORUSES : USUAL_CHORUSES), singersRange());
    Optional<Motif> given = givenIdea(performance);
    if (demo) {
      DemoPlayer player = DemoPlayer.over(performance);
      ReadyInput ready = new ReadyInput(player, Player.KEYBOARD, Optional.empty(), List.of());
      play(performance, player.heardIn(performance), band -> ready, given, out);
    } else {
      InputChoice choice = inputFor(over.title());
      play(performance, performance, band -> choice.in(around(band)), given, out);
    }
    return 0;
  }

  private static Optional<Path> assignment(String name) {
    try {
      return Optional.of(Path.of(name)).filter(Assignment::isOne);
    } catch (InvalidPathException noPath) {
      return Optional.empty();
    }
  }

  /** Plays what a teacher asked for, and packs the take to be sent back. */
  private int answer(Path file, PrintWriter out) throws InterruptedException, IOException {
    List<String> settled = backing.settledByAnAssignment();
    idea.ifPresent(given -> settled.add("--idea"));
    if (!settled.isEmpty()) {
      throw new UserMistake(
          "your teacher's assignment says this already, so leave out "
              + String.join(", ", settled));
    }
    Assignment asked = Assignment.read(file);
    AssignmentCommand.tellTask(asked, out);
    try (Book book = Book.open()) {
      book.said().forEach(out::println);
    }
    task = Optional.of(asked);
    chart = Optional.of(asked.chart().title());
    Performance performance = backing.within(asked.performance(), singersRange());
    Optional<Motif> given =
        asked
            .idea()
            .map(notes -> Motif.over(performance.arrangement().changes().at(0).harmony(), notes));
    TakeFolder played;
    if (asked.way().isPresent() && !demo) {
      InputChoice choice = inputFor(asked.chart().title());
      KeptTake kept =
          new LessonTaken(
                  lesson(asked, asked.way().get(), performance),
                  asked.chart().title(),
                  Optional.empty(),
                  student,
                  Optional.of(asked.number()))
              .play(sound.choice(buffer()), band -> choice.in(around(band)), tell, out);
      Completing.of(kept, out);
      played = kept.folder();
    } else if (demo) {
      DemoPlayer player = DemoPlayer.over(performance);
      ReadyInput ready = new ReadyInput(player, Player.KEYBOARD, Optional.empty(), List.of());
      played = play(performance, player.heardIn(performance), band -> ready, given, out);
    } else {
      InputChoice choice = inputFor(asked.chart().title());
      played = play(performance, performance, band -> choice.in(around(band)), given, out);
    }
    Path answer = Answer.beside(file, student);
    Answer.pack(played, answer, false);
    out.println("Send this file back: " + answer);
    out.flush();
    return 0;
  }

  /** What is asked for, as a lesson; a climb begins slower and means to arrive at the tempo. */
  private Lesson lesson(Assignment asked, Way way, Performance performance) {
    Exercise exercise =
        new Exercise(
            way,
            asked.chart(),
            asked.feel(),
            Exercise.startingTempo(way, asked.beatsPerMinute()),
            Optional.empty(),
            backing
                .range()
                .or(this::singersRange)
                .map(r -> new holdfast.carry.PitchRange(r.lowest(), r.highest()))
                .orElse(holdfast.carry.PitchRange.ANY),
            asked.idea().map(notes -> WrittenIdea.ofGiven(notes, asked.chart().metre())),
            1,
            OptionalInt.of(asked.choruses()));
    return Lesson.of(exercise, Instant.now().getEpochSecond())
        .playedWith(performance.countInBars(), performance.muted());
  }

  /** {@code --microphone} takes a name or none, so a chart that follows it looks like its name. */
  private void chartAfterMicrophone() {
    if (chart.isEmpty() && microphone.filter(name -> !name.isEmpty()).isPresent()) {
      chart = microphone;
      microphone = Optional.of("");
    }
  }

  /** The chords keep out of the way of whoever sings or plays into a microphone. */
  private Optional<PitchRange> singersRange() {
    return microphone
        .flatMap(name -> profile)
        .map(Profile::named)
        .map(who -> new PitchRange(who.lowest(), who.highest()));
  }

  private int buffer() {
    return soundMe ? SoundChoice.QUICK_BUFFER_MILLIS : SoundChoice.SAFE_BUFFER_MILLIS;
  }

  private InputChoice inputFor(String title) {
    return microphone
        .<InputChoice>map(Inputs::microphone)
        .orElseGet(() -> new KeyboardInput(keyboard(title)));
  }

  private Surroundings around(SoundPlayer band) {
    Surroundings around =
        Surroundings.of(band, UserFolder.path().resolve(MicrophoneInput.CALIBRATIONS))
            .withHeadphones(headphones);
    if (profile.isPresent()) {
      around = around.with(Profile.named(profile.get()));
    }
    return soundMe ? around.sounding(new PlayerVoice(band.out())) : around;
  }

  /**
   * A take, from the first count to its report.
   *
   * @param kept the performance as the take's file keeps it, beside what the player plays
   * @param heard the performance as it sounds
   * @param whoPlays who is listened to, once the sound is on
   */
  private TakeFolder play(
      Performance kept,
      Performance heard,
      Function<SoundPlayer, ReadyInput> whoPlays,
      Optional<Motif> given,
      PrintWriter out)
      throws InterruptedException, IOException {
    KeptTake finished = playAndTell(kept, heard, whoPlays, given, out);
    Completing.of(finished, out);
    return finished.folder();
  }

  private KeptTake playAndTell(
      Performance kept,
      Performance heard,
      Function<SoundPlayer, ReadyInput> whoPlays,
      Optional<Motif> given,
      PrintWriter out)
      throws InterruptedException, IOException {
    Chart tune = kept.arrangement().chart();
    try (SoundPlayer band = SoundPlayer.open(sound.choice(buffer()));
        LiveScreen screen = LiveScreen.open(out)) {
      ReadyInput ready = whoPlays.apply(band);
      NoteSource source = ready.source();
      Setting setting = Setting.of(kept.arrangement(), kept.tempoMap(), ready.player(), given);
      screen.say(SoundChoice.HEARING);
      ready.remarks().forEach(screen::say);
      band.trouble().ifPresent(screen::say);
      screen.say("I listen to " + source.name() + ".");
      if (screen.hasKeys()) {
        screen.say(Key.help());
      }
      screen.say("");
      TakeSettings settings =
          TakeSettings.of(
                  LocalDateTime.now(ZoneId.systemDefault()), setting, kept, source.name(), student)
              .answering(task.map(Assignment::number));
      try (KeptTake keeper = KeptTake.begin(KeptTake.takes(), settings, kept)) {
        TerminalAudience audience = new TerminalAudience(screen, tell, setting);
        LiveTake take = new LiveTake(tune, ready.player(), given, audience, keeper);
        JudgedTake judged = take.play(band, heard, source.keepingSoundIn(keeper.recording()));
        tellTheRest(screen, audience, setting, judged);
        screen.say("");
        Plan plan = Plan.after(judged, chart.orElse(tune.title()), backing.key());
        keeper.finish(judged, kept, student, Optional.of(plan)).forEach(screen::say);
        screen.say("");
        PlanText.of(plan).forEach(screen::say);
        return keeper;
      }
    }
  }

  private static void tellTheRest(
      LiveScreen screen, TerminalAudience audience, Setting setting, JudgedTake judged) {
    if (!audience.heldBack().isEmpty()) {
      screen.say("");
      screen.say("What I kept to myself:");
      audience.heldBack().forEach(screen::say);
    }
    new JudgementText(setting).close(judged).forEach(screen::say);
  }

  private Keyboard keyboard(String title) {
    if (input.isPresent()) {
      return Keyboard.named(input.get());
    }
    return Keyboard.all().stream()
        .findFirst()
        .orElseThrow(
            () ->
                new UserMistake(
                    "there is no MIDI input; plug a keyboard in, or let the demo student play:"
                        + " holdfast play \""
                        + title
                        + "\" --demo"));
  }

  private static List<String> inputs() {
    List<String> said =
        new ArrayList<>(Inputs.keyboards().stream().map(InputChoice::name).toList());
    if (said.isEmpty()) {
      said.add("There is no MIDI input at this moment.");
    }
    Inputs.microphones().forEach(m -> said.add(m.name() + " (--microphone)"));
    return said;
  }

  private Optional<Motif> givenIdea(Performance performance) {
    if (idea.isEmpty()) {
      return Optional.empty();
    }
    Chart chart = performance.arrangement().chart();
    List<Note> notes = GivenIdea.read(idea.get(), chart.metre(), chart.tempo());
    return Optional.of(Motif.over(performance.arrangement().changes().at(0).harmony(), notes));
  }
}
