package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Whoever asks for help gets it, about everything that can be typed. */
class HelpTest {

  /** Every command with those under it; the words that lead to it are its qualified name. */
  private static List<CommandSpec> all(CommandLine from) {
    List<CommandSpec> found = new ArrayList<>();
    found.add(from.getCommandSpec());
    from.getSubcommands().values().stream().distinct().forEach(sub -> found.addAll(all(sub)));
    return found;
  }

  private static void assertSaysSomething(String[] description, String what) {
    String said = String.join(" ", description).strip();
    assertTrue(said.split(" ", -1).length >= 2, what + " says only \"" + said + "\"");
    assertTrue(!said.contains("TODO") && !said.contains("null"), what + ": " + said);
  }

  @Test
  void every_command_option_and_argument_is_described_in_words() {
    List<CommandSpec> commands = all(Main.commandLine());
    assertTrue(commands.size() > 20, commands.size() + " commands");
    for (CommandSpec command : commands) {
      assertSaysSomething(command.usageMessage().description(), command.qualifiedName());
      List<ArgSpec> arguments = new ArrayList<>(command.options());
      arguments.addAll(command.positionalParameters());
      for (ArgSpec argument : arguments) {
        if (!argument.hidden()) {
          assertSaysSomething(
              argument.description(), command.qualifiedName() + " " + argument.paramLabel());
        }
      }
    }
  }

  @Test
  void every_command_tells_its_use_when_asked_by_the_option_or_by_the_word() {
    for (CommandSpec command : all(Main.commandLine())) {
      List<String> words = new ArrayList<>(List.of(command.qualifiedName().split(" ", -1)));
      words.remove(0);
      if (words.equals(List.of("help"))) {
        continue;
      }
      List<String> byOption = new ArrayList<>(words);
      byOption.add("--help");
      Terminal asked = Terminal.run(byOption.toArray(new String[0]));
      assertEquals(0, asked.exitCode(), command.qualifiedName() + ": " + asked.err());
      assertTrue(asked.out().contains("Usage: " + command.qualifiedName()), asked.out());
      for (OptionSpec option : command.options()) {
        assertTrue(asked.out().contains(option.longestName()), "what is accepted is listed");
      }
      if (words.size() == 1) {
        Terminal helped = Terminal.run("help", words.get(0));
        assertEquals(asked.out(), helped.out(), "help " + words.get(0));
      }
    }
  }
}
