package holdfast.report;

import holdfast.chart.Bar;
import holdfast.chart.ChordSpan;
import holdfast.harmony.Fit;
import holdfast.motif.Motif;
import holdfast.session.Counts;
import holdfast.session.Intonation;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** A judged take as lines of a terminal: a head, a line a phrase, and what it comes to. */
public final class JudgementText {

  private static final int WORDS_WIDTH = 44;

  private final Setting setting;

  /** For takes over this setting. */
  public JudgementText(Setting setting) {
    this.setting = setting;
  }

  /**
   * Someone who is told each phrase as it ends, and writes the head, the idea and the columns where
   * they belong.
   */
  public Consumer<JudgedPhrase> to(Consumer<String> line) {
    head().forEach(line);
    turns().ifPresent(line);
    AtomicBoolean first = new AtomicBoolean(true);
    setting.givenIdea().ifPresent(given -> idea(given).forEach(line));
    return phrase -> {
      if (phrase.statesTheIdea()) {
        Motif stated = new Motif(phrase.notes(), Optional.of(phrase.chords().get(0).harmony()));
        idea(stated).forEach(line);
      }
      if (first.getAndSet(false)) {
        line.accept(columns());
      }
      line.accept(phrase(phrase));
    };
  }

  /** The lines before the first phrase. */
  public List<String> head() {
    String key = setting.changes().key().map(tonal -> ", " + tonal.display()).orElse("");
    return List.of(
        setting.chart().title()
            + key
            + ", "
            + Math.round(setting.beats().openingTempo())
            + " beats a minute",
        "");
  }

  /** What is said about the idea, once it is known. */
  public List<String> idea(Motif idea) {
    String chord = idea.chord().map(c -> ", over " + c.display()).orElse("");
    return List.of(
        "Your idea" + chord + ": " + noteNames(idea) + "   (" + RhythmWords.of(idea.notes()) + ")",
        "");
  }

  /** One line for one phrase; a sign before the chord marks a turn that nobody expects. */
  public String phrase(JudgedPhrase phrase) {
    boolean isIdea = phrase.statesTheIdea();
    return String.format(
        Locale.ROOT,
        "%3d.%-3d %s %s %-" + WORDS_WIDTH + "s %s%s",
        phrase.place().chorus(),
        phrase.place().bar(),
        mark(phrase) + (isUnexpected(phrase) ? " !" : "  "),
        pad(chords(phrase), 16),
        isIdea ? "your idea" : words(phrase),
        pad(fit(phrase), 26),
        isIdea ? "" : sure(phrase));
  }

  /** The line that names the columns of {@link #phrase}. */
  public String columns() {
    return String.format(
        Locale.ROOT,
        "%-7s      %-16s %-" + WORDS_WIDTH + "s %-26s%s",
        "chorus.bar",
        "chord",
        "what you did with your idea",
        "in the chords",
        "how sure I am");
  }

  /** Why a phrase was judged as it was: the verdict, and each note over its chord. */
  public List<String> why(JudgedPhrase phrase) {
    List<String> lines = new ArrayList<>();
    lines.add("Phrase " + (phrase.index() + 1) + ", " + phrase.place().words(2) + ":");
    if (phrase.statesTheIdea()) {
      lines.add("This is the idea that the others are held against.");
    } else {
      lines.addAll(OverrulingWords.why(phrase));
    }
    phrase.expectation().map(ExpectationWords::of).ifPresent(lines::add);
    Optional<Key> key = setting.changes().key();
    phrase.harmony().notes().forEach(note -> lines.add("  " + note.sentence(key)));
    return lines;
  }

  /** What the take comes to. */
  public List<String> close(JudgedTake take) {
    List<String> lines = new ArrayList<>();
    lines.add("");
    lines.addAll(TakeSentences.of(take));
    List<String> lookingBack = new ArrayList<>(MaterialRuns.of(take));
    lookingBack.addAll(TakeSentences.inHindsight(take));
    if (!lookingBack.isEmpty()) {
      lines.add("");
      lines.addAll(lookingBack);
    }
    List<String> tuning = Intonation.of(take).map(IntonationSentences::of).orElse(List.of());
    if (!tuning.isEmpty()) {
      lines.add("");
      lines.addAll(tuning);
    }
    Counts counts = take.counts();
    if (counts.phrases() > 0) {
      lines.add("");
      lines.add(
          "● restated "
              + counts.restated()
              + "   ■ varied "
              + counts.varied()
              + "   ○ new "
              + counts.fresh()
              + "   longest run "
              + counts.longestRun());
      for (Counts.Chorus chorus : counts.choruses()) {
        lines.add(
            "chorus "
                + chorus.number()
                + ": "
                + chorus.carried()
                + " of "
                + chorus.phrases()
                + " carried"
                + chorus.fit().map(f -> ", " + f.word().text()).orElse(""));
      }
      Foreseen.of(take).ifPresent(f -> lines.addAll(f.sentences(take.choruses())));
    }
    return lines;
  }

  private static String words(JudgedPhrase phrase) {
    String words = TreatmentWords.of(phrase);
    String detail = phrase.overruled().isPresent() ? "" : phrase.verdict().detail();
    String all = detail.isEmpty() ? words : words + " (" + detail + ")";
    return all.length() > WORDS_WIDTH ? words : all;
  }

  private static String mark(JudgedPhrase phrase) {
    return switch (phrase.verdict().family()) {
      case RESTATED -> "●";
      case VARIED -> "■";
      case NEW -> "○";
    };
  }

  private boolean isUnexpected(JudgedPhrase phrase) {
    return setting.form().bars().stream()
        .anyMatch(bar -> bar.number() == phrase.place().bar() && bar.unexpected());
  }

  private static String fit(JudgedPhrase phrase) {
    return phrase.harmony().fit().map(Fit::word).map(w -> w.text()).orElse("no chord");
  }

  static String sure(JudgedPhrase phrase) {
    if (phrase.overruled().isPresent()) {
      return "your teacher";
    }
    // Nobody is ever wholly sure.
    return Math.min(99, Math.round(100 * phrase.verdict().confidence())) + " %";
  }

  static String chords(JudgedPhrase phrase) {
    return phrase.chords().stream()
        .map(ChordSpan::harmony)
        .map(Harmony::display)
        .distinct()
        .collect(Collectors.joining(" "));
  }

  private String noteNames(Motif idea) {
    Optional<Key> key = setting.changes().key();
    return idea.notes().stream()
        .map(n -> NoteNames.of(n.pitch(), key))
        .collect(Collectors.joining(" "));
  }

  private static String pad(String text, int width) {
    // Counted in code points: a flat sign is one place wide.
    int missing = width - text.codePointCount(0, text.length());
    return missing > 0 ? text + " ".repeat(missing) : text;
  }

  /** The bars that the form marks as unexpected, for the warning above the lines. */
  public Optional<String> turns() {
    String bars =
        setting.form().bars().stream()
            .filter(Bar::unexpected)
            .map(b -> "bar " + b.number() + " (" + b.chords().get(0).harmony().display() + ")")
            .collect(Collectors.joining(", "));
    return bars.isEmpty() ? Optional.empty() : Optional.of("! turns nobody expects: " + bars);
  }
}
