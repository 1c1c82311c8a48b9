package holdfast.command;

import holdfast.backing.Performance;
import holdfast.backing.SoundPlayer;
import holdfast.backing.sound.SoundChoice;
import holdfast.book.Book;
import holdfast.book.KeptTake;
import holdfast.book.TakeSettings;
import holdfast.command.live.LiveScreen;
import holdfast.disk.WholeFile;
import holdfast.harmony.ToneName;
import holdfast.listening.NoteSource;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.invent.Invented;
import holdfast.practice.invent.InventingAudience;
import holdfast.practice.invent.InventingTake;
import holdfast.practice.invent.Invention;
import holdfast.practice.invent.Starter;
import holdfast.practice.invent.Vamp;
import holdfast.report.RhythmWords;
import holdfast.session.Feedback;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Moment;
import holdfast.session.Setting;
import holdfast.session.input.InputChoice;
import holdfast.session.input.ReadyInput;
import holdfast.theory.NoChord;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A chord or two sound, and the player finds idea after idea. */
@Command(
    name = "invent",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Invent ideas: a chord or two go round, you play or sing one small idea after another, with"
          + " a rest between them. I keep each and tell which are really new.",
      ""
    },
    footer = {
      "",
      "For instance:",
      "  holdfast invent Dm7 --minutes 2",
      "  holdfast invent Cmaj7 Am7 --microphone --profile voice",
      "While it plays: space stops, i gives you something to start from.",
      "Afterwards: holdfast practise head-start lantern-turn --invented 2"
    })
final class InventCommand implements Callable<Integer> {

  @Parameters(arity = "0..2", paramLabel = "CHORD", description = "One chord or two: Dm7 G7.")
  private List<String> chords = List.of();

  @Option(
      names = "--minutes",
      paramLabel = "N",
      description = "How long, 0.1 to 20 minutes (3 without it).")
  private double minutes = 3;

  @Option(
      names = "--tempo",
      paramLabel = "BPM",
      description = "Beats a minute, 30 to 240 (66 without it).")
  private double tempo = Vamp.USUAL_TEMPO;

  @Option(
      names = "--so-far",
      description =
          "List the inventing sessions so far, or those of --student, with how many different"
              + " ideas each had.")
  private boolean soFar;

  @Option(
      names = "--student",
      paramLabel = "NAME",
      description = "A first name or nickname for the take.")
  private Optional<String> student = Optional.empty();

  @Mixin private InputOptions input = new InputOptions();

  @Mixin private SoundOptions sound = new SoundOptions();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException, IOException {
    PrintWriter out = spec.commandLine().getOut();
    if (soFar) {
      soFar(student, out);
      return 0;
    }
    Performance performance = performance();
    InputChoice choice = input.choice();
    try (Book book = Book.open()) {
      book.said().forEach(out::println);
    }
    Completing.of(play(performance, choice, out), out);
    return 0;
  }

  private static void soFar(Optional<String> student, PrintWriter out) {
    Map<Path, Invented> sessions = InventedFiles.all(KeptTake.takes(), student);
    if (sessions.isEmpty()) {
      out.println("Nothing was invented yet; `holdfast invent Dm7` begins.");
    }
    sessions.forEach(
        (file, session) -> {
          String when = file.getParent().getFileName().toString();
          out.printf(
              Locale.ROOT,
              "%s  %-14s %4.1f min  %2d different of %2d  %s%n",
              when.substring(0, Math.min(10, when.length())),
              String.join(" ", session.chords()),
              session.minutes(),
              session.different(),
              session.said(),
              "▪".repeat(session.different()));
        });
    out.flush();
  }

  private Performance performance() {
    if (!(minutes >= Vamp.SHORTEST_MINUTES && minutes <= Vamp.LONGEST_MINUTES)) {
      throw new UserMistake("--minutes takes 0.1 to 20, not " + minutes);
    }
    return new Vamp(chords, minutes, BackingOptions.checkedTempo(tempo))
        .performance(input.singersRange());
  }

  private KeptTake play(Performance performance, InputChoice choice, PrintWriter out)
      throws InterruptedException, IOException {
    int buffer =
        input.soundsMe() ? SoundChoice.QUICK_BUFFER_MILLIS : SoundChoice.SAFE_BUFFER_MILLIS;
    try (SoundPlayer band = SoundPlayer.open(sound.choice(buffer));
        LiveScreen screen = LiveScreen.open(out)) {
      ReadyInput ready = choice.in(input.around(band));
      NoteSource source = ready.source();
      Setting setting =
          Setting.of(
              performance.arrangement(), performance.tempoMap(), ready.player(), Optional.empty());
      screen.say("Play one small idea after another, and rest between them.");
      ready.remarks().forEach(screen::say);
      band.trouble().ifPresent(screen::say);
      screen.say("I listen to " + source.name() + ".");
      if (screen.hasKeys()) {
        screen.say("keys: space stops, i gives you something to start from");
      }
      screen.say("");
      TakeSettings settings =
          TakeSettings.of(
                  LocalDateTime.now(ZoneId.systemDefault()),
                  setting,
                  performance,
                  source.name(),
                  student)
              .practisedBy(Optional.of(Invented.WAY));
      try (KeptTake keeper = KeptTake.begin(KeptTake.takes(), settings, performance)) {
        TerminalAudience silent = new TerminalAudience(screen, Feedback.END, setting);
        InventingTake take =
            new InventingTake(
                performance,
                ready.player(),
                new Shown(screen, silent),
                keeper,
                Instant.now().getEpochSecond());
        JudgedTake judged = take.play(band, source.keepingSoundIn(keeper.recording()));
        WholeFile.write(
            keeper.folder().path().resolve(Invented.FILE),
            Invented.json(take.inventing(), chords, judged));
        List<String> kept = keeper.finish(judged, student);
        tell(screen, Invented.read(keeper.folder().path().resolve(Invented.FILE)));
        kept.forEach(screen::say);
        return keeper;
      }
    }
  }

  private static void tell(LiveScreen screen, Invented session) {
    screen.say("");
    screen.say(
        session.different() == 1
            ? "One idea, said " + session.said() + " times."
            : session.different() + " different ideas, of " + session.said() + ".");
    session
        .ideas()
        .forEach(
            (number, notes) ->
                screen.say(
                    "  " + number + ". " + names(notes) + "   (" + RhythmWords.of(notes) + ")"));
    if (!session.ideas().isEmpty()) {
      screen.say("Carry one through a tune:");
      screen.say(
          "  holdfast practise head-start lantern-turn --invented " + session.ideas().lastKey());
    }
    screen.say("");
  }

  private static String names(List<Note> notes) {
    return notes.stream()
        .map(note -> ToneName.shown(note.pitch(), NoChord.SILENT, Optional.empty()))
        .collect(Collectors.joining(" "));
  }

  /** The session in the terminal. */
  private record Shown(LiveScreen screen, TerminalAudience audience) implements InventingAudience {

    @Override
    public void invented(Invention idea) {
      screen.say(idea.sentence() + "   " + names(idea.notes()));
    }

    @Override
    public void starter(Starter starter) {
      screen.say("     " + starter.sentence());
    }

    @Override
    public void moment(Moment moment) {
      audience.moment(moment);
    }

    @Override
    public void phrase(JudgedPhrase phrase) {
      // What is said of an idea is said when it is told.
    }

    @Override
    public void notice(String sentence) {
      audience.notice(sentence);
    }

    @Override
    public Optional<Wish> wish() {
      return audience.wish();
    }
  }
}
