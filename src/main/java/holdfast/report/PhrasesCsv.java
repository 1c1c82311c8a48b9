package holdfast.report;

import holdfast.harmony.Fit;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The phrases of a take as a table for spreadsheets: comma-separated values with a head line, as
 * RFC 4180 wants them, in UTF-8.
 */
public final class PhrasesCsv {

  private static final List<String> HEAD =
      List.of(
          "phrase",
          "chorus",
          "bar",
          "start seconds",
          "start beat",
          "end beat",
          "chords",
          "family",
          "treatment",
          "words",
          "transposition semitones",
          "confidence",
          "fit",
          "fit word",
          "notes",
          "roles",
          "overruled by teacher",
          "why");

  private PhrasesCsv() {}

  /** The whole table. */
  public static String of(JudgedTake take) {
    StringBuilder table = new StringBuilder(line(HEAD));
    for (JudgedPhrase phrase : take.phrases()) {
      table.append(line(row(phrase)));
    }
    return table.toString();
  }

  private static List<String> row(JudgedPhrase phrase) {
    boolean isIdea = phrase.statesTheIdea();
    return List.of(
        Integer.toString(phrase.index() + 1),
        Integer.toString(phrase.place().chorus()),
        Integer.toString(phrase.place().bar()),
        number(phrase.startSeconds()),
        number(phrase.startBeat()),
        number(phrase.endBeat()),
        phrase.chords().stream()
            .map(span -> span.harmony().text())
            .collect(Collectors.joining(" ")),
        isIdea ? "the idea" : phrase.verdict().family().word(),
        isIdea ? "" : phrase.verdict().treatment().word(),
        isIdea ? "the idea" : TreatmentWords.of(phrase),
        Integer.toString(phrase.verdict().transposition()),
        isIdea ? "" : number(phrase.verdict().confidence()),
        phrase.harmony().fit().map(Fit::score).map(PhrasesCsv::number).orElse(""),
        phrase.harmony().fit().map(fit -> fit.word().text()).orElse("no chord"),
        phrase.notes().stream()
            .map(n -> Integer.toString(n.pitch()))
            .collect(Collectors.joining(" ")),
        phrase.harmony().roleTexts().stream().collect(Collectors.joining("; ")),
        phrase.overruled().isPresent() ? "yes" : "no",
        isIdea ? "" : String.join(" ", OverrulingWords.why(phrase)));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }

  private static String line(List<String> fields) {
    return fields.stream().map(PhrasesCsv::quoted).collect(Collectors.joining(",")) + "\r\n";
  }

  private static String quoted(String field) {
    // A spreadsheet takes text that begins so for a formula; ours never means one.
    boolean looksLikeFormula =
        (!field.isEmpty() && "=+@\t".indexOf(field.charAt(0)) >= 0)
            || (field.startsWith("-") && !field.matches("-[0-9.]+"));
    String text = looksLikeFormula ? "'" + field : field;
    return text.matches("(?s).*[\",\r\n].*") ? "\"" + text.replace("\"", "\"\"") + "\"" : text;
  }
}
