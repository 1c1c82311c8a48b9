package holdfast.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** Whoever asks for help gets it, about everything that can be typed. */
class HelpTest {

  /** Every command with those under it; the words that lead to it are its qualified name. */
  private static List<CommandSpec> all(CommandLine from) {
    List<CommandSpec> found = new ArrayList<>();
    found.add(from.getCommandSpec());
    from.getSubcommands().values().stream().distinct().forEach(sub -> found.addAll(all(sub)));
    return found;
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
      if (words.size() == 1) {
        Terminal helped = Terminal.run("help", words.get(0));
        assertEquals(asked.out(), helped.out(), "help " + words.get(0));
      }
    }
  }
}
