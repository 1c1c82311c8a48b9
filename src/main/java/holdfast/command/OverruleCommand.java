package holdfast.command;

import holdfast.book.Book;
import holdfast.mistake.UserMistake;
import holdfast.motif.Family;
import holdfast.motif.Treatment;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Overruling;
import java.io.PrintWriter;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lets a teacher say what a phrase of a kept take was. */
@Command(
    name = "overrule",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Say as a teacher what a phrase was: your word is kept with the take, and its counts and its"
          + " report follow.",
      ""
    },
    footer = {
      "",
      "Example: holdfast overrule 2026-11-25_10-15-00_paper-boats 6 --as varied"
          + " --words \"it comes back upside down\""
    })
final class OverruleCommand implements Callable<Integer> {

  @Parameters(
      index = "0",
      paramLabel = "TAKE",
      description = "the take, as `holdfast book` names it")
  private String take = "";

  @Parameters(index = "1", paramLabel = "PHRASE", description = "which phrase, counted from 1")
  private int number;

  @Option(
      names = "--as",
      required = true,
      paramLabel = "WHAT",
      description = "restated, varied or new; or a treatment, such as sequence, inverted, fragment")
  private String what = "";

  @Option(names = "--words", paramLabel = "TEXT", description = "what the student should read")
  private Optional<String> words = Optional.empty();

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    try (Book book = Book.open()) {
      JudgedTake judged = book.take(take).judged();
      if (number < 1 || number > judged.phrases().size()) {
        throw new UserMistake(
            "phrase " + number + ": the take has phrases 1 to " + judged.phrases().size());
      }
      JudgedPhrase phrase = judged.phrases().get(number - 1);
      if (phrase.statesTheIdea()) {
        throw new UserMistake(
            "phrase " + number + " is the idea that the others are held against; name another");
      }
      book.overrule(take, ruling(phrase));
      PrintWriter out = spec.commandLine().getOut();
      out.println("Phrase " + number + " counts as " + what.strip() + " from now on.");
      out.println("The report is in " + book.take(take).report());
      out.flush();
      book.complete(take);
    }
    return 0;
  }

  private Overruling ruling(JudgedPhrase phrase) {
    String wanted = what.strip().toLowerCase(Locale.ROOT);
    Optional<Family> family =
        Arrays.stream(Family.values()).filter(f -> f.word().equals(wanted)).findFirst();
    if (family.isPresent()) {
      return Overruling.of(phrase, family.get(), words);
    }
    return Arrays.stream(Treatment.values())
        .filter(t -> t.word().equals(wanted))
        .findFirst()
        .map(treatment -> Overruling.of(phrase, treatment, words))
        .orElseThrow(
            () ->
                new UserMistake(
                    "--as "
                        + what
                        + " is unknown; write restated, varied, new, or one of "
                        + Arrays.stream(Treatment.values())
                            .filter(t -> t != Treatment.NEW)
                            .map(Treatment::word)
                            .collect(Collectors.joining(", "))));
  }
}
