package holdfast.command;

import holdfast.book.UserFolder;
import holdfast.book.assignment.Assignment;
import holdfast.mistake.UserMistake;
import holdfast.window.MainWindow;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command that all others hang on. */
@Command(
    name = "holdfast",
    mixinStandardHelpOptions = true,
    version = "Holdfast 0.1",
    synopsisSubcommandLabel = "COMMAND",
    description =
        "A listening coach for people who learn to improvise by carrying one small idea"
            + " through the chords of a tune.",
    subcommands = {
      DemoCommand.class,
      PlayCommand.class,
      PractiseCommand.class,
      InventCommand.class,
      JudgeCommand.class,
      NextCommand.class,
      BookCommand.class,
      OverruleCommand.class,
      AssignmentCommand.class,
      ClassCommand.class,
      ChartsCommand.class,
      BackingCommand.class,
      ListenCommand.class,
      CalibrateCommand.class,
      CompareCommand.class,
      PhrasesCommand.class,
      FitCommand.class,
      BenchCommand.class,
      CommandLine.HelpCommand.class,
    })
final class Holdfast implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE.carry",
      description = "An assignment: shown in the window, or played here where there is none.")
  private Optional<Path> task = Optional.empty();

  @Override
  public Integer call() throws InterruptedException {
    if (task.isPresent()) {
      return answer(task.get());
    }
    if (MainWindow.canOpen()) {
      MainWindow.run(UserFolder.path());
      return 0;
    }
    return spec.commandLine().getSubcommands().get("demo").execute();
  }

  private int answer(Path file) throws InterruptedException {
    if (!Assignment.isOne(file)) {
      throw new UserMistake("there is no command \"" + file + "\"; `holdfast help` lists them");
    }
    if (MainWindow.canOpen()) {
      MainWindow.run(UserFolder.path(), file);
      return 0;
    }
    return spec.commandLine().getSubcommands().get("play").execute(file.toString());
  }
}
