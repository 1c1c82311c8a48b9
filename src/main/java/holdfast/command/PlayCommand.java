package holdfast.command;

import holdfast.backing.Performance;
import holdfast.backing.PlayerVoice;
import holdfast.backing.SoundPlayer;
import holdfast.backing.sound.SoundChoice;
import holdfast.book.Book;
import holdfast.book.KeptTake;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.command.live.Key;
import holdfast.command.live.LiveScreen;
import holdfast.listening.NoteSource;
import holdfast.listening.keyboard.Keyboard;
import holdfast.listening.keyboard.SoundedKeyboard;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.report.JudgementText;
import holdfast.session.DemoPlayer;
import holdfast.session.DemoTake;
import holdfast.session.Feedback;
import holdfast.session.JudgedTake;
import holdfast.session.LiveTake;
import holdfast.session.Setting;
import java.io.IOException;
import java.io.PrintWriter;
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
      "Everything you play is kept in a file at once, also if the power fails."
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

  @Option(names = "--inputs", description = "list the MIDI inputs and leave")
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

  @Override
  public Integer call() throws InterruptedException, IOException {
    PrintWriter out = spec.commandLine().getOut();
    if (listInputs) {
      inputs().forEach(out::println);
      return 0;
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
        backing.performance(over, OptionalInt.of(demo ? DemoTake.CHORUSES : USUAL_CHORUSES));
    Optional<Motif> given = givenIdea(performance);
    if (demo) {
      DemoPlayer player = DemoPlayer.over(performance);
      play(performance, player.heardIn(performance), band -> player, given, out);
    } else {
      Keyboard keyboard = keyboard(over.title());
      play(performance, performance, band -> sounding(keyboard, band), given, out);
    }
    return 0;
  }

  private NoteSource sounding(Keyboard keyboard, SoundPlayer band) {
    return soundMe ? new SoundedKeyboard(keyboard, new PlayerVoice(band.out())) : keyboard;
  }

  /**
   * A take, from the first count to its report.
   *
   * @param kept the performance as the take's file keeps it, beside what the player plays
   * @param heard the performance as it sounds
   * @param whoPlays who is listened to, once the sound is on
   */
  private void play(
      Performance kept,
      Performance heard,
      Function<SoundPlayer, NoteSource> whoPlays,
      Optional<Motif> given,
      PrintWriter out)
      throws InterruptedException, IOException {
    Chart tune = kept.arrangement().chart();
    Setting setting = Setting.of(kept.arrangement(), kept.tempoMap(), Player.KEYBOARD, given);
    int buffer = soundMe ? SoundChoice.QUICK_BUFFER_MILLIS : SoundChoice.SAFE_BUFFER_MILLIS;
    try (SoundPlayer band = SoundPlayer.open(sound.choice(buffer));
        LiveScreen screen = LiveScreen.open(out)) {
      NoteSource source = whoPlays.apply(band);
      screen.say(SoundChoice.HEARING);
      band.trouble().ifPresent(screen::say);
      screen.say("I listen to " + source.name() + ".");
      if (screen.hasKeys()) {
        screen.say(Key.help());
      }
      screen.say("");
      try (KeptTake keeper = KeptTake.begin(setting, kept, source, student)) {
        TerminalAudience audience = new TerminalAudience(screen, tell, setting);
        LiveTake take = new LiveTake(tune, Player.KEYBOARD, given, audience, keeper);
        JudgedTake judged = take.play(band, heard, source);
        tellTheRest(screen, audience, setting, judged);
        screen.say("");
        keeper.finish(judged, student).forEach(screen::say);
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
    List<String> names = Keyboard.all().stream().map(Keyboard::name).toList();
    return names.isEmpty() ? List.of("There is no MIDI input at this moment.") : names;
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
